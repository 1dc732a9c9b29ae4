package reading_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
)

// By hand: 200 g of sugar in 200 g of water read 50 °Bx; at 65 they weigh 200/0.65 =
// 307.7 g and at 45 444.4 g. Sugar neither boils away nor comes.
func TestWaterExplainsWhatARecipeDoesNot(t *testing.T) {
	lib, simple := assaytest.Core(t), jars[0]
	for reading, mass := range map[string]float64{"brix: 65.0": 307.7, "brix: 45.0": 444.4, "mass: 350 g": 350} {
		a := simple.read(t, lib, 500, reading)
		r := a.Readings[0]
		assert.False(t, r.Agrees, reading)
		assert.InEpsilon(t, mass, a.Mass.Mean, 0.003, reading)
		assert.InEpsilon(t, 200, a.Serving.Central("SUCS"), 0.005, "the sugar is what was poured")
		assert.InEpsilon(t, r.Read, r.Used, 1e-6, reading)
		assert.Contains(t, r.Advice, "of water count as", reading)
		assert.Len(t, assaytest.NotesOf(a, "reading disagrees", ""), 1, "once")
	}
}

// Where the mass is stated or was weighed, no water has gone: then the reading is used as
// far as the recipe allows, and says so.
func TestAStatedMassLetsNoWaterGo(t *testing.T) {
	lib := assaytest.Core(t)
	weighed := jars[0].read(t, lib, 500, "brix: 65.0", "mass: 400 g")
	stated := jar{"", jars[0].ingredients, "reduce: {to: 375 g}", ""}.read(t, lib, 500, "brix: 65.0")
	assert.InDelta(t, 400, weighed.Mass.Mean, 0.5)
	assert.InDelta(t, 375, stated.Mass.Mean, 0.5)
	for _, r := range []float64{readingOf(t, weighed, "brix").Used, readingOf(t, stated, "brix").Used} {
		assert.Less(t, r, 54.0)
	}
	assert.True(t, readingOf(t, weighed, "mass").Agrees)
	assert.False(t, readingOf(t, weighed, "brix").Agrees)
	assert.False(t, readingOf(t, stated, "brix").Agrees)
}

// 350 g at 50 °Bx of what was 400 g at 50 °Bx: an eighth of all stayed behind. At 57.1 °Bx,
// which is 200 g of sugar in 350 g, it was water.
func TestWhatStaysBehindIsLostOfAll(t *testing.T) {
	lib := assaytest.Core(t)
	lost := jars[0].read(t, lib, 500, "brix: 50.0", "mass: 350 g")
	assert.InEpsilon(t, 175, lost.Serving.Central("SUCS"), 0.005)
	assert.Contains(t, readingOf(t, lost, "mass").Advice, "lost")
	boiled := jars[0].read(t, lib, 500, "mass: 350 g", "brix: 57.1")
	assert.InEpsilon(t, 200, boiled.Serving.Central("SUCS"), 0.005)
}

// What of a syrup nobody read does not follow a refractometer: it keeps within its range,
// and never falls while the reading rises.
func TestCitricAcidDoesNotFollowTheRefractometer(t *testing.T) {
	lib, lemon := assaytest.Core(t), jars[1]
	bare := lemon.read(t, lib, 500).Serving
	low, high := rangeOfDraws(bare.Total("CITAC"))
	last := map[constituent.ID]float64{}
	for _, brix := range []string{"30", "45", "49", "50", "50.5", "51", "51.5", "52", "54", "60", "70"} {
		pot := lemon.read(t, lib, 500, "brix: "+brix+" ± 0.2").Serving
		citric := pot.Central("CITAC")
		assert.True(t, low <= citric && citric <= high, "%s °Bx: %.2f g of %.2f to %.2f g", brix, citric, low, high)
		for _, id := range []constituent.ID{"CITAC", "SUGAR", "OA"} {
			assert.GreaterOrEqual(t, pot.Central(id), last[id]*(1-1e-9), "%s at %s °Bx", id, brix)
			last[id] = pot.Central(id)
		}
	}
}

