package liquid_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
)

// heavy is a liquid whose pack states a density that its composition does not have.
const heavy = `drink: "Heavy"
serves: %d
foods:
  heavy: {name: "Heavy", per: 100 ml, density: 1.20 g/ml ± 0.02 g/ml, values: {CHOAVL: 10 g, SUGAR: 10 g, FAT: 0 g ± 0 g, PROCNT: 0 g ± 0 g}, source: "invented"}
  light: {name: "Light", per: 100 ml, density: 0.92 g/ml, values: {FAT: 92 g, CHOAVL: 0 g ± 0 g, PROCNT: 0 g ± 0 g}, source: "invented"}
  dust: {name: "Dust", per: 100 g, density: 0.4 g/ml, values: {WATER: 4 g, STARCH: 96 g}, source: "invented"}
components:
  made:
    ingredients: [120 g own:heavy]
    steps: [%s]
build: [%s]
`

func volume(t *testing.T, serves int, step, build string) (ml, sd float64) {
	t.Helper()
	a := assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(heavy, serves, step, build), 100)
	return a.Volume.Mean, a.Volume.SD
}

// A drink of one food prints what its pack does: arithmetic.
func TestAStatedDensityIsTheDensity(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(heavy, 2, "heat: {code: 2151}", "250 ml own:heavy"), 100)
	assert.InDelta(t, 125, a.Volume.Mean, 1e-9)
	assert.Less(t, a.Volume.SD, 0.4, "the measure's last digit: the density that made grams of it makes ml of them")
	assert.InDelta(t, 1.20, a.Density.Mean, 1e-9)
	assert.InDelta(t, 10, assaytest.Figure(t, a.Per100ml, constituent.Sugar).Mean, 1e-9)
	assert.InDelta(t, 170, assaytest.Figure(t, a.Per100ml, constituent.Energy).Mean, 1e-6, "10 g at 17 kJ/g, Regulation (EU) No 1169/2011, Annex XIV")
	require.NotNil(t, a.Chemistry)
	assert.InDelta(t, 1.20, a.Chemistry.Density.Mean, 1e-9)
}

func TestStatedDensitiesBlendByVolume(t *testing.T) {
	heavyAlone, _ := volume(t, 1, "heat: {code: 2151}", "60 g own:heavy")
	assert.InDelta(t, 50, heavyAlone, 1e-9)
	both, _ := volume(t, 1, "heat: {code: 2151}", "60 g own:heavy, 46 g own:light")
	assert.InDelta(t, 100, both, 0.5, "50 ml and 50 ml; sugar takes up a little less in more water")
	within, _ := volume(t, 1, "heat: {code: 2151}", "60 g made")
	assert.InDelta(t, 50, within, 0.1, "a component of it is as dense")
}

// What is done to a food changes its density gradually, down to no effect.
func TestAStatedDensityFadesAsWaterGoes(t *testing.T) {
	before := 1.20
	for _, to := range []float64{119.99, 110, 80, 40, 15} {
		ml, _ := volume(t, 1, fmt.Sprintf("reduce: {to: %g g}", to), fmt.Sprintf("%g g made", to))
		density := to / ml
		if to > 119 {
			assert.InDelta(t, before, density, 0.001, "%g", to)
		}
		assert.Greater(t, density, 1.0, "%g", to)
		assert.Less(t, density, 1.6, "%g: nothing here is heavier than sugar", to)
	}
}

// A powder's density is that of a heap; its air is not in the drink.
func TestAPowderBringsNoAir(t *testing.T) {
	alone, _ := volume(t, 1, "heat: {code: 2151}", "10 g own:dust")
	assert.InDelta(t, 25, alone, 1e-9, "a drink of it alone prints its pack")
	water, _ := volume(t, 1, "heat: {code: 2151}", "100 g core:water-pure")
	stirred, _ := volume(t, 1, "heat: {code: 2151}", "100 g core:water-pure, 10 g own:dust")
	assert.InDelta(t, 6.3, stirred-water, 0.5, "starch at about 0.62 ml/g, data/specific_volumes.csv")
	spoon, _ := volume(t, 1, "heat: {code: 2151}", "25 ml own:dust")
	assert.InDelta(t, 25, spoon, 1e-9, "a spoon of it is measured by the heap")
}
