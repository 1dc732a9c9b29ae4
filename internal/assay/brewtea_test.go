package assay_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
)

// A gram of black leaf in 100 g of water for three minutes, and the black tea of the core
// table by literature of its own: their intervals overlap. What bags of 0.96 g in 100 ml gave
// in 2 to 3 min (black tea polyphenol database, Table 1, mg/100 ml) lies inside what the step
// foretells.
func TestBrewedTeaAgreesWithTheTeaOfTheCoreTable(t *testing.T) {
	brewed := assaytest.Assay(t, assaytest.Core(t), `
drink: "Brewed"
serves: 1
components:
  cup:
    ingredients: [1000 g core:water-pure]
    steps:
      - steep: {ingredients: [10 g core:tea-leaf-black], at: 95 °C, for: 3 min}
build: [100 g cup]
`, 300)
	table := assaytest.Assay(t, assaytest.Core(t), "drink: \"Poured\"\nserves: 1\nbuild: [100 g core:black-tea]\n", 300)
	for _, id := range []constituent.ID{"CAFFN", "GALLAC", "CATEC", "theaflavins", "theanine"} {
		a, b := assaytest.Figure(t, brewed.Per100g, id), assaytest.Figure(t, table.Per100g, id)
		t.Logf("%-12s brewed %8.4g (%.4g–%.4g)  table %8.4g (%.4g–%.4g)", id, a.Mean, a.Low, a.High, b.Mean, b.Low, b.High)
		assert.LessOrEqual(t, a.Low, b.High, "%s", id)
		assert.LessOrEqual(t, b.Low, a.High, "%s", id)
	}
	for id, published := range map[constituent.ID]float64{"GALLAC": 2.7, "CATEC": 9.4, "theaflavins": 1.3} {
		f := assaytest.Figure(t, brewed.Per100g, id)
		assert.True(t, f.Low <= published && published <= f.High, "%s: %.3g outside %.3g to %.3g", id, published, f.Low, f.High)
	}
}
