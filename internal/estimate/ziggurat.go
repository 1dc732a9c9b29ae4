package estimate

import (
	"math"
	"math/rand/v2"
	"sync"
)

// ziggurat covers the right half of exp(−x²/2) with strips of one area, from the
// bottom up (Marsaglia and Tsang 2000, J. Stat. Softw. 5(8)). Strip i lies between
// the heights f(x[i]) and f(x[i+1]) and reaches to x[i]; the lowest holds the tail
// beyond x[1] too, so its x[0] is the width of a rectangle of the same area. A point
// of a strip that is left of x[i+1] is under the curve whatever its height is.
type ziggurat struct {
	x, f [strips + 1]float64
	tail float64 // where the lowest strip's rectangle ends
}

const (
	stripBits = 7 // of a number, which choose a strip; the next bit is the side
	strips    = 1 << stripBits
	signBit   = 63 // of a float64
)

// normal is built from no figure but the number of strips: its tail begins where
// strips of equal area close at the top of the curve.
var normal = sync.OnceValue(func() *ziggurat {
	lo, hi := 2.0, 5.0 // strips that begin at 2 pass the top, those that begin at 5 never reach it
	for {
		mid := (lo + hi) / 2
		if mid <= lo || mid >= hi {
			z, _ := stack(hi)
			return z
		}
		if _, closes := stack(mid); closes {
			hi = mid
		} else {
			lo = mid
		}
	}
})

// stack builds the strips upon a tail; they close if they do not pass the top.
func stack(tail float64) (z *ziggurat, closes bool) {
	area := tail*bell(tail) + math.Sqrt(math.Pi/2)*math.Erfc(tail/math.Sqrt2)
	z = &ziggurat{tail: tail}
	z.x[0], z.x[1] = area/bell(tail), tail
	z.f[1] = bell(tail) // f[0] is not asked for: points beyond the tail's begin are drawn anew
	for i := 1; i < strips; i++ {
		height := z.f[i] + area/z.x[i]
		if i == strips-1 {
			z.f[strips] = 1 // x[strips] is 0
			return z, height <= 1
		}
		if height >= 1 {
			return z, false
		}
		z.f[i+1] = height
		z.x[i+1] = math.Sqrt(-2 * math.Log(height))
	}
	return z, false
}

func bell(x float64) float64 { return math.Exp(-x * x / 2) }

// fill gives standard normal numbers. One number of the stream gives the strip, the side and the place,
// each from bits of its own: the strip must not tell the place. Nearly all of them lie under the curve
// whatever their height is; the others are looked at by settle.
func (z *ziggurat) fill(to []float64, stream *rand.PCG) {
	for n := range to {
		bits := stream.Uint64()
		i := bits % strips
		if x := unit(bits) * z.x[i]; x < z.x[i+1] {
			to[n] = math.Float64frombits(math.Float64bits(x) | bits>>stripBits&1<<signBit)
			continue
		}
		to[n] = z.settle(bits, stream)
	}
}

// settle gives the standard normal number that begins with a number of the stream.
func (z *ziggurat) settle(bits uint64, stream *rand.PCG) float64 {
	for ; ; bits = stream.Uint64() {
		i := bits % strips
		negative := bits >> stripBits & 1 << signBit
		x := unit(bits) * z.x[i]
		switch {
		case x < z.x[i+1]:
		case i == 0:
			x = z.beyond(stream)
		case z.f[i]+uniform(stream)*(z.f[i+1]-z.f[i]) >= bell(x):
			continue
		}
		return math.Float64frombits(math.Float64bits(x) | negative)
	}
}

// beyond draws from the tail (Marsaglia 1964, Technometrics 6:101): an exponential
// number stands for the curve, and is kept with the chance by which that exceeds it.
func (z *ziggurat) beyond(stream *rand.PCG) float64 {
	for {
		x, y := -math.Log(uniform(stream))/z.tail, -math.Log(uniform(stream))
		if 2*y > x*x {
			return z.tail + x
		}
	}
}
