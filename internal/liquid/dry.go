package liquid

import (
	"fmt"
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
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
	share, least := solution.Wetness(grams, solid(pot))
	if share >= least {
		return ""
	}
	if _, unknown := pot.Bound(constituent.Water); len(unknown) > 0 {
		return "nobody has stated its water"
	}
	return fmt.Sprintf("it is no liquid: %.0f %% of what is not fat is water or alcohol, a liquid holds %g %% or more", share, least)
}

// solid reports whether a pot is all of solid foods with the water that they came with.
func solid(pot *ledger.Pot) bool {
	const same = 0.01 // our own bound: juice that was pressed and what was boiled down differ by more
	for row, r := range pot.Rows {
		mass, water := pot.Of(row, constituent.Mass)[0], pot.Of(row, constituent.Water)[0]
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
