package reading_test

import (
	"testing"

	"sipsum/internal/assay/assaytest"

	"github.com/stretchr/testify/assert"
)

// Added sugars are a part of the sugars: what a reading takes from these, it takes from
// them too.
func TestAReadingMovesAddedSugarsWithTheSugars(t *testing.T) {
	lib := assaytest.Core(t)
	a := assaytest.Assay(t, lib, `
drink: x
serves: 1
components:
  base: {ingredients: [60 g core:sugar-white, 40 g core:water-pure, 30 g core:honey], measured: {tds: 45.0 % ± 0.1 %}}
build: [50 g base]
`, 200)
	sugar, added := a.Serving.Total("SUGAR"), a.Serving.Total("SUGAD")
	assert.Positive(t, added[0])
	for d, x := range added {
		assert.LessOrEqual(t, x, sugar[d]*(1+1e-9))
	}
}
