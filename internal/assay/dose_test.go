package assay_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/food"
)

// What a line weighs in is told as the file writes it and as it comes to one serving, through
// components in components, whatever the steps take out again.
func TestDosesOfFoods(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), `
drink: "Dosed"
serves: 4
components:
  base:
    ingredients: [190 g core:water-pure, 10 g core:sugar-white]
    steps:
      - steep: {ingredients: [6 g core:nutmeg], collect: 150 g}
  cordial:
    ingredients: [75 g base, 25 g core:water-pure]
build: [40 g cordial, 8 g core:sugar-white]
`, 20)
	of := func(component, code string) assay.Dose {
		for _, p := range a.Doses {
			if p.Component == component && p.Food == (food.ID{Table: "core", Code: code}) {
				return p
			}
		}
		t.Fatalf("no %s in %q", code, component)
		return assay.Dose{}
	}
	nutmeg := of("base", "nutmeg")
	assert.Equal(t, 6.0, nutmeg.Batch)
	assert.InDelta(t, 6*(75.0/150)*(40.0/100)/4, nutmeg.Serving, 1e-9)
	assert.InDelta(t, 2, of("", "sugar-white").Serving, 1e-9)
	assert.InDelta(t, 10*(75.0/150)*(40.0/100)/4, of("base", "sugar-white").Serving, 1e-9)
}
