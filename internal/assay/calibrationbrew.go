package assay

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

// calibrateBrew makes the coffee and tea of a pot, just brewed or steeped, have the pH of
// such brews: it does not know how it was brewed better than those who read them. What is
// said of them is given.
func (lab *laboratory) calibrateBrew(pot *ledger.Pot) (notes []Note) {
	for row := range pot.Rows {
		profile := pot.Rows[row].Profile
		if !profile.Food.Facts().Dose || len(pot.Traced(row)) > 0 { // it may have been brewed before
			continue
		}
		by, ok := evidenceOf(profile.Food)
		if !ok {
			continue
		}
		if lab.strong(pot) {
			by = by.ofEspresso()
		}
		c := lab.findCalibration(lab.brewOf(pot, row), by, lab.solved())
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

// calibrateParted makes a pot whose milk an acid has parted as sour as milk parts at: what
// its composition makes of it beyond that lacks an acid.
func (lab *laboratory) calibrateParted(pot *ledger.Pot, parted *prep.Parting) {
	row := slices.IndexFunc(pot.Rows, func(r ledger.Row) bool { return takesUpAcid(r.Profile.Food) })
	if row < 0 || settled(pot, row) || unsolvable(pot) != "" {
		return
	}
	by := evidence{atMost: parted.AtMost, low: parted.Low, high: parted.High, source: parted.Source}
	if c := lab.findCalibration(pot.Copy(), by, lab.solved()); c != nil {
		estimate.Fill(pot.Carry(row, published{c}), 1)
	}
}

// strong reports whether a pot is of the strength of espresso.
func (lab *laboratory) strong(pot *ledger.Pot) bool {
	return lab.gauge.dissolved(pot)[0] >= prep.EspressoStrength()*pot.Central(constituent.Mass)
}

// brewOf is coffee or tea as it was brewed, with all the water of its pot and nothing else.
func (lab *laboratory) brewOf(pot *ledger.Pot, row int) *ledger.Pot {
	brew := pot.Only(func(r int) bool { return r == row })
	water := pot.Total(constituent.Water)
	for d, own := range brew.Total(constituent.Water) {
		water[d] -= own
	}
	out := brew.Copy()
	out.Pour(lab.water, lab.drawer.PerGram(lab.water), water, "")
	return out
}
