package acidity

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
)

// CalibrateBrew makes the coffee and tea of a pot, just brewed or steeped, have the pH of
// such brews: it does not know how it was brewed better than those who read them. espresso
// is the share of dissolved solids from which on a brew is one. What is said of them is
// given.
func (lab *Laboratory) CalibrateBrew(pot *ledger.Pot, espresso float64) (notes []note.Note) {
	for row := range pot.Rows {
		profile := pot.Rows[row].Profile
		if !profile.Food.Facts().Dose || slices.ContainsFunc(pot.Traced(row), func(t ledger.Traced) bool { return !ledger.OfPast(t.Tracer) }) { // it may have been brewed before
			continue
		}
		by, ok := evidenceOf(profile.Food)
		if !ok {
			continue
		}
		if lab.Gauge.Dissolved(pot)[0] >= espresso*pot.Central(constituent.Mass) {
			by = by.ofEspresso()
		}
		c := lab.findCalibration(lab.brewOf(pot, row), by, lab.Solved())
		if c == nil {
			continue
		}
		estimate.Fill(pot.Carry(row, published{c}), 1)
		if c.contradiction != nil {
			notes = append(notes, *c.contradiction)
		}
	}
	return notes
}

// CalibrateParted makes a pot whose milk an acid has parted as sour as milk parts at: what
// its composition makes of it beyond that lacks an acid. atMost is that pH, a column anywhere
// from low to high.
func (lab *Laboratory) CalibrateParted(pot *ledger.Pot, atMost []float64, low, high float64, source string) {
	row := slices.IndexFunc(pot.Rows, func(r ledger.Row) bool { return takesUpAcid(r.Profile.Food) })
	if row < 0 || settled(pot, row) || Unsolvable(pot) != "" {
		return
	}
	by := evidence{atMost: atMost, low: low, high: high, source: source}
	if c := lab.findCalibration(pot.Copy(), by, lab.Solved()); c != nil {
		estimate.Fill(pot.Carry(row, published{c}), 1)
	}
}

// brewOf is coffee or tea as it was brewed, with all the water of its pot and nothing else.
func (lab *Laboratory) brewOf(pot *ledger.Pot, row int) *ledger.Pot {
	brew := pot.Only(func(r int) bool { return r == row })
	water := pot.Total(constituent.Water)
	for d, own := range brew.Total(constituent.Water) {
		water[d] -= own
	}
	out := brew.Copy()
	out.Pour(lab.water, lab.drawer.PerGram(lab.water), water, "")
	return out
}
