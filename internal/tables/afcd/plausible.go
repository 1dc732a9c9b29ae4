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

// A food that is nearly all water holds no air either, and is no lighter than what it
// is made of by more than this (our own bounds: a drink at 0.95 g/ml is a slip).
const (
	nearlyWater       = 90 // g/100 g
	mostBelowComposed = 0.97
)

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
	heavy := f.Density.GramsPerMl > composed*mostAboveComposed
	light := grams[constituent.Water] >= nearlyWater && f.Density.GramsPerMl < composed*mostBelowComposed
	if !ok || grams[constituent.Water] == 0 || !heavy && !light {
		return ""
	}
	note = fmt.Sprintf("the density %.3g g/ml is left out: water and solids as printed give %.3g", f.Density.GramsPerMl, composed)
	f.Density = food.Density{GramsPerMl: food.None, SD: food.None}
	return note
}
