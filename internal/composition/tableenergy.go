package composition

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// TableEnergy is the energy of a serving by the figures that the tables
// themselves print, at central values. It stands beside the energy by the rules
// in force and goes into nothing.
//
// A table's figure follows its row through the steps in proportion to the row's
// energy by the rules: what only mixes or loses water keeps it to the digit,
// what is separated keeps the ratio of the whole food.
type TableEnergy struct {
	ID      constituent.ID // energy in kJ or in kcal
	Amount  float64
	Missing []string // foods that bring energy and whose table prints none
}

// PrintedEnergy adds up the tables' own figures for energy.
func PrintedEnergy(pot *ledger.Pot, id constituent.ID) TableEnergy {
	sum := TableEnergy{ID: id}
	unit := energyUnit(id)
	for row, r := range pot.Rows {
		now, entered := rowEnergy(pot, row, unit), profileEnergy(r.Profile, unit)
		printed, ok := r.Profile.Food.Value(id)
		switch {
		case ok && food.Stated(printed.Amount) && entered > 0:
			const per = 100 // g
			sum.Amount += now * printed.Amount / per / entered
		case now > 0 && !slices.Contains(sum.Missing, r.Profile.Food.ID.String()):
			sum.Missing = append(sum.Missing, r.Profile.Food.ID.String())
		}
	}
	return sum
}

// rowEnergy is the energy of a row by the rules, at central values.
func rowEnergy(pot *ledger.Pot, row, unit int) float64 {
	sum := 0.0
	for _, col := range pot.Columns.Below(constituent.Mass) {
		sum += pot.Cell(row, col)[0] * energyFactors()[pot.Columns.List[col].ID][unit]
	}
	return sum
}

// profileEnergy is the energy of a gram of food by the rules.
func profileEnergy(p *food.Profile, unit int) float64 {
	sum := 0.0
	for _, leaf := range constituent.Sums().Leaves(constituent.Mass) {
		sum += p.Cells[leaf.Order].Amount * energyFactors()[leaf.ID][unit]
	}
	return sum
}
