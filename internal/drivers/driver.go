package drivers

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/composition"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// Drivers says where the spread of a figure of the serving comes from.
//
// The figure's ranks are regressed on the ranks of the run's inputs, one input
// at a time, always the one that explains most of what is left (rank regression:
// Iman and Conover 1979, Technometrics 21:499). The share of an input is the
// part of the ranks' variance that it adds. Inputs that add no more than chance
// would among so many are left out.
type Drivers struct {
	Figure composition.Figure
	Shares map[estimate.Cause]float64
	Inputs []Driver // largest first
	Rest   float64  // what no single input explains: small ones together, and what they do only jointly
}

// Driver is one input and the share of the spread that it brings.
type Driver struct {
	Cause  estimate.Cause
	Name   string
	Share  float64
	Raises bool // more of it makes the figure larger
}

// Of finds the drivers of a figure of a serving among the inputs of its run. A
// figure without spread has none.
func Of(f composition.Figure, serving *ledger.Pot, inputs []estimate.Entry) *Drivers {
	d := &Drivers{Figure: f, Shares: map[estimate.Cause]float64{}}
	y := composition.ColumnOf(serving, f.Constituent)
	if len(y)-1 < estimate.FewestDraws || estimate.Certain(y) {
		return d
	}
	d.Inputs = regress(y, inputs)
	d.Rest = 1
	for _, in := range d.Inputs {
		d.Shares[in.Cause] += in.Share
		d.Rest -= in.Share
	}
	return d
}

// candidate is an input's ranks, less what the inputs chosen so far explain.
type candidate struct {
	estimate.Entry
	left []float64
}

func regress(y []float64, entries []estimate.Entry) []Driver {
	target := standardRanks(y[1:])
	pool := make([]*candidate, len(entries))
	sideBySide(len(pool), func(i int) {
		pool[i] = &candidate{Entry: entries[i], left: standardRanks(entries[i].Column[1:])}
	})
	var chosen []Driver
	for len(pool) > 0 {
		at, share := best(target, pool)
		c := pool[at]
		if unexplained := floats.Dot(target, target); share <= chance(len(pool), len(target))*unexplained {
			break
		}
		chosen = append(chosen, Driver{c.Cause, c.Name, share, stat.Correlation(standardRanks(y[1:]), standardRanks(c.Column[1:]), nil) > 0})
		pool = slices.Delete(pool, at, at+1)
		takeAway(target, c.left)
		sideBySide(len(pool), func(i int) { takeAway(pool[i].left, c.left) })
	}
	slices.SortStableFunc(chosen, func(a, b Driver) int { return cmp.Compare(b.Share, a.Share) })
	return chosen
}

// chance is the share of a variance that the best of k unrelated inputs would
// seem to explain in n draws: the square of √(2·ln k / n) (Donoho and Johnstone
// 1994, Biometrika 81:425), but no less than what counts as a correlation.
func chance(k, n int) float64 {
	return max(2*math.Log(float64(k)), estimate.Noise*estimate.Noise) / float64(n)
}

// best finds the candidate that explains most of what is left of the target, the
// first of equals.
func best(target []float64, pool []*candidate) (at int, share float64) {
	explained := make([]float64, len(pool))
	sideBySide(len(pool), func(i int) {
		if length := floats.Dot(pool[i].left, pool[i].left); length > 1e-9 {
			explained[i] = square(floats.Dot(target, pool[i].left)) / length
		}
	})
	for i, x := range explained {
		if x > share {
			at, share = i, x
		}
	}
	return at, share
}

// sideBySide does work for 0 to n − 1: a large drink has ten thousand inputs.
func sideBySide(n int, work func(i int)) {
	_ = estimate.InBlocks(n, func(from, to int) error {
		for i := from; i < to; i++ {
			work(i)
		}
		return nil
	})
}

// takeAway removes from x what direction explains of it.
func takeAway(x, direction []float64) {
	if length := floats.Dot(direction, direction); length > 0 {
		floats.AddScaled(x, -floats.Dot(x, direction)/length, direction)
	}
}

// standardRanks gives the ranks of x, with mean 0 and sum of squares 1. Equal
// values share their mean rank.
func standardRanks(x []float64) []float64 {
	type draw struct {
		x  float64
		at int
	}
	order := make([]draw, len(x))
	for i, v := range x {
		order[i] = draw{v, i}
	}
	slices.SortFunc(order, func(a, b draw) int {
		switch { // no column has a NaN
		case a.x < b.x:
			return -1
		case a.x > b.x:
			return 1
		}
		return 0
	})
	ranks := make([]float64, len(x))
	for from := 0; from < len(order); {
		to := from + 1
		for to < len(order) && order[to].x == order[from].x {
			to++
		}
		for _, d := range order[from:to] {
			ranks[d.at] = float64(from+to-1) / 2
		}
		from = to
	}
	floats.AddConst(-stat.Mean(ranks, nil), ranks)
	if length := floats.Norm(ranks, 2); length > 0 {
		floats.Scale(1/length, ranks)
	}
	return ranks
}

func square(x float64) float64 { return x * x }
