package assay_test

import (
	"slices"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/food"
)

// withoutPH gives the library without any published pH of its foods: compositions alone.
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
