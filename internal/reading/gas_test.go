package reading_test

import (
	"fmt"
	"testing"

	"sipsum/internal/assay/assaytest"

	"github.com/stretchr/testify/assert"
)

// A refractometer says nothing of gas: what is stated to be left stays, whether the syrup
// was stronger or weaker than its recipe.
func TestStatedGasStaysAsStated(t *testing.T) {
	lib := assaytest.Core(t)
	const text = `
drink: "Fizz"
serves: 1
build: [200 g core:water-brew, 20 g core:sugar-white]
finish:
  - carbonate: {left: 4.0 g/l ± 0.2 g/l}
%s
`
	bare := assaytest.Assay(t, lib, fmt.Sprintf(text, ""), 300)
	assert.InDelta(t, 4.0, bare.Chemistry.CO2.Mean, 0.05)
	for _, readings := range []string{"brix: 10.5", "brix: 8.0", "density: 1.045 g/ml", "brix: 9.5, mass: 215 g ± 1 g"} {
		a := assaytest.Assay(t, lib, fmt.Sprintf(text, "  - measured: {"+readings+"}"), 300)
		assert.InEpsilon(t, bare.Chemistry.CO2.Mean, a.Chemistry.CO2.Mean, 1e-3, readings)
		assert.InEpsilon(t, bare.Chemistry.CO2.SD, a.Chemistry.CO2.SD, 0.01, readings)
		assert.InEpsilon(t, a.Readings[0].Read, a.Readings[0].Used, 0.03, readings)
	}
}
