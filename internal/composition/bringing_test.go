package composition_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// twoPots are 60 g of a syrup and 40 g of a cordial in a glass. Of sucrose the syrup's sugar brings
// 30 g, the cordial's 10 g and its juice 10 g.
func twoPots(t *testing.T) *ledger.Pot {
	t.Helper()
	holds := func(sucrose float64) map[constituent.ID]float64 {
		return map[constituent.ID]float64{"SUCS": sucrose, "WATER": 1 - sucrose}
	}
	sugar := assaytest.Poured{Code: "sugar", Grams: 30, Holds: holds(1)}
	syrup, _ := assaytest.Pot(20, sugar, assaytest.Poured{Code: "water", Grams: 30, Holds: holds(0)})
	sugar.Grams = 10
	cordial, _ := assaytest.Pot(20, sugar, assaytest.Poured{Code: "juice", Grams: 30, Holds: holds(1.0 / 3)})
	pot := ledger.New(syrup.Columns, syrup.N)
	for name, from := range map[string]*ledger.Pot{"cordial": cordial, "syrup": syrup} {
		require.Equal(t, pot.Columns.List, from.Columns.List, name)
	}
	one := estimate.Constant(pot.N, 1)
	pot.Mix(syrup, one, "syrup")
	pot.Mix(cordial, one, "cordial")
	return pot
}

// What a food brings through two pots is told for each and in all: 40 of 50 g by hand.
func TestAnIngredientThroughTwoPots(t *testing.T) {
	pot := twoPots(t)
	list := (&composition.Meter{}).Ingredients(pot, composition.SortOf(pot, constituent.Must("SUCS")))
	require.Len(t, list, 2, "the water brings nothing, and is known to")
	sugar, juice := list[0], list[1]
	assert.Equal(t, "own:sugar", sugar.Food.ID.String())
	assert.InDelta(t, 40, sugar.Mean, 1e-9)
	assert.InDelta(t, 0.8, sugar.Share.Mean, 1e-9)
	require.Len(t, sugar.Through, 2)
	assert.Equal(t, []string{"syrup"}, sugar.Through[0].Path)
	assert.InDelta(t, 0.6, sugar.Through[0].Share.Mean, 1e-9)
	assert.InDelta(t, 0.2, sugar.Through[1].Share.Mean, 1e-9)
	assert.InDelta(t, 0.2, juice.Share.Mean, 1e-9)
	assert.InDelta(t, 0.2, juice.Worst, 1e-9, "all is known, and nothing has a spread")
}

// What others do not know counts against a share at its worst, what a food itself does not know
// does not: 30 of 30 + 20 g at worst for the one, nothing for the other; nothing bounds a NaN.
func TestTheWorstShareHasAllOthersAtTheirMost(t *testing.T) {
	known := assaytest.Poured{Code: "known", Grams: 100, Holds: map[constituent.ID]float64{"SUCS": 0.3, "WATER": 0.7}}
	open := assaytest.Poured{Code: "open", Grams: 100, Holds: map[constituent.ID]float64{"WATER": 0.8, "GLUS": 0.2}, Most: map[constituent.ID]float64{"SUCS": 0.2, "SUGAR": 0.2}}
	worst := func(of ...assaytest.Poured) map[string]composition.Ingredient {
		pot, _ := assaytest.Pot(20, of...)
		all := map[string]composition.Ingredient{}
		for _, i := range (&composition.Meter{}).Ingredients(pot, composition.SortOf(pot, constituent.Must("SUCS"))) {
			all[i.Food.ID.Code] = i
		}
		return all
	}
	all := worst(known, open)
	assert.InDelta(t, 0.6, all["known"].Worst, 1e-9)
	assert.InDelta(t, 0, all["open"].Worst, 1e-9)
	assert.True(t, all["open"].Unknown)
	assert.InDelta(t, 20, all["open"].Most, 1e-9)
	open.Most["SUCS"] = math.NaN()
	assert.True(t, math.IsNaN(worst(known, open)["known"].Worst), "nothing bounds it")
}

// A share spreads as what brings it does: the worst draw is the least of all, below the interval.
func TestTheWorstDrawIsBelowTheInterval(t *testing.T) {
	of := func(code string) assaytest.Poured {
		return assaytest.Poured{Code: code, Grams: 100, SD: 20, Holds: map[constituent.ID]float64{"SUCS": 0.3, "WATER": 0.7}}
	}
	pot, _ := assaytest.Pot(400, of("a"), of("b"))
	list := (&composition.Meter{}).Ingredients(pot, composition.SortOf(pot, constituent.Must("SUCS")))
	least := 1.0
	for d := range pot.N {
		least = min(least, pot.Of(0, "SUCS")[d]/pot.Total("SUCS")[d])
	}
	i := slices.IndexFunc(list, func(i composition.Ingredient) bool { return i.Food.ID.Code == "a" })
	assert.InDelta(t, least, list[i].Worst, 1e-12)
	assert.Less(t, list[i].Worst, list[i].Share.Low)
}

// Solids are what is no water, alcohol or gas: 100 g of a wine of 85 g of water and 11 g of
// alcohol have 4 g.
func TestSolids(t *testing.T) {
	pot, _ := assaytest.Pot(20, assaytest.Poured{Code: "wine", Grams: 100, Holds: map[constituent.ID]float64{"WATER": 0.85, "ALC": 0.11, "GLYRL": 0.04}})
	assert.InDelta(t, 4, composition.Solids(pot).Total(pot)[0], 1e-9)
}
