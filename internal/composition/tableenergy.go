package composition

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
)

// TableEnergy is the energy of a serving by the figures that the tables
// themselves print, at central values. It stands beside the energy by the rules
// in force and goes into nothing.
//
// A table's figure follows its row through the steps in proportion to the row's
// energy by the rules: what only mixes or loses water keeps it to the digit,
// what is separated keeps the ratio of the whole food. Of a table that prints one
// unit the other is converted, so that both sums are of the same foods.
type TableEnergy struct {
	ID        constituent.ID // energy in kJ or in kcal
	Amount    float64
	Missing   []string // foods that bring energy and whose table prints none
	Converted bool     // of a food the other unit is printed
}

// PrintedEnergy adds up the tables' own figures for energy.
func PrintedEnergy(pot *ledger.Pot, id constituent.ID) TableEnergy {
	sum := TableEnergy{ID: id}
	unit := energyUnit(id)
	for row, r := range pot.Rows {
		now, entered := rowEnergy(pot, row, unit), profileEnergy(r.Profile, unit)
		printed, converted, ok := printedBy(r.Profile.Food, id)
		switch {
		case ok && entered > 0:
			const per = 100 // g
			sum.Amount += now * printed / per / entered
			sum.Converted = sum.Converted || converted && now > 0
		case now > 0 && !slices.Contains(sum.Missing, r.Profile.Food.ID.String()):
			sum.Missing = append(sum.Missing, r.Profile.Food.ID.String())
		}
	}
	return sum
}

// printedBy gives the energy that a food's table prints, in 100 g, and whether it prints
// the other unit alone.
func printedBy(f *food.Food, id constituent.ID) (amount float64, converted, ok bool) {
	if v, found := f.Value(id); found && food.Stated(v.Amount) {
		return v.Amount, false, true
	}
	other, factor := constituent.EnergyKcal, solution.KilojoulesOfAKilocalorie()
	if id == constituent.EnergyKcal {
		other, factor = constituent.Energy, 1/factor
	}
	v, found := f.Value(other)
	return v.Amount * factor, true, found && food.Stated(v.Amount)
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
