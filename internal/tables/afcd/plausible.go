package afcd

import (
	"fmt"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/solution"
)

// mostAboveComposed is how much denser a food may be than what it is made of: air
// makes foods lighter, nothing makes them heavier (our own bound: figures that
// round to one decimal and constituents that nobody measured stay below it).
const mostAboveComposed = 1.05

// parts are the constituents of which a food's volume is made, each with the leaf
// as which its mass counts.
var parts = map[constituent.ID]constituent.ID{
	constituent.Water: constituent.Water, constituent.Protein: constituent.Protein, constituent.Fat: "FAT-other",
	constituent.Sugar: "SUGAR-other", "STARCH": "STARCH", constituent.Fibre: constituent.Fibre,
	constituent.Alcohol: constituent.Alcohol, constituent.Ash: constituent.Ash,
}

// refuse takes away a density that the food's own composition contradicts: the
// syrup of canned fruit with the density of one for baking.
func refuse(f *food.Food) (note string) {
	if !food.Stated(f.Density.GramsPerMl) {
		return ""
	}
	grams := map[constituent.ID]float64{}
	for id, leaf := range parts {
		if v, ok := f.Value(id); ok && v.State == estimate.Calculated {
			grams[leaf] = v.Amount
		}
	}
	if v, ok := f.Value(constituent.Available); ok && v.State == estimate.Calculated {
		grams["CHOAVL-other"] = max(v.Amount-grams["SUGAR-other"]-grams["STARCH"], 0)
	}
	composed, ok := solution.Density(grams)
	if !ok || grams[constituent.Water] == 0 || f.Density.GramsPerMl <= composed*mostAboveComposed {
		return ""
	}
	note = fmt.Sprintf("the density %.3g g/ml is left out: water and solids as printed give %.3g", f.Density.GramsPerMl, composed)
	f.Density = food.Density{GramsPerMl: food.None, SD: food.None}
	return note
}
