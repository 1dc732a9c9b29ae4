package assay_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
)

// Coffee brewed in a step and the coffee of the core table, by literature of its own, are
// one drink at the same strength: their intervals overlap. The fat of the core table's
// filter coffee is of paper; the step does not know the filter, and lies above it.
func TestBrewedCoffeeAgreesWithTheCoffeeOfTheCoreTable(t *testing.T) {
	judged := []constituent.ID{
		"WATER", "PROCNT", "FAT", "CHOCDF", "CHOAVL", "FIBTG", "ASH", "OA", "CITAC", "MALAC", "QUINAC", "ACEAC", "FORAC", "LACAC", "GLYCLAC",
		"CAFFN", "CHLRAC", "trigonelline", "K", "MG", "CA", "P", "NA", "phosphate", "NIA", "ENERC",
	}
	for _, c := range []struct {
		dose, water       int
		brew, core        string
		differs           constituent.ID
		available, within float64 // g/100 g of available carbohydrate: traces of sugar
	}{
		{18, 60, "{out: 38 g, strength: 9.5 %}", "core:espresso", "", 0.2, 0.25},
		{60, 1000, "{out: 880 g, yield: 20 %}", "core:filter-coffee", "FAT", 0.03, 0.03},
	} {
		brewed := assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(`
drink: "Brewed"
serves: 1
components:
  cup:
    ingredients: [%d g core:coffee-roasted-arabica, %d g core:water-pure]
    steps:
      - brew: %s
build: [100 g cup]
`, c.dose, c.water, c.brew), 300)
		table := assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf("drink: \"Poured\"\nserves: 1\nbuild: [100 g %s]\n", c.core), 300)
		for _, id := range judged {
			a, b := assaytest.Figure(t, brewed.Per100g, id), assaytest.Figure(t, table.Per100g, id)
			t.Logf("%-18s %-13s brewed %8.4g (%.4g–%.4g)  table %8.4g (%.4g–%.4g)", c.core, id, a.Mean, a.Low, a.High, b.Mean, b.Low, b.High)
			if id != c.differs {
				assert.LessOrEqual(t, a.Low, b.High, "%s of %s", id, c.core)
				assert.LessOrEqual(t, b.Low, a.High, "%s of %s", id, c.core)
			}
		}
		assert.InDelta(t, c.available, assaytest.Figure(t, brewed.Per100g, "CHOAVL").Mean, c.within, "%s", c.core)
	}
}
