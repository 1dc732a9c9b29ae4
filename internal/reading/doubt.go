package reading

import (
	"math"

	"sipsum/internal/amount"
	"sipsum/internal/estimate"
)

// doubt is how far a reading and its recipe contradict one another: of 0 both are believed, as
// the joint update has them, of 1 either may be the wrong one.
type doubt struct {
	recipe  float64 // that the recipe is right, and the reading wrong
	reading float64 // that the reading is right beyond what is used of it
}

func (d doubt) any() bool { return max(d.recipe, d.reading) > 0 }

// rising goes from 0 at from to 1 at to.
func rising(x, from, to float64) float64 { return min(max((x-from)/(to-from), 0), 1) }

// doubtOf weighs a reading that was taken: off is how many standard deviations of both it lies
// from the recipe, left how many of its own from what is used of it, now what the pot reads.
//
// It begins where a reading no longer agrees (estimate.Disagreement), so that what agrees stays
// as the joint update has it, and every part of it grows gradually with the reading. A reading
// that the recipe explains up to c standard deviations is doubted from the one on to twice the
// other, as the update has it (update.explain); one that was met by water or loss as far as that
// is a strain on the pot (causes.strain); one of acidity, which acid without a name meets
// wherever it lies, by its distance alone.
func (r reading) doubtOf(c causes, off, left, now float64) doubt {
	const most = estimate.Disagreement
	if r.open || math.IsNaN(off) || math.IsNaN(left) {
		return doubt{}
	}
	unmet := rising(left, most, 2*most)
	if r.linear() {
		return doubt{recipe: max(unmet, rising(off, limitOf("doubted acidity"), limitOf("decision"))), reading: unmet}
	}
	plausible := limitOf("plausible")
	if r.water {
		plausible = limitOf("plausible beside another cause")
	}
	far := rising(off, most, 2*plausible)
	short := math.Copysign(1, r.noisy[0]-r.h[0]) * (r.explained - (now - r.h[0])) // of what the recipe explains: other readings say otherwise
	d := doubt{reading: max(unmet, far*rising(left, asRead, most))}
	d.recipe = max(rising(short/math.Hypot(r.own, r.natural()), most, limitOf("decision")), far*max(c.strain, rising(left, asRead, most)))
	return d
}

// strainOf tells how far water that went or came, and what was lost of all, are stretched to
// meet what was read: 0 up to half of the way to their limits, 1 at these. Water that a second
// instrument asks for too is none: it is there.
func strainOf(water, lost float64, asked []asked) float64 {
	end := math.Log(limitOf("most water"))
	if water < 0 {
		end = -math.Log(limitOf("least water"))
	}
	first, second := 0.0, 0.0
	for _, by := range []string{amount.ReadMass, amount.ReadDensity, amount.ReadABV, refractometer} {
		most := 0.0
		for _, a := range asked {
			if a.by() == by && a.water*water > 0 {
				most = max(most, math.Abs(a.water))
			}
		}
		first, second = max(first, most), max(second, min(first, most))
	}
	half := end / 2
	loss := -math.Log(limitOf("least water"))
	return max(rising(math.Abs(water)-second, half, end), rising(-math.Log1p(-lost), loss/2, loss))
}

// asked is the water that a reading asks for, as ln of what there is.
type asked struct {
	kind  string
	water float64
}

// refractometer stands for the two scales of one instrument.
const refractometer = "refractometer"

func (a asked) by() string {
	switch a.kind {
	case amount.ReadBrix, amount.ReadTDS:
		return refractometer
	}
	return a.kind
}
