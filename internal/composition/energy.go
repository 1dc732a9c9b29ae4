package composition

import (
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// energyFactors gives kJ/g and kcal/g by leaf, of the rules by which the assay's own energy
// is computed (a card uses those of its country): the row of the leaf or of its nearest
// parent.
var energyFactors = sync.OnceValue(func() map[constituent.ID][2]float64 {
	stated := map[constituent.ID][2]float64{}
	for _, f := range constituent.EnergyFactors() {
		if f.Own {
			stated[f.Of] = [2]float64{f.PerGram["kJ"], f.PerGram["kcal"]}
		}
	}
	factors := map[constituent.ID][2]float64{}
	for _, leaf := range constituent.Sums().Leaves(constituent.Mass) {
		for at := leaf.ID; at != ""; at = constituent.Must(at).Parent {
			if f, ok := stated[at]; ok {
				factors[leaf.ID] = f
				break
			}
		}
	}
	return factors
})

// energyUnit is the place of an energy's unit in a factor.
func energyUnit(id constituent.ID) int {
	if id == constituent.EnergyKcal {
		return 1
	}
	return 0
}

// richest is the most that a gram of anything can bring, in kJ (unit 0) or kcal (unit 1):
// that of fat.
func richest(unit int) float64 {
	most := 0.0
	for _, f := range energyFactors() {
		most = max(most, f[unit])
	}
	return most
}

// energy adds the energy of rows to a column, in kJ (unit 0) or kcal (unit 1).
func energy(pot *ledger.Pot, row, unit int, sum []float64) {
	for _, col := range pot.Columns.Below(constituent.Mass) {
		factor := energyFactors()[pot.Columns.List[col].ID][unit]
		if factor == 0 || !pot.Has(row, col) {
			continue
		}
		for d, g := range pot.Cell(row, col) {
			sum[d] += g * factor
		}
	}
}

// energyBound gives the most energy that the unknown proximates could bring, in
// kJ (unit 0) or kcal (unit 1), and whether any is unknown. What is unknown
// inside a known total is not missing: the total's rest counts.
func energyBound(pot *ledger.Pot, unit int) (bound float64, partial bool) {
	for _, child := range constituent.Sums().Children(constituent.Mass) {
		factor := mostEnergetic(child.ID, unit)
		if factor == 0 {
			continue
		}
		if grams, rows := MostOf(pot, child.ID); len(rows) > 0 {
			bound, partial = bound+grams*factor, true
		}
	}
	return bound, partial
}

// mostEnergetic is the factor of a proximate, or of the part of it with the largest.
func mostEnergetic(id constituent.ID, unit int) float64 {
	factor := energyFactors()[id][unit]
	for _, leaf := range constituent.Sums().Leaves(id) {
		factor = max(factor, energyFactors()[leaf.ID][unit])
	}
	return factor
}

// OpenEnergy lists the proximates that bring energy and of which a row does not know all: the energy that
// a food states says nothing of them, since it is always worked out.
func OpenEnergy(pot *ledger.Pot, row int) []*constituent.Constituent {
	only := pot.Only(func(r int) bool { return r == row })
	var list []*constituent.Constituent
	for _, child := range constituent.Sums().Children(constituent.Mass) {
		if _, rows := MostOf(only, child.ID); len(rows) > 0 && mostEnergetic(child.ID, 0) > 0 {
			list = append(list, child)
		}
	}
	return list
}
