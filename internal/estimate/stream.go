package estimate

import (
	"hash/fnv"
	"math"
	"math/rand/v2"
)

// Key names a stream of random numbers.
type Key uint64

// steady is the key of an input that does not vary.
const steady Key = math.MaxUint64

// KeyOf hashes the run's seed and what an input is: its kind, and then the
// table, food and constituent, or the path of a line.
func KeyOf(seed uint64, parts ...string) Key {
	h := fnv.New64a()
	var raw [8]byte
	for i := range raw {
		raw[i] = byte(seed >> (8 * i))
	}
	h.Write(raw[:])
	for _, part := range parts {
		h.Write([]byte(part))
		h.Write([]byte{0}) // "ab","c" differs from "a","bc"
	}
	return Key(h.Sum64())
}

// stream gives the numbers of a key, one a draw, in order.
func (k Key) stream() *rand.PCG {
	// The second word only separates our streams from other users of PCG.
	return rand.NewPCG(uint64(k), 0x9e3779b97f4a7c15)
}

// uniform gives a stream's next number, in (0, 1).
func uniform(stream *rand.PCG) float64 { return unit(stream.Uint64()) }

// unit makes a number in (0, 1) of the high bits: 52 of them, so that neither end is
// reached by rounding.
func unit(bits uint64) float64 {
	const used = 52
	return (float64(bits>>(64-used)) + 0.5) / (1 << used)
}

// Normals fills z with standard normal draws of the stream.
func (k Key) Normals(z []float64) {
	if k == steady {
		Fill(z, 0)
		return
	}
	normal().fill(z, k.stream())
}
