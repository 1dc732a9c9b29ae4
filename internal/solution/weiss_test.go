package solution_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/solution"
)

// Solubility of carbon dioxide in water, mol/(l atm): the equation of Weiss 1974
// (Marine Chemistry 2:203) for fresh water, tabulated elsewhere; the last row is
// of another source, log K = −1.468 at 25 °C per kilogram of water of the thermodynamic data of the US
// Geological Survey (phreeqc.dat), times the density of water, 0.99705.
func TestCO2SolubilityAgainstPublishedValues(t *testing.T) {
	const tolerance = 0.005
	for _, c := range []struct{ celsius, want float64 }{
		{0, 0.07758}, {2, 0.07174}, {4, 0.06650}, {5, 0.06408}, {8, 0.05751}, {10, 0.05366}, {15, 0.04553}, {20, 0.03910},
		{25, 0.03397}, {30, 0.02983}, {40, 0.02370},
		{25, 0.03404 * 0.99705},
	} {
		assert.InEpsilon(t, c.want, solution.CO2Solubility(c.celsius), tolerance, "%v °C", c.celsius)
	}
}
