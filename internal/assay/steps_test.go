package assay_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/note"
)

// sr28Wheys are the rows of SR28 for acid whey (01112) and sweet whey (01114),
// per 100 g.
var sr28Wheys = map[string]map[constituent.ID]float64{
	"acid":   {"SUGAR": 5.12, "K": 143, "CA": 103, "P": 78, "MG": 10, "PROCNT": 0.76, "FAT": 0.09},
	"rennet": {"SUGAR": 5.14, "K": 161, "CA": 47, "P": 46, "MG": 8, "PROCNT": 0.85, "FAT": 0.36},
}

// The wheys of SR28 from its whole milk (01077). They are not behind
// data/partition.csv. A figure agrees if it is within 15 % or in a 90 % interval
// of a half-width of 25 % at most.
//
// Potassium of sweet whey does not: SR28 prints 161 mg, more than the whole of
// the milk's 132 mg in its water (140 mg/100 g of whey), so that row is of another
// milk, or partly dried. Phosphorus of acid whey is at the edge for a like reason:
// 78 mg leave less to the curd than casein alone holds.
func TestWheysOfWholeMilk(t *testing.T) {
	differs := map[string]bool{"rennet K": true}
	for by, whey := range sr28Wheys {
		a := assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(`
drink: "Whey"
serves: 1
components:
  whey:
    ingredients: [1000 g ± 0.1 g core:milk-whole]
    steps:
      - curdle: {collect: 850 g ± 0.1 g, by: %s}
build: [100 g ± 0.01 g whey]
`, by), 1000)
		for id, want := range whey {
			f := assaytest.Figure(t, a.PerServing, id)
			off, half := math.Abs(f.Mean/want-1), (f.High-f.Low)/2/f.Mean
			agrees := off <= 0.15 || (half <= 0.25 && f.Low <= want && want <= f.High)
			t.Logf("%-6s %-6s %8.3f  published %7.3f  %+.0f %%  half-width %.0f %%", by, id, f.Mean, want, 100*(f.Mean/want-1), 100*half)
			assert.Equal(t, !differs[by+" "+string(id)], agrees, "%s %s", by, id)
		}
	}
}

// By hand: 100 g of white sugar, all of it sucrose, read 25 °Brix in 400 g.
func TestDiluteToAReading(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), `
drink: "Thinned"
serves: 1
components:
  syrup:
    ingredients: [100 g core:sugar-white, 60 g core:water-pure]
    steps:
      - dilute: {brix: 25.0}
      - measured: {brix: 25.0 ± 0.5}
build: [400 g syrup]
`, 100)
	assert.InEpsilon(t, 100, assaytest.Figure(t, a.PerServing, "SUCS").Mean, 0.005)
}

// everyStep uses each step that turns, extracts or dissolves.
const everyStep = `
drink: "Glass Heron"
serves: 2
components:
  coffee:
    ingredients: [18 g core:coffee-roasted-arabica, 60 g core:water-brew]
    steps:
      - brew: {out: 38 g, strength: 9.5 %}
  tea:
    ingredients: [200 g core:water-brew]
    steps:
      - steep: {ingredients: [4 g core:tea-leaf-black], at: 95 °C, for: 3 min, collect: 180 g}
      - concentrate: {by: freezing, to: 120 g}
  syrup:
    ingredients: [100 g core:sugar-white, 60 g core:water-pure, 20 g core:lemon-juice]
    steps:
      - invert: {ph: 2.6, at: 90 °C, for: 20 min}
      - caramelise: {loss: 4 % ± 2 %}
    keeps: 5 days at 4 °C
  whey:
    ingredients: [200 g core:milk-whole, 10 g core:lemon-juice]
    steps:
      - curdle: {collect: 150 g, by: acid, at: 63 °C}
      - hydrolyse: {lactose: 90 %}
  washed:
    ingredients: [100 g core:vodka-40]
    steps:
      - wash: {fat: [20 g core:butter-unsalted], collect: 95 g}
  ferment:
    ingredients: [200 g core:orange-juice]
    steps:
      - ferment: {after: {ALC: 0.4 g, LACAC: 200 mg, ACEAC: < 20 mg}, for: 2 days, because: "invented"}
build: [30 g coffee, 30 g tea, 20 g syrup, 90 g whey, 20 g washed, 40 g ferment]
finish:
  - carbonate: {bottle: 0.5 l, charge: 8 g, at: 4 °C}
`

func TestEveryStepOfAFile(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), everyStep, 200)
	for _, c := range constituent.All() {
		if c.Kind != constituent.Figure {
			assaytest.RowsSumTo(t, a.Serving, c)
		}
	}
	assert.Positive(t, assaytest.Figure(t, a.PerServing, "GLUS").Mean)
	assert.Positive(t, assaytest.Figure(t, a.PerServing, "GALS").Mean)
	assert.Positive(t, assaytest.Figure(t, a.PerServing, "CO2").Mean)
	assert.Positive(t, assaytest.Figure(t, a.PerServing, "LACAC").Mean)
	var notes []string
	for _, n := range a.Notes {
		notes = append(notes, n.Text)
	}
	all := strings.Join(notes, "\n")
	for _, part := range []string{"of the dose", "45 minutes", "become caramel", "leave as gas", "not stated: taken between", "bar of carbon dioxide"} {
		assert.Contains(t, all, part)
	}
	allergens := map[string]bool{}
	for _, item := range a.Items {
		for _, m := range item.Food.Marks {
			allergens[m.Value] = true
		}
	}
	assert.True(t, allergens["cow milk"], "whey of milk and a butter wash are milk")
}

