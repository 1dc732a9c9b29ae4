package prep

import (
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

const (
	starch  constituent.ID = "STARCH"
	maltose constituent.ID = "MALS"
)

// Convert splits a share (a column) of the starch of a pot into glucose or maltose, as
// amylases and koji do; a gram takes up water of the pot:
//
//	(C6H10O5)n + n H2O → n C6H12O6        1.111 g of glucose
//	2 (C6H10O5) + H2O → C12H22O11         1.056 g of maltose
//
// by the atomic weights. Where the starch of a food is unknown its bound becomes a bound of
// the sugar, and the step says so. It is an error if there is no starch, or too little water.
//
// Valid for starch that is wet and swollen. Limits: the share is stated, not calculated;
// what is between starch and the sugar (dextrins, maltotriose: by Belitz, Food Chemistry,
// table 19.7, 5 to 40 % of what a syrup holds beside its main sugar) counts as the one or
// as the other; the enzyme is not weighed. Whether sugars made on purpose of a food's own
// starch are added sugars is for the rules of the country: they may be, up to all of them.
func Convert(pot *ledger.Pot, share []float64, to string) (Outcome, error) {
	_, rows := pot.Bound(starch)
	if pot.Central(starch) <= 0 && len(rows) == 0 {
		return Outcome{}, impossible("nothing here holds starch")
	}
	r := saccharification(to)
	if err := wetEnough(pot, r, share); err != nil {
		return Outcome{}, err
	}
	before := make([]float64, len(pot.Rows))
	for row := range pot.Rows {
		before[row] = pot.CentralOf(row, constituent.Sugar)
	}
	pot.React(r, share)
	for row := range pot.Rows {
		pot.Bounds(row)[constituent.Must(constituent.AddedSugar).Order] += max(pot.CentralOf(row, constituent.Sugar)-before[row], 0)
	}
	var out Outcome
	for _, row := range rows {
		out.note("how much starch is in %s is not known: neither is the sugar that it becomes, nor the water that it takes up, %.2g g for each gram of starch", pot.Rows[row].Profile.Food.Name(), r.Water)
	}
	return out, nil
}

// saccharification gives the reaction of starch with water, by molar mass of its unit.
func saccharification(to string) ledger.Reaction {
	link := starchUnit()
	if to == "maltose" {
		pair := 2 * link
		return ledger.Reaction{From: starch, Into: []ledger.Part{{ID: maltose, Grams: molarMass(maltose) / pair}}, Water: molarMass(constituent.Water) / pair}
	}
	return ledger.Reaction{From: starch, Into: []ledger.Part{{ID: constituent.Glucose, Grams: molarMass(constituent.Glucose) / link}}, Water: molarMass(constituent.Water) / link}
}

// starchUnit is the molar mass of C6H10O5, of which starch is a chain.
var starchUnit = sync.OnceValue(func() float64 {
	m, err := constituent.MolarMass("C6H10O5")
	if err != nil {
		panic("prep: " + err.Error())
	}
	return m
})
