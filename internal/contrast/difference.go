package contrast

import (
	"math"
	"slices"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// Difference is how much more there is in the second drink than in the first.
type Difference struct {
	estimate.Summary              // of what is known
	Least, Most      float64      // the ends with what nobody knows; not a number where nothing bounds it
	Open             []*food.Food // of what something is unknown that does not go out
	Why              string       // it is withheld, and why: Mean is not a number
}

// Sign is 1 where there is surely more in the second drink, −1 where there is surely less, 0 where
// nobody can tell: what is withheld goes neither way, wherever its ends lie.
func (d Difference) Sign() int {
	switch {
	case math.IsNaN(d.Mean):
	case d.Least > 0:
		return 1
	case d.Most < 0:
		return -1
	}
	return 0
}

// None reports whether there is no difference at all.
func (d Difference) None() bool {
	return d.Why == "" && len(d.Open) == 0 && d.Mean == 0 && d.Least == 0 && d.Most == 0
}

// Bounded reports whether anybody knows how far the difference goes.
func (d Difference) Bounded() bool { return !math.IsNaN(d.Least) && !math.IsNaN(d.Most) }

// less gives b − a draw by draw. What arithmetic leaves of two equal sums is nothing.
func less(b, a []float64) []float64 {
	col := make([]float64, min(len(a), len(b)))
	for d := range col {
		if col[d] = b[d] - a[d]; math.Abs(col[d]) <= unit.Closeness*max(math.Abs(a[d]), math.Abs(b[d])) {
			col[d] = 0
		}
	}
	return col
}

// differenceOf reads a difference off its draws, in another unit.
func differenceOf(col []float64, scale float64) Difference {
	scaled := slices.Clone(col)
	for d := range scaled {
		scaled[d] *= scale
	}
	s := estimate.Summarise(scaled)
	return Difference{Summary: s, Least: s.Low, Most: s.High}
}

// widened adds to the ends what is open: at least and at most so much in each draw.
func widened(col, down, up []float64, scale float64) (least, most float64) {
	low, high := slices.Clone(col), slices.Clone(col)
	for d := range col {
		low[d], high[d] = (col[d]+down[d])*scale, (col[d]+up[d])*scale
	}
	if slices.ContainsFunc(low, math.IsNaN) || slices.ContainsFunc(high, math.IsNaN) {
		return math.NaN(), math.NaN()
	}
	return estimate.Summarise(low).Low, estimate.Summarise(high).High
}
