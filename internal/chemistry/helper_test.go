package chemistry_test

import (
	"fmt"
	"slices"
	"testing"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
	"sipsum/internal/food"
)

// glass gives the chemistry of 100 g of a food at a temperature. Equilibria are solved for
// the first 200 draws of a run, so more would tell no more.
func glass(t testing.TB, lib assaytest.Library, food string, celsius int) *chemistry.Chemistry {
	t.Helper()
	const draws = 200
	return assaytest.Assay(t, lib, fmt.Sprintf("drink: x\nserves: 1\nat: %d °C\nbuild: [100 g %s]\n", celsius, food), draws).Chemistry
}

// withoutPH gives a library of which nobody has published a pH: compositions alone.
func withoutPH(lib assaytest.Library) assaytest.Library {
	bare := assaytest.Library{}
	for id, f := range lib {
		copied := *f
		copied.Values = slices.DeleteFunc(slices.Clone(f.Values), func(v food.Value) bool {
			return v.Constituent == "PH" || v.Constituent == "pH-brewed"
		})
		bare[id] = &copied
	}
	return bare
}
