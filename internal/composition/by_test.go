package composition_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/food"
)

// A figure is marked where a food that has it by its kin brings a twentieth of it and more,
// a total only where nobody measured it, and a contribution always.
func TestAFigureIsMarkedByKin(t *testing.T) {
	lib := assaytest.Core(t)
	for text, mark := range map[string]string{
		"drink: x\nserves: 1\nbuild: [30 g core:yuzu-juice]\n":                              food.ByKin,
		"drink: x\nserves: 1\nbuild: [0.2 g core:yuzu-juice, 30 g core:lemon-juice]\n":      "",
		"drink: x\nserves: 1\nbuild: [10 g core:yuzu-juice, 30 g core:lemon-juice-bottled]": food.ByKin,
	} {
		a := assaytest.Assay(t, lib, text, 50, "CITAC")
		citric := assaytest.Figure(t, a.PerServing, "CITAC")
		assert.Equal(t, mark, citric.By, text)
		require.Len(t, citric.ByKin(), 1, text)
		assert.Contains(t, citric.ByKin()[0].SourceNote, "acid citrus")
		assert.Empty(t, assaytest.Figure(t, a.PerServing, "OA").By, "the total is published")
		assert.Empty(t, assaytest.Figure(t, a.PerServing, "SUGAR").By)
	}
}
