package liquid

import (
	"cmp"
	"fmt"
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/solution"
)

// TooDry tells why a pot is no liquid that a refractometer or a densimeter reads; empty
// if it is one.
func TooDry(pot *ledger.Pot) string {
	if crystals(pot) {
		return "it is a pure substance and no solution: the water of a crystal does not run"
	}
	grams := map[constituent.ID]float64{}
	for _, leaf := range constituent.Sums().Leaves(constituent.Mass) {
		grams[leaf.ID] = pot.Central(leaf.ID)
	}
	if solution.IsFat(grams) {
		return "it is fat and next to no water: instruments for sugar and salt do not read it"
	}
	if why := unstated(pot, func(ledger.Row) bool { return true }); why != "" {
		return why
	}
	share, least := solution.Wetness(grams, solid(pot))
	if share >= least {
		return ""
	}
	return fmt.Sprintf("it is no liquid: %.0f %% of what is not fat is water or alcohol, a liquid holds %g %% or more", share, least)
}

// Unstated begins the reason of what is withheld since nobody knows how much of a pot is
// water or alcohol; which of them, and the foods, follow.
const Unstated = "nobody has stated the "

// NoVolume tells why nobody knows how much room a pot takes: mass that may be water, alcohol
// or anything else, of foods that state no density. Empty if it is known.
func NoVolume(pot *ledger.Pot) string {
	return unstated(pot, func(r ledger.Row) bool { return !statesDensity(r.Profile.Food) })
}

// unstated tells which water and alcohol is missing, of the rows that count, where it matters.
func unstated(pot *ledger.Pot, counts func(ledger.Row) bool) string {
	open, foods, what := 0.0, []string(nil), ""
	for row, r := range pot.Rows {
		mass := openMass(pot, row)
		if mass == nil || mass[0] <= 0 || !counts(r) {
			continue
		}
		open += mass[0]
		foods = append(foods, r.Profile.Food.ID.String())
		if ledger.OpenWater(pot, row) != nil {
			what = "water of "
		}
	}
	// guard: open water is not read
	if open > solution.MostOpenWater()*pot.Central(constituent.Mass) {
		return Unstated + cmp.Or(what, "alcohol of ") + note.Listed(foods)
	}
	return ""
}

// openMass gives what of a row may be water or alcohol or anything else, in grams; nil if
// nothing is open.
func openMass(pot *ledger.Pot, row int) []float64 {
	if water := ledger.OpenWater(pot, row); water != nil {
		return water
	}
	// guard: open alcohol is not read
	if alcohol := ledger.OpenAlcohol(pot, row); alcohol != nil {
		return alcohol
	}
	return nil
}

// OpenMass gives the mass in grams that may be water or alcohol or anything else, at central
// values.
func OpenMass(pot *ledger.Pot) (grams float64) {
	for row := range pot.Rows {
		if open := openMass(pot, row); open != nil {
			grams += open[0]
		}
	}
	return grams
}

// solid reports whether a pot is all of solid foods with the water that they came with.
func solid(pot *ledger.Pot) bool {
	const same = 0.01 // our own bound: juice that was pressed and what was boiled down differ by more
	for row, r := range pot.Rows {
		mass, water := pot.CentralOf(row, constituent.Mass), pot.CentralOf(row, constituent.Water)
		if !r.Profile.Food.Facts().Solid || math.Abs(water-mass*r.Profile.Cell(constituent.Water).Amount) > same*mass {
			return false
		}
	}
	return true
}

// crystals reports whether a pot holds nothing but pure substances of solid groups.
func crystals(pot *ledger.Pot) bool {
	for _, row := range pot.Rows {
		f := row.Profile.Food
		if !f.Chemical || f.Facts().Liquid {
			return false
		}
	}
	return true
}
