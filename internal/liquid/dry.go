package liquid

import (
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
	open, foods := OpenWater(pot)
	// guard: open water is not read
	if open > solution.MostOpenWater()*pot.Central(constituent.Mass) {
		return WaterUnstated + note.Listed(foods)
	}
	share, least := solution.Wetness(grams, solid(pot))
	if share >= least {
		return ""
	}
	return fmt.Sprintf("it is no liquid: %.0f %% of what is not fat is water or alcohol, a liquid holds %g %% or more", share, least)
}

// WaterUnstated begins the reason of what is withheld since nobody knows how much of a pot is
// water; the foods follow.
const WaterUnstated = "nobody has stated the water of "

// OpenWater gives the mass in grams that may be water or anything else, at central values, and
// the foods that it is of.
func OpenWater(pot *ledger.Pot) (grams float64, foods []string) {
	for row, r := range pot.Rows {
		if open := ledger.OpenWater(pot, row); open != nil && open[0] > 0 {
			grams += open[0]
			foods = append(foods, r.Profile.Food.ID.String())
		}
	}
	return grams, foods
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
