package assay_test

import (
	"fmt"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
)

// Draws, foods and equilibria are worked out side by side; every digit is the same
// however many cores there are.
func TestAnyNumberOfCoresGivesOneResult(t *testing.T) {
	lib := assaytest.Core(t)
	const text = `
drink: "Side by Side"
serves: 2
at: 6 °C
components:
  cordial:
    ingredients: [150 g ± 5 g core:orange-juice, 90 g core:sugar-white, 2.0 g ± 0.1 g core:citric-acid]
    steps:
      - reduce: {by: 12 %}
build: [36 g ± 2 g core:espresso, 60 g core:water-mineral-medium, 25 g cordial]
`
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	solution := func(c *chemistry.Chemistry) string { // %v prints every digit, and NaN as itself
		return fmt.Sprintf("%v", []any{c.PH, c.PHMeter, c.Acidity, c.BrixAcid, c.Capacity, c.StrongIons, c.Curve})
	}
	printed := func() []string {
		a := assaytest.Assay(t, lib, text, 300)
		assert.Empty(t, a.Chemistry.PH.Why)
		return []string{solution(a.Chemistry), solution(a.Components[2].Chemistry), fmt.Sprintf("%v", a.PerServing), fmt.Sprintf("%v", cells(a))}
	}
	one := printed()
	for _, cores := range []int{2, 3, 7} {
		runtime.GOMAXPROCS(cores)
		assert.Equal(t, one, printed(), "%d cores", cores)
	}
}