func TestSyrupThatWillCrystalliseIsSaid(t *testing.T) {
	const text = "drink: \"Heavy\"\nserves: 1\ncomponents:\n  syrup:\n    ingredients: [200 g core:sugar-white, %s g core:water-pure]\n    keeps: 9 days at 4 °C\nbuild: [10 g syrup]\n"
	warned := func(water string) bool {
		for _, n := range assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(text, water), 10).Notes {
			if strings.Contains(n.Text, "crystallise") {
				return true
			}
		}
		return false
	}
	assert.True(t, warned("100"), "two to one, cold")
	assert.False(t, warned("200"))
}

// The example of the grammar runs but for what later versions compute: the pH
// reading, claims and targets.
func TestExampleRunsButForPHClaimsAndTargets(t *testing.T) {
	text := string(assaytest.FileOf(t, "testdata/drinks/copper-orchard.drink.yaml"))
	text = strings.Replace(text, ", ph: 3.1", "", 1)
	claims, vary := strings.Index(text, "claims:"), strings.Index(text, "vary:")
	a := assaytest.Assay(t, assaytest.Core(t), text[:claims]+text[vary:], 200)
	// By hand: 38 g of espresso at 9.5 %, 36 g of it for two; 3.0 g/l in the glass.
	assert.InDelta(t, 3.0*a.Volume.Mean/1000, assaytest.Figure(t, a.PerServing, "CO2").Mean, 0.005)
	assert.InDelta(t, (36+25+40)/2.0, a.Mass.Mean, 0.3)
	assert.Positive(t, assaytest.Figure(t, a.PerServing, "CAFFN").Mean)
}

// Sugar that a ferment takes and nobody says what it became may be alcohol and acid: both
// are unknown, up to what their equations make of it, and there is no pH of what is left.
func TestAFermentWithoutProductsLeavesAlcoholAndAcidUnknown(t *testing.T) {
	const text = `
drink: "Culture"
serves: 1
components:
  cultured:
    ingredients: [900 g core:black-tea, 100 g core:sugar-white]
    steps:
      - ferment: {after: {%s}, for: 7 days, because: "invented"}
build: [100 g cultured]
`
	a := assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(text, "SUGAR: 4.0 g"), 100)
	alcohol, acid := assaytest.Figure(t, a.PerServing, "ALC"), assaytest.Figure(t, a.PerServing, "LACAC")
	assert.True(t, alcohol.Unknown)
	// 6 g of sucrose are 6.3 g of hexose: 3.2 g of ethanol, 6.3 g of lactic acid.
	assert.InDelta(t, 3.2, alcohol.WithBounds, 0.1)
	assert.InDelta(t, 6300, acid.WithBounds, 100)
	assert.NotEmpty(t, a.Chemistry.PHMeter.Why)

	told := assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(text, "ALC: 1 g, LACAC: 0.5 g"), 100)
	assert.False(t, assaytest.Figure(t, told.PerServing, "ALC").Unknown)
	assert.InDelta(t, 1, assaytest.Figure(t, told.PerServing, "ALC").WithBounds, 0.01)
}

// Fruit caramel keeps a pH and an acidity however much of its sugar burns, and the step says
// where its acids count.
func TestFruitCaramelHasAPH(t *testing.T) {
	caramel := func(loss string) *assay.Assay {
		return assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(`
drink: "Fruit caramel"
serves: 1
components:
  caramel:
    ingredients: [120 g core:sugar-white, 180 g core:plum-juice]
    steps:
      - reduce: {to: 240 g}
%sbuild: [100 g caramel]
`, loss), 200)
	}
	plain, before := caramel("").Chemistry, math.Inf(1)
	for _, loss := range []float64{1e-6, 0.001, 1, 6, 20, 60} {
		a := caramel(fmt.Sprintf("      - caramelise: {loss: %f %%}\n", loss))
		pH := a.Chemistry.PHMeter
		require.Empty(t, pH.Why, "%v %%", loss)
		assert.Empty(t, a.Chemistry.Acidity[0].Per100g.Why, "%v %%", loss)
		assert.LessOrEqual(t, (pH.High-pH.Low)/2, 0.6, "%v %%", loss)
		assert.LessOrEqual(t, pH.Mean, before+1e-9, "%v %%: more acid, no higher pH", loss)
		before = pH.Mean
		if loss <= 0.001 {
			assert.InDelta(t, plain.PHMeter.Mean, pH.Mean, 0.005)
			assert.InDelta(t, plain.PHMeter.Low, pH.Low, 0.005)
			assert.InDelta(t, plain.PHMeter.High, pH.High, 0.005)
		}
		said := slices.ContainsFunc(a.Notes, func(n note.Note) bool { return strings.Contains(n.Text, "lower the pH") })
		assert.Equal(t, loss > 5, said, "%v %%", loss)
	}
}
