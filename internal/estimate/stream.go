package estimate

import (
	"hash/fnv"
	"math/rand/v2"

	"gonum.org/v1/gonum/mathext"
)

// Key names a stream of random numbers.
type Key uint64

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

// uniforms calls use with one number in (0, 1) for each draw, in order.
func (k Key) uniforms(n int, use func(i int, u float64)) {
	// The second word only separates our streams from other users of PCG.
	source := rand.NewPCG(uint64(k), 0x9e3779b97f4a7c15)
	const steps = 1 << 53
	for i := range n {
		use(i, (float64(source.Uint64()>>11)+0.5)/steps)
	}
}

// Normals fills z with standard normal draws of the stream.
func (k Key) Normals(z []float64) {
	k.uniforms(len(z), func(i int, u float64) { z[i] = mathext.NormalQuantile(u) })
}
