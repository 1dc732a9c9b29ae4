package composition_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// Milk boiled down to the solids of evaporated milk is evaporated milk, but for
// what the dairy adds and for the difference between two milks.
func TestEvaporatedMilkFromMilk(t *testing.T) {
	lib := assaytest.SR28(t)
	evaporated := srFood(lib, "01153")
	solids := func(f *food.Food) float64 {
		water, ok := assaytest.Printed(f, constituent.Water)
		require.True(t, ok)
		return 100 - water
	}
	a := assaytest.Assay(t, lib, fmt.Sprintf(`
drink: "Boiled down"
serves: 1
components:
  boiled down:
    ingredients: [1000 g sr:01077]
    steps:
      - reduce: {to: %.6f g}
build: [100 g boiled down]
`, 1000*solids(srFood(lib, "01077"))/solids(evaporated)), 3)
	// SR28's parts of 100 g of 01077 weigh 100.25 g (measured lactose exceeds the
	// carbohydrate by difference), so closing its mass moves the solids by 2 %.
	assert.InEpsilon(t, solids(evaporated), 100-assaytest.Figure(t, a.Per100g, constituent.Water).Mean, 0.02)
	const tolerance = 0.10
	for _, id := range []constituent.ID{"CHOCDF", "PROCNT", "FAT", "ASH", "K", "CA", "MG"} {
		want, ok := assaytest.Printed(evaporated, id)
		require.True(t, ok)
		got := assaytest.Figure(t, a.Per100g, id).Mean
		t.Logf("%s %.4g, SR28 01153 prints %.4g: %+.1f %%", id, got, want, 100*(got/want-1))
		assert.InEpsilon(t, want, got, tolerance, id)
	}
	for _, id := range []constituent.ID{"P", "NA"} { // stabilising salts are phosphates of sodium
		want, _ := assaytest.Printed(evaporated, id)
		got := assaytest.Figure(t, a.Per100g, id).Mean
		t.Logf("reported only: %s %.4g, SR28 01153 prints %.4g: %+.1f %%", id, got, want, 100*(got/want-1))
	}
}

func TestSugarsOfEvaporatedMilkAreUnknown(t *testing.T) {
	lib := assaytest.SR28(t)
	_, ok := srFood(lib, "01153").Value(constituent.Sugar)
	require.False(t, ok, "SR28 prints no sugars in 01153")
	a := assaytest.Assay(t, lib, "drink: \"Tin\"\nserves: 1\nbuild: [100 g sr:01153]\n", 3)
	sugar := assaytest.Figure(t, a.Per100g, constituent.Sugar)
	assert.True(t, sugar.Unknown)
	assert.Equal(t, estimate.Unknown, sugar.State)
	carbohydrate := assaytest.Figure(t, a.Per100g, constituent.Carbohydrate)
	assert.GreaterOrEqual(t, sugar.WithBounds, carbohydrate.Mean, "all of the carbohydrate could be sugars")
}
