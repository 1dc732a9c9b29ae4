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

func TestCarbonDioxideInAVessel(t *testing.T) {
	// Of an ideal gas a mol takes 22.41397 l at 0 °C and 1 atm (CODATA 2018).
	assert.InEpsilon(t, 1, solution.CO2Pressure(1, 0, 22.41397, 0), 1e-5)
	assert.InEpsilon(t, 2, solution.CO2Pressure(1, 0, 22.41397*(298.15/273.15)/2, 25), 1e-5)
	// A liquid takes its solubility for each atm; with a head space both share.
	assert.InEpsilon(t, 3, solution.CO2Pressure(3*0.75*solution.CO2Solubility(10), 0.75, 0, 10), 1e-12)
	both := 0.75*solution.CO2Solubility(0) + 1/22.41397
	assert.InEpsilon(t, 1, solution.CO2Pressure(both, 0.75, 1, 0), 1e-5)
	assert.Zero(t, solution.CO2Pressure(1, 0, 0, 20), "there is no vessel")
	// 1 atm is 101 325 Pa by definition.
	assert.InEpsilon(t, 2.0265, solution.Bar(2), 1e-12)
	// The gas weighs 1.977 g/l at 0 °C and 1 atm and 44.0095 g/mol: CRC Handbook of
	// Chemistry and Physics.
	assert.InEpsilon(t, 44.0095/1.977, solution.CO2Volumes(1), 0.001)
	assert.InDelta(t, 298.15, solution.Kelvin(25), 1e-9)
}
