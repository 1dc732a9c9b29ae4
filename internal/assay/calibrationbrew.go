package assay

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

// calibrateBrew makes the coffee and tea of a pot, just brewed or steeped, have the pH of
// such brews: it does not know how it was brewed better than those who read them.
func (w *walk) calibrateBrew(pot *ledger.Pot, path string) {
	for row := range pot.Rows {
		profile := pot.Rows[row].Profile
		if !profile.Food.Facts().Dose || len(pot.Traced(row)) > 0 { // it may have been brewed before
			continue
		}
		by, ok := evidenceOf(profile.Food)
		if !ok {
			continue
		}
		if w.strong(pot) {
			by = by.ofEspresso()
		}
		brew := w.brewOf(pot, row)
		t := brewedAs(path + " " + profile.Food.ID.String())
		w.brews[t.Name] = &brewed{by: by, pot: brew}
		if w.brewCalibration(t.Name, 1) == nil {
			continue
		}
		fill(pot.Carry(row, t), 1)
	}
}

// calibrateParted makes a pot whose milk an acid has parted as sour as milk parts at: what
// its composition makes of it beyond that lacks an acid.
func (w *walk) calibrateParted(pot *ledger.Pot, parted *prep.Parting, path string) {
	row := slices.IndexFunc(pot.Rows, func(r ledger.Row) bool { return takesUpAcid(r.Profile.Food) })
	if row < 0 || settled(pot, row) || w.unsolvable(pot) != "" {
		return
	}
	t := brewedAs(path)
	w.brews[t.Name] = &brewed{by: evidence{atMost: parted.AtMost, low: parted.Low, high: parted.High, source: parted.Source}, pot: copyOf(pot, w.columns)}
	if w.brewCalibration(t.Name, 1) != nil {
		fill(pot.Carry(row, t), 1)
	}
}

func copyOf(pot *ledger.Pot, columns *ledger.Columns) *ledger.Pot {
	out := ledger.New(columns, pot.N)
	out.Mix(pot, constantColumn(pot.N, 1), "")
	return out
}

// strong reports whether a pot is of the strength of espresso.
func (w *walk) strong(pot *ledger.Pot) bool {
	return w.weighted(pot, solubleShare)[0] >= prep.EspressoStrength()*pot.Central(constituent.Mass)
}

// brewed is coffee or tea as it was brewed, with all the water of its pot and nothing else.
type brewed struct {
	by     evidence
	pot    *ledger.Pot
	answer *calibration
	asked  int // draws that the answer has; 0: not asked yet
}

func (w *walk) brewOf(pot *ledger.Pot, row int) *ledger.Pot {
	brew := pot.Only(func(r int) bool { return r == row })
	water := pot.Total(constituent.Water)
	for d, own := range brew.Total(constituent.Water) {
		water[d] -= own
	}
	out := copyOf(brew, w.columns)
	out.Pour(w.names.water, w.drawer.PerGram(w.names.water), water, "")
	return out
}

func (w *walk) brewCalibration(name string, n int) *calibration {
	b := w.brews[name]
	if n = max(n, min(w.amounts.n, chemistryDraws+1)); b.asked < n {
		b.answer, b.asked = w.findCalibration(b.pot, b.by, n), n
	}
	return b.answer
}
