package solution_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/solution"
)

// Nitrogen in water at 1 bar, in mole fractions: J. Res. Natl. Bur. Stand. 77A:133 (1973), table 3. A
// litre of water has 55.35 mol; an atmosphere is 1.01325 bar.
func TestNitrogenInWaterAgainstMeasurements(t *testing.T) {
	for _, c := range []struct{ celsius, fraction, within float64 }{
		{0, 18.65e-6, 0.08}, {5, 16.42e-6, 0.04}, {20, 12.52e-6, 0.01}, {25, 11.61e-6, 0.01}, {40, 9.67e-6, 0.04},
	} {
		assert.InEpsilon(t, c.fraction*55.35*1.01325, solution.Nitrogen.Solubility(c.celsius), c.within, "%v °C", c.celsius)
	}
}

// A supplier of gases prints 1.5 g/l of nitrous oxide at 15 °C and 1 atm (finegases.com, nitrous oxide);
// Sander's evaluations lie between 2.1 and 2.5e-4 mol/(m³ Pa) at 25 °C, of 44.013 g/mol and 101 325 Pa.
func TestNitrousOxideInWaterAgainstPrint(t *testing.T) {
	gas := solution.NitrousOxide
	assert.InDelta(t, 1.5, gas.Solubility(15)*gas.Molar(), 0.06)
	assert.InDelta(t, 2.3e-4*44.013*101.325, gas.Solubility(25)*gas.Molar(), 0.1)
	assert.InDelta(t, 44.013, gas.Molar(), 0.003)
	assert.InDelta(t, 28.0134, solution.Nitrogen.Molar(), 0.002)
}

// What is dissolved and what is above it are what was put in; only carbon dioxide is Weiss's.
func TestAGasInAVesselIsAllThere(t *testing.T) {
	for _, gas := range []solution.Gas{solution.CarbonDioxide, solution.NitrousOxide, solution.Nitrogen} {
		p := gas.Pressure(0.18, 0.4, 0.35, 10)
		assert.InDelta(t, 0.18, p*gas.Solubility(10)*0.4+p*0.35/(0.0820574*283.15), 1e-5, gas.Name())
		assert.Zero(t, gas.Pressure(1, 0, 0, 20), "there is no vessel")
		assert.Greater(t, gas.Solubility(4), gas.Solubility(30), "cold water holds more")
	}
	assert.Equal(t, solution.CO2Pressure(0.1, 0.5, 0.2, 7), solution.CarbonDioxide.Pressure(0.1, 0.5, 0.2, 7))
	assert.NotEqual(t, solution.NitrousOxide.Pressure(0.1, 0.5, 0.2, 7), solution.CarbonDioxide.Pressure(0.1, 0.5, 0.2, 7))
}
