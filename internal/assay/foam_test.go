package assay_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/foaming"
)

const veil = `drink: Veiled
serves: 2
glass: 160 ml
components:
  veil:
    ingredients: [200 g core:cream-heavy, 20 g core:sugar-white]
    steps: [%s]
build: [200 g core:water-pure, %s veil]
finish: [%s]
`

func veiled(t *testing.T, step, poured, finish string) *assay.Assay {
	t.Helper()
	return assaytest.Asked(t, assaytest.Core(t), fmt.Sprintf(veil, step, poured, finish), assaytest.Options{Draws: 60, Want: assay.Want{Chemistry: true, Intervals: true}})
}

// Half as dense as its liquid at an overrun of 100 %: 100 ml of the foam are 50 ml of the liquid, which
// fill 100 ml of two glasses again.
func TestAFoamIsPouredByItsVolume(t *testing.T) {
	flat, foam := veiled(t, "cool: {to: 4 °C}", "50 ml", ""), veiled(t, "foam: {overrun: 100 % ± 0 %}", "100 ml", "")
	assert.InDelta(t, flat.Mass.Mean, foam.Mass.Mean, 1e-6, "the same grams")
	assert.InDelta(t, flat.Volume.Mean, foam.Volume.Mean, 1e-6, "of the same liquid")
	assert.Equal(t, flat.Volume.Mean, flat.Filled.Mean)
	assert.InDelta(t, foam.Volume.Mean+25, foam.Filled.Mean, 1e-6, "and 50 ml of gas in two glasses")
	require.Len(t, foam.Foams, 1)
	f := foam.Foams[0]
	assert.InDelta(t, 50, f.Fraction.Mean, 1e-9)
	assert.InDelta(t, 2*f.Liquid.Mean, f.Volume.Mean, 1e-6)
	assert.InDelta(t, 220/f.Volume.Mean, f.Density.Mean, 1e-6)
	assert.Equal(t, "veil", f.Component)
	assert.Empty(t, flat.Foams)
}

// Nothing of a serving's composition, by mass or by the millilitre of its liquid, moves with an overrun.
func TestNoFigureByMassHangsOnAnOverrun(t *testing.T) {
	little, much := veiled(t, "foam: {overrun: 20 %}", "40 g", ""), veiled(t, "foam: {overrun: 400 %}", "40 g", "")
	assert.Empty(t, assaytest.Differ(little.PerServing, much.PerServing))
	assert.Empty(t, assaytest.Differ(little.Per100ml, much.Per100ml))
	assert.Equal(t, little.Volume, much.Volume)
	assert.Greater(t, much.Filled.Mean, little.Filled.Mean)
	gas := veiled(t, "foam: {charge: 8 g, gas: N2O, bottle: 0.7 l, at: 4 °C, overrun: 20 %}", "40 g", "")
	assert.Empty(t, assaytest.Differ(little.PerServing, gas.PerServing), "nor with a gas that leaves")
}

// 100 g of ice that floats take the room of 100 g of drink (Archimedes): with 29 ml of espresso more than 120 ml, less than 140.
func TestTheGlassHoldsTheIce(t *testing.T) {
	for glass, overflows := range map[string]bool{"120 ml": true, "140 ml": false} {
		a := assaytest.Asked(t, assaytest.Core(t), "drink: d\nserves: 1\nat: 4 °C\nglass: "+glass+"\nstands: {ice: 100 g}\nbuild:\n  - 30 ml core:espresso\n", assaytest.Options{Draws: 40})
		assert.Equal(t, overflows, len(assaytest.NotesOf(a, "glass", "")) > 0, glass)
	}
}

// The glass holds the foam; what stirs lets it go, what is added beside it does not.
func TestTheGlassHoldsTheFoam(t *testing.T) {
	overflows := func(a *assay.Assay) bool { return len(assaytest.NotesOf(a, "glass", "")) > 0 }
	assert.False(t, overflows(veiled(t, "cool: {to: 4 °C}", "80 g", "")))
	foam := veiled(t, "foam: {overrun: 150 %}", "80 g", "add: 10 g core:water-pure")
	require.True(t, overflows(foam), "100 ml of water, 40 of cream and 60 of gas")
	assert.Contains(t, assaytest.NotesOf(foam, "glass", "")[0], "its foam as it was read")
	stirred := veiled(t, "foam: {overrun: 150 %}", "80 g", "chill: {melt: 10 g}")
	assert.False(t, overflows(stirred))
	assert.Equal(t, stirred.Volume.Mean, stirred.Filled.Mean)
	assert.Contains(t, fmt.Sprint(assaytest.NotesOf(stirred, "step", "")), "how much is left of the foam")
	whole := veiled(t, "cool: {to: 4 °C}", "40 g", "foam: {overrun: 50 % ± 0 %}")
	assert.InDelta(t, 1.5*whole.Volume.Mean, whole.Filled.Mean, 1e-6, "the drink itself")
	require.Len(t, whole.Foams, 1)
	assert.Empty(t, whole.Foams[0].Component)
}

