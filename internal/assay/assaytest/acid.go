package assaytest

import (
	"fmt"
	"maps"
	"slices"
	"testing"

	"sipsum/internal/chemistry"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// Glass gives the chemistry of 100 g of a food at a temperature.
func Glass(t testing.TB, foods Library, of string, celsius int) *chemistry.Chemistry {
	t.Helper()
	const draws = 1000
	return Assay(t, foods, fmt.Sprintf("drink: x\nserves: 1\nat: %d °C\nbuild: [100 g %s]\n", celsius, of), draws).Chemistry
}

// WithoutPH gives a library of which nobody has published a pH: compositions alone.
func WithoutPH(foods Library) Library {
	bare := Library{}
	for id := range foods {
		bare[id] = foods.without(id, "PH", "pH-brewed")
	}
	return bare
}

// Without gives a library with a value of one food taken out.
func Without(foods Library, id food.ID, of constituent.ID) Library {
	other := maps.Clone(foods)
	other[id] = foods.without(id, of)
	return other
}

func (l Library) without(id food.ID, of ...constituent.ID) *food.Food {
	f := *l[id]
	f.Values = slices.DeleteFunc(slices.Clone(f.Values), func(v food.Value) bool { return slices.Contains(of, v.Constituent) })
	return &f
}
