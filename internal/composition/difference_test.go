package composition_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// total adds a difference up.
func total(of map[constituent.ID]estimate.Amount) float64 {
	sum := of["MASS"].Mean
	for _, id := range []constituent.ID{"WATER", "PROCNT", "FAT", "ASH", "ALC", "CO2"} {
		sum -= of[id].Mean
	}
	for _, id := range []constituent.ID{"CHOCDF", "SUGAR", "FIBTG", "POLYL"} {
		sum += of[id].Mean
	}
	return sum
}

// Carbohydrate by difference is what the mass leaves, food by food; of a food that does not know
// its ash it is what is known.
func TestByDifferenceIsWhatTheMassLeaves(t *testing.T) {
	juice := assaytest.Poured{Code: "juice", Grams: 100, Holds: grams{"WATER": 0.88, "PROCNT": 0.005, "FAT-other": 0.002, "ASH": 0.003, "ALC": 0.001, "SUGAR-other": 0.09, "MASS-other": 0.019}}
	pot, _ := assaytest.Pot(2, juice)
	of := composition.ByDifference(pot)
	assert.InDelta(t, 10.9, total(of), 1e-9, "100 − 88 − 0.5 − 0.2 − 0.3 − 0.1")
	assert.InDelta(t, 100, of["MASS"].Mean, 1e-9)
	assert.InDelta(t, 88, of["WATER"].Mean, 1e-9)

	dry := pot.Copy()
	water := dry.Write(0, columnOf(t, dry.Columns.Below("WATER")))
	for d := range water {
		water[d] -= 50
	}
	assert.InDelta(t, 10.9, total(composition.ByDifference(dry)), 1e-9, "boiling water off leaves it")

	pack := assaytest.Poured{Code: "pack", Grams: 50, Holds: grams{"WATER": 0.8, "SUGAR-other": 0.2}, Most: grams{"ASH": 0.01, "CHOCDF": 0.1}}
	pot, _ = assaytest.Pot(2, juice, pack)
	of = composition.ByDifference(pot)
	assert.InDelta(t, 10.9+10, total(of), 1e-9)
	assert.InDelta(t, 10, of["CHOCDF"].Mean, 1e-9)
	assert.Greater(t, of["CHOCDF"].WithBounds, 10.0)
	assert.False(t, math.IsNaN(of["CHOCDF"].WithBounds))
}

func columnOf(t *testing.T, cols []int) int {
	t.Helper()
	assert.Len(t, cols, 1)
	return cols[0]
}