// Strength and dissolved solids are one quantity: the same figure moves nothing, and is
// what the recipe expects.
func TestDissolvedSolidsAreTheStrengthOfABrew(t *testing.T) {
	lib := assaytest.Core(t)
	for _, ingredients := range []string{"20 g core:coffee-roasted-arabica, 320 g core:water-brew", "18 g core:coffee-roasted-robusta, 300 g core:water-pure", "15 g core:tea-leaf-black, 320 g core:water-brew"} {
		for _, strength := range []string{"0.9 %", "1.35 %", "1.9 %"} {
			brew := jar{"", ingredients, "brew: {out: 250 g, strength: " + strength + "}", ""}
			bare, read := brew.read(t, lib, 300), brew.read(t, lib, 300, "tds: "+strength)
			r := readingOf(t, read, "tds")
			assert.True(t, r.Agrees)
			assert.InEpsilon(t, r.Read, r.Expected, 1e-9)
			for _, c := range constituent.All() {
				if c.Kind != constituent.Figure {
					assert.InDelta(t, bare.Serving.Central(c.ID), read.Serving.Central(c.ID), 1e-9, "%s of %s", c.ID, ingredients)
				}
			}
		}
	}
}

// A stronger reading means more in the cup, a weaker one less.
func TestDissolvedSolidsMoveTheirWay(t *testing.T) {
	lib := assaytest.Core(t)
	brew := jar{"", "20 g core:coffee-roasted-arabica, 320 g core:water-brew", "brew: {out: 280 g, strength: 0.9 % ± 0.2 %}", ""}
	solids := func(readings ...string) float64 {
		pot := brew.read(t, lib, 500, readings...).Serving
		return pot.Central("MASS") - pot.Central("WATER")
	}
	assert.Less(t, solids("tds: 0.80 %"), solids()-0.1)
	assert.Greater(t, solids("tds: 1.00 %"), solids()+0.1)
}

// A refractometer's °Brix of coffee is about its solids over 0.85 (the trade's figure,
// common practice): 2.2 °Bx are 1.87 %, which a recipe of 1.9 % expects.
func TestRefractometerOfCoffeeAgreesWithItsStrength(t *testing.T) {
	lib := assaytest.Core(t)
	brew := jar{"", jars[3].ingredients, "brew: {out: 280 g, strength: 1.9 %}", ""}
	bare, read := brew.read(t, lib, 500), brew.read(t, lib, 500, "brix: 2.2")
	r := readingOf(t, read, "brix")
	assert.True(t, r.Agrees)
	assert.InDelta(t, 1.9, r.Expected, 0.35)
	for _, id := range []constituent.ID{"PROCNT", "FIBTG", "CAFFN"} {
		assert.InEpsilon(t, bare.Serving.Central(id), read.Serving.Central(id), 0.02, "%s", id)
	}
}

// Two readings that cannot both be true are both said, whichever stands first.
func TestReadingsThatContradictOneAnotherAreSaid(t *testing.T) {
	lib := assaytest.Core(t)
	a := jars[0].read(t, lib, 500, "brix: 65.0", "density: 1.230 g/ml")
	turned := jars[0].read(t, lib, 500, "density: 1.230 g/ml", "brix: 65.0")
	used := readingOf(t, a, "brix").Used
	assert.True(t, used > 50 && used < 65)
	assert.False(t, readingOf(t, a, "brix").Agrees)
	assert.False(t, readingOf(t, a, "density").Agrees)
	require.Len(t, turned.Readings, 2)
	assert.Equal(t, a.Readings[0].Kind, turned.Readings[0].Kind)
	assert.InEpsilon(t, used, readingOf(t, turned, "brix").Used, 1e-9)
	assert.False(t, math.IsNaN(used))
}

// Two readings may each agree with the recipe and contradict one another. What it takes to
// please both is not for the recipe: nothing, not even water, moves by more than its 99 %.
func TestReadingsThatContradictOneAnotherMoveLittle(t *testing.T) {
	lib, cordial := assaytest.Core(t), jars[6]
	bare := assaytest.Assay(t, lib, cordial.text(), 500)
	brix, density := bare.Chemistry.Brix, bare.Chemistry.Density
	for _, x := range []float64{-1.5, 1.5} {
		a := cordial.read(t, lib, 500, fmt.Sprintf("brix: %.6f ± 0.02 sd", brix.Mean-x*brix.SD), fmt.Sprintf("density: %.6f g/ml ± 0.0001 g/ml sd", density.Mean+x*density.SD))
		for _, id := range []constituent.ID{"WATER", "CITAC", "SUCS", "PROCNT"} {
			was, is := bare.Serving.Total(id), a.Serving.Total(id)
			assert.Less(t, math.Abs(is[0]-was[0]), 2.576*stat.StdDev(was[1:], nil), "%s at %.1f", id, x)
		}
	}
}
