package reading

import (
	"maps"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// gains is K of every entry of a pot that has to do with the readings.
type gains struct {
	update *update
	list   []cellGain
	sums   []sumGain
	held   bool // something would have left its range
}

type cellGain struct {
	column func(*ledger.Pot) []float64 // of a cell, of a tracer or of a constant
	gain   []float64
	linear bool    // not in logarithms
	low    float64 // its range before the readings
	high   float64
}

// sumGain is K of the sugars of a row together. Heat, acid and ferments turn one into another,
// so that each may be far less sure than all of them: they move each by itself, and then
// together to what the readings say of their sum.
type sumGain struct {
	row  int
	gain []float64
}

// gains finds K of the entries: of the cells, and of what the rows carry beside them.
// Entries that are zero in a draw move by grams, those that are zero at central values and
// those whose correlation with every reading is noise stay as they are.
func (u *update) gains(pot *ledger.Pot) gains {
	g := gains{update: u}
	x := make([]float64, pot.N)
	consider := func(column []float64, write func(*ledger.Pot) []float64) {
		linear := !estimate.Positive(column)
		if linear && column[0] <= 0 {
			return
		}
		copy(x, column)
		if !linear {
			estimate.Logs(x)
		}
		if gain := u.gainOf(x); gain != nil {
			low, high := rangeOf(column)
			g.list = append(g.list, cellGain{write, gain, linear, low, high})
		}
	}
	for row := range pot.Rows {
		if sum := pot.Of(row, constituent.Sugar); estimate.Positive(sum) {
			estimate.Logs(sum)
			if gain := u.gainOf(sum); gain != nil {
				g.sums = append(g.sums, sumGain{row, gain})
			}
		}
		for col := range pot.Columns.List {
			consider(pot.Cell(row, col), func(p *ledger.Pot) []float64 { return p.Write(row, col) })
		}
		for _, t := range pot.Traced(row) {
			consider(t.Column, func(p *ledger.Pot) []float64 { return p.Carry(row, t.Tracer) })
		}
	}
	return g
}

// constants adds K of the constants of nature, which are moved in copies: these are given.
// Every other pot keeps its own, so the pot would no longer read what was read of it; hence
// they take only that share of their move which they have in the spread of the reading.
// Where they have little the pot itself takes the rest, and where they have nearly all a
// reading says nearly nothing of the pot.
func (g *gains) constants(of map[string][]float64) map[string][]float64 {
	moved := map[string][]float64{}
	for _, name := range slices.Sorted(maps.Keys(of)) {
		column := slices.Clone(of[name])
		moved[name] = column
		gain := g.update.gainOf(column)
		if gain == nil {
			continue
		}
		for j, r := range g.update.readings {
			gain[j] *= r.nature
		}
		low, high := rangeOf(column)
		g.list = append(g.list, cellGain{func(*ledger.Pot) []float64 { return column }, gain, true, low, high})
	}
	return moved
}

// gainOf gives K of a quantity; nil if it has nothing to do with the readings. Of a group
// of readings it has nothing to do with, K is zero.
func (u *update) gainOf(x []float64) []float64 {
	sd := stat.StdDev(x[1:], nil)
	covariances, related := make([]float64, len(u.readings)), map[int]bool{}
	for j, r := range u.readings {
		covariances[j] = stat.Covariance(x[1:], r.h[1:], nil)
		if estimate.Counts(covariances[j], sd*stat.StdDev(r.h[1:], nil), len(x)-1) {
			related[u.groups[j]] = true
		}
	}
	if len(related) == 0 {
		return nil
	}
	for j, group := range u.groups {
		if !related[group] {
			covariances[j] = 0
		}
	}
	return u.gain(covariances)
}

// apply moves the entries, each within its range: a draw that was beyond it may stay. What
// would leave it is no longer a small move, for which alone K is right.
func (g *gains) apply(pot *ledger.Pot, move [][]float64) {
	shift := make([]float64, pot.N)
	targets := make([][]float64, len(g.sums))
	for i, s := range g.sums {
		clear(shift)
		g.update.add(shift, s.gain, move)
		targets[i] = pot.Of(s.row, constituent.Sugar)
		for d := range targets[i] {
			targets[i][d] *= math.Exp(shift[d])
		}
	}
	for _, c := range g.list {
		clear(shift)
		g.update.add(shift, c.gain, move)
		column := c.column(pot)
		for d, was := range column {
			to := was + shift[d]
			if !c.linear {
				to = was * math.Exp(shift[d])
			}
			column[d] = min(max(to, min(c.low, was)), max(c.high, was))
			g.held = g.held || column[d] != to
		}
	}
	for i, s := range g.sums {
		for d, is := range pot.Of(s.row, constituent.Sugar) {
			targets[i][d] /= is
		}
		for _, col := range pot.Columns.Below(constituent.Sugar) {
			if !pot.Has(s.row, col) {
				continue
			}
			column := pot.Write(s.row, col)
			for d := range column {
				column[d] *= targets[i][d]
			}
		}
	}
}
