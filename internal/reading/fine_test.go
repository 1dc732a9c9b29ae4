package reading_test

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
)

// finePots are what a bar reads on a scale far finer than the pot, all invented: of a mass
// in g.
var finePots = []struct {
	name string
	made func(g float64) (ingredients, step string)
}{
	{"juice", func(g float64) (string, string) { return fmt.Sprintf("%g g core:orange-juice", g), "" }},
	{"syrup", func(g float64) (string, string) {
		return fmt.Sprintf("%g g core:sugar-white, %g g core:lemon-juice", g/2, g/2), ""
	}},
	{"espresso", func(g float64) (string, string) {
		return fmt.Sprintf("%g g core:coffee-roasted-arabica, %g g core:water-brew", g/2, 2*g), fmt.Sprintf("brew: {out: %g g, strength: 9.1 %%}", g)
	}},
}

// fineText is a pot that is weighed on a scale, and what was read of it.
func fineText(scale, ingredients, step, readings string) string {
	text := fmt.Sprintf("drink: \"Fine Scale\"\nserves: 1\nscale: %s g\nbuild: [%s]\n", scale, ingredients)
	if step != "" || readings != "" {
		text += "finish:\n"
	}
	if step != "" {
		text += "  - " + step + "\n"
	}
	if readings != "" {
		text += "  - measured: {" + readings + "}\n"
	}
	return text
}

// finePot assays such a pot.
func finePot(t *testing.T, lib assaytest.Library, scale, ingredients, step string, draws int, readings string) *assay.Assay {
	t.Helper()
	return assaytest.Assay(t, lib, fineText(scale, ingredients, step, readings), draws)
}

// readFine runs such a pot as far as its readings go.
func readFine(t *testing.T, lib assaytest.Library, scale, ingredients, step string, draws int, readings string) *assay.Assay {
	t.Helper()
	return read(t, lib, fineText(scale, ingredients, step, readings), draws)
}

// asExpected writes readings of the kinds that say what the recipe expects.
func asExpected(t *testing.T, a *assay.Assay) map[string]string {
	t.Helper()
	unit := map[string]string{"mass": " g", "brix": " ± 0.2", "tds": " % ± 0.05 %", "density": " g/ml ± 0.001 g/ml", "ta": " g/100 g ± 0.02 g/100 g"}
	list := map[string]string{}
	for kind, of := range unit {
		list[kind] = kind + ": " + strconv.FormatFloat(readingOf(t, a, kind).Expected, 'f', -1, 64) + of
	}
	return list
}

func TestFineReadingsEqualToTheRecipeMoveNothing(t *testing.T) {
	lib := assaytest.Core(t)
	const anything = "mass: 100 g, brix: 11, tds: 11 %, density: 1.04 g/ml, ta: 1 g/100 g" // a recipe expects what it does whatever is read
	for grams, draws := range map[float64]int{100: 50, 500: 300, 2000: 1000} {
		for _, pot := range finePots {
			ingredients, step := pot.made(grams)
			expected := asExpected(t, readFine(t, lib, "1", ingredients, step, 50, anything)) // at central values, which no scale changes
			for _, scale := range []string{"1", "0.1", "0.01", "0.001"} {
				bare := readFine(t, lib, scale, ingredients, step, draws, "").Serving
				for _, kinds := range []string{"mass", "mass brix", "mass tds", "mass density", "mass brix ta"} {
					name := fmt.Sprintf("%g g of %s at %s g, %d draws: %s", grams, pot.name, scale, draws, kinds)
					var readings []string
					for kind := range strings.FieldsSeq(kinds) {
						readings = append(readings, expected[kind])
					}
					a := readFine(t, lib, scale, ingredients, step, draws, strings.Join(readings, ", "))
					require.Len(t, a.Readings, len(readings), name)
					for _, r := range a.Readings {
						assert.InEpsilon(t, r.Read, r.Used, 1e-6, "%s of %s", r.Kind, name)
					}
					wider, sure := 1.05+1/math.Sqrt(float64(draws)), 0.005 // the width of n draws has a standard error of about 1/√n of it
					if pot.name == "espresso" && strings.Contains(kinds, "ta") {
						wider, sure = 1.2, 0.01 // its pH is held as published, so where a draw holds too much acid the acids give way, and water fills the mass
					}
					for _, c := range constituent.All() {
						if c.Kind != constituent.Figure {
							movesNothing(t, wider, sure, bare.Total(c.ID), a.Serving.Total(c.ID), fmt.Sprintf("%s of %s", c.ID, name))
						}
					}
				}
			}
		}
	}
}