// A millilitre of a foam that nobody read weighs nobody knows what; grams are grams.
func TestAFoamThatNobodyReadIsWeighed(t *testing.T) {
	text := fmt.Sprintf(veil, "siphon: {charge: 8 g, gas: N2O}", "40 ml", "")
	assert.Contains(t, assaytest.Refused(t, assaytest.Core(t), text), "nobody read its overrun")
	a := veiled(t, "siphon: {charge: 8 g, gas: N2O}", "40 g", "")
	assert.Equal(t, a.Volume.Mean, a.Filled.Mean, "it counts as its liquid")
	assert.Empty(t, a.Foams[0].Overrun.Unit)
	assert.Empty(t, a.Foams[0].Pressure.Unit)
	assert.Equal(t, "nitrous oxide", a.Foams[0].Gas)
}

// Carbon dioxide sours a foam, and nitrous oxide does not.
func TestOnlyCarbonDioxideSours(t *testing.T) {
	lib := assaytest.Core(t)
	foam := func(gas string) *assay.Assay {
		return assaytest.Asked(t, lib, "drink: Sour\nserves: 1\nbuild: [300 g core:water-tap, 20 g core:orange-juice]\nfinish: [foam: {charge: 4 g, gas: "+gas+", bottle: 1 l, at: 4 °C, overrun: 20 %}]\n",
			assaytest.Options{Draws: 60, Want: assay.Want{Chemistry: true}})
	}
	sour, inert := foam("CO2"), foam("N2O")
	assert.Less(t, sour.Chemistry.PHMeter.Mean, inert.Chemistry.PHMeter.Mean)
	assert.Positive(t, sour.Chemistry.CO2.Mean)
	assert.Greater(t, sour.Mass.Mean, inert.Mass.Mean)
}

// McGee 2004: cream whips from 30 % of fat; heavy cream of 36 % with a tenth of sugar has 33 %.
func TestAFoamStandsBesideWhatIsPublished(t *testing.T) {
	a := veiled(t, "foam: {overrun: 150 %, at: 4 °C}", "40 g", "")
	found := map[string]foaming.Verdict{}
	for _, c := range a.Foams[0].Conditions {
		found[c.Kind+" "+c.Of] = c.Verdict
	}
	assert.Contains(t, []foaming.Verdict{foaming.Within, foaming.Either}, found["cream FAT"])
	assert.Equal(t, foaming.Within, found["cream celsius"])
	assert.Equal(t, foaming.NoRange, found["cream pH"])
	// Bovšková and Míková 2011: egg white foams well below pH 4.5; lemon juice reads 2.0 to 2.6 (FDA's list of pH of foods). The
	// pH of an infusion that nobody states is not known, and so not within.
	whites := func(with string) foaming.Condition {
		a := assaytest.Assay(t, assaytest.Core(t), "drink: White\nserves: 1\nbuild: [15 g core:egg-white, 185 g "+with+"]\nfinish: [foam: {overrun: 300 %}]\n", 60)
		i := slices.IndexFunc(a.Foams[0].Conditions, func(c foaming.Condition) bool { return c.Of == foaming.PH })
		return a.Foams[0].Conditions[i]
	}
	sour, open := whites("core:lemon-juice"), whites("core:fennel-juice")
	assert.Empty(t, sour.Why)
	assert.InDelta(t, 2.5, sour.Figure.Mean, 0.5)
	assert.Equal(t, foaming.Within, sour.Verdict)
	assert.NotEmpty(t, open.Why)
	assert.NotEqual(t, foaming.Within, open.Verdict)
	assert.True(t, math.IsNaN(open.Figure.Mean), "what is withheld is no figure")
}
