package acidity_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// isLiquid reports whether a core food pours: it is of a liquid group and holds a tenth of
// water at least, which leaves powders out, butter and jam not. A few drinks stand in the
// group "other".
func isLiquid(f *food.Food) bool {
	water, ok := f.Value(constituent.Water)
	if !ok || water.Amount < 10 {
		return false
	}
	return slices.ContainsFunc(food.Groups(), func(g food.Group) bool { return g.Name == f.Group && g.Liquid })
}

// Of the liquids of the core table, spirits and oils left out, most say a pH; each that does
// not says why.
func TestMostLiquidsHaveAPH(t *testing.T) {
	lib := assaytest.Core(t)
	liquids, given, narrow := 0, 0, 0
	why := map[string][]string{}
	for _, id := range slices.SortedFunc(maps.Keys(lib), func(a, b food.ID) int { return strings.Compare(a.Code, b.Code) }) {
		f := lib[id]
		if !isLiquid(f) || f.Group == "spirit" || f.Group == "oil" {
			continue
		}
		liquids++
		c := assaytest.Glass(t, lib, id.String(), 25)
		if c.PHMeter.Why == "" {
			given++
			if f.Group != "water" {
				assert.LessOrEqual(t, c.PHMeter.Mean, mostPH, id.Code)
			}
			if half, known := widestHalf[id.Code]; known {
				assert.LessOrEqual(t, (c.PHMeter.High-c.PHMeter.Low)/2, half, id.Code)
				narrow++
			}
			continue
		}
		why[f.Group] = append(why[f.Group], id.Code)
	}
	for _, group := range slices.Sorted(maps.Keys(why)) {
		t.Logf("withheld, %s: %s", group, strings.Join(why[group], " "))
	}
	t.Logf("%d liquids, %d with a pH", liquids, given)
	assert.GreaterOrEqual(t, float64(given)/float64(liquids), leastGiven)
	assert.Equal(t, len(widestHalf), narrow, "each of these says a pH")
}

// mostPH is the most that a food has but for waters and salts: white of egg, 8.5 and
// more when it is old (Handbook of Food Preparation 1993: 7.0 to 9.0).
const mostPH = 8.5

// leastGiven is our own bound: a table of drinks of which most say no pH is of little use.
const leastGiven = 0.6

// widestHalf is how wide half of the interval of a drink may be that every barista knows:
// our own bound, what such drinks differ by.
var widestHalf = map[string]float64{
	"espresso": 0.4, "filter-coffee": 0.4, "cold-brew": 0.4, "black-tea": 0.4, "green-tea": 0.4, "wine-red": 0.4, "wine-white": 0.4,
	"hibiscus-infusion": 0.6, "vermouth-dry": 0.6, "vermouth-sweet": 0.6, "tonic-water": 0.6, "oat-drink": 0.6, "cola": 0.6, "beer": 0.6,
}