// movesNothing checks a column against what it was. What is as sure as a part in two hundred
// may be less so: a sample of draws shows no less by chance.
func movesNothing(t *testing.T, wider, sure float64, was, is []float64, name string) {
	t.Helper()
	if was[0] == 0 {
		return
	}
	assert.InEpsilon(t, was[0], is[0], 1e-6, name)
	before, now := width(was), width(is)
	require.False(t, math.IsNaN(now) || math.IsInf(now, 0), name)
	assert.LessOrEqual(t, now, max(wider*before, sure*was[0]), name)
}

// width is that of the middle 95 % of the draws.
func width(column []float64) float64 {
	draws := slices.Clone(column[1:])
	slices.Sort(draws)
	const beyond = 0.025
	return stat.Quantile(1-beyond, stat.LinInterp, draws, nil) - stat.Quantile(beyond, stat.LinInterp, draws, nil)
}

// The pots of a report: NaN, lost pH and an acid of kilograms. The recipe and what was read
// of it agree, or a tenth of it was lost.
func TestFineScaleGivesFigures(t *testing.T) {
	lib := assaytest.Core(t)
	for _, c := range []struct {
		scale, ingredients, readings string
		draws                        int
	}{
		{"0.1", "2000 g core:orange-juice", "mass: 2000 g, brix: 11.1", 2000},
		{"0.01", "200 g core:orange-juice", "mass: 200 g, brix: 11.1", 2000},
		{"0.1", "250 g core:orange-juice", "mass: 250 g, brix: 11", 300},
		{"0.001", "100 g core:lemon-juice", "mass: 90 g, brix: 8", 2000},
		{"0.001", "100 g core:lemon-juice", "mass: 90 g, brix: 8.05", 2000},
		{"0.001", "100 g core:lemon-juice", "mass: 90 g, tds: 8.2 %", 300},
		{"0.001", "100 g core:lemon-juice", "mass: 90 g, density: 1.033 g/ml", 300},
	} {
		a := finePot(t, lib, c.scale, c.ingredients, "", c.draws, c.readings)
		for _, r := range a.Readings {
			assert.InEpsilon(t, r.Read, r.Used, 0.05, "%s of %s", r.Kind, c.readings)
		}
		mass := a.Serving.Mass()
		for d := range mass {
			for _, id := range []constituent.ID{constituent.Water, "SUGAR", "CITAC", "PROCNT"} {
				x := a.Serving.Total(id)[d]
				require.True(t, x > 0 && x < mass[d], "%s of %s, draw %d: %g of %g g", id, c.readings, d, x, mass[d])
			}
		}
		brix, sd := a.Chemistry.Brix.Mean, a.Chemistry.Brix.SD
		assert.InDelta(t, brix, stated(c.readings, brix), 3*sd, c.readings)
		assert.Less(t, sd, 0.5, c.readings)
		assert.Empty(t, a.Chemistry.PHMeter.Why, c.readings)
	}
}

// stated gives the °Brix of readings, or what there is.
func stated(readings string, or float64) float64 {
	_, brix, found := strings.Cut(readings, "brix: ")
	if !found {
		return or
	}
	x, err := strconv.ParseFloat(brix, 64)
	if err != nil {
		return math.NaN()
	}
	return x
}

// A mass that differs and is used says so, and an instrument that shows nothing is told
// no rounding.
func TestReadingIsUsedAsRead(t *testing.T) {
	lib := assaytest.Core(t)
	mass := finePot(t, lib, "0.001", "100 g core:lemon-juice", "", 300, "mass: 99.9 g").Readings[0]
	assert.InDelta(t, 99.9, mass.Used, 1e-6)
	assert.Contains(t, mass.Advice, "used as read")
	assert.Zero(t, finePot(t, lib, "0.1", "100 g core:water-brew, 50 g core:sugar-white", "", 300, "ta: 0 %").Readings[0].Used)
}

// A refractometer for coffee that may be off by more than it shows has seen nothing.
func TestReadingBelowItsInstrumentIsRefused(t *testing.T) {
	const text = "drink: \"Thin\"\nserves: 1\ncomponents:\n  shot: {ingredients: [100 g core:espresso], measured: {tds: 0.0001 %}}\nbuild: [30 g shot]\n"
	d, faults := drink.Parse("thin", []byte(text), nil)
	_, err := assaytest.Run(context.Background(), d, faults, assaytest.Core(t), assaytest.Options{Draws: 20, Seed: 1})
	require.ErrorContains(t, err, "thin:4:56: tds: the reading is less than its instrument may be off by")
}
