package reading_test

import (
	"context"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
)

// posterior is the exact answer for two uncertain masses and what was read of
// them: Bayes' theorem on a grid of ±6 standard deviations.
type posterior struct{ mean, sd [2]float64 }

// bayes integrates prior(x₁)·prior(x₂)·Π likelihood over a grid.
func bayes(m, s [2]float64, likelihood func(x1, x2 float64) float64) posterior {
	const reach, points = 6.0, 601
	var sum float64
	var first, second [2]float64
	for i := range points {
		for j := range points {
			z1, z2 := reach*(2*float64(i)/(points-1)-1), reach*(2*float64(j)/(points-1)-1)
			x := [2]float64{m[0] + s[0]*z1, m[1] + s[1]*z2}
			p := math.Exp(-(z1*z1+z2*z2)/2) * likelihood(x[0], x[1])
			sum += p
			for k := range x {
				first[k] += p * x[k]
				second[k] += p * x[k] * x[k]
			}
		}
	}
	var out posterior
	for k := range first {
		out.mean[k] = first[k] / sum
		out.sd[k] = math.Sqrt(second[k]/sum - out.mean[k]*out.mean[k])
	}
	return out
}

func normal(read, is, sd float64) float64 { return math.Exp(-square((read-is)/sd) / 2) }

func square(x float64) float64 { return x * x }

// readOf assays the two foods of mass_test.go with readings.
func readOf(t *testing.T, readings string, draws int) *assay.Assay {
	t.Helper()
	finish := ""
	if readings != "" {
		finish = "finish:\n  - measured: {" + readings + "}"
	}
	return assaytest.Assay(t, assaytest.Library{}, fmt.Sprintf(weighed, finish), draws)
}

// TestJointReadingIsTheExactPosterior takes water 200 ± 4 g and sucrose 100 ±
// 6 g and reads them. The answer of the grid owes nothing to the ensemble.
func TestJointReadingIsTheExactPosterior(t *testing.T) {
	brix := func(w, s float64) float64 { return 100 * s / (w + s) } // by definition of the scale
	// Sucrose of 30, 36 and 40 % at 20 °C, CRC Handbook of Chemistry and Physics; a
	// parabola between them.
	density := func(w, s float64) float64 {
		x := 100 * s / (w + s)
		return 1.1270*(x-36)*(x-40)/60 - 1.1562*(x-30)*(x-40)/24 + 1.1765*(x-30)*(x-36)/40
	}
	cases := []struct {
		readings   string
		likelihood func(w, s float64) float64
	}{
		{"mass: 310 g ± 1 g sd", func(w, s float64) float64 { return normal(310, w+s, 1) }},
		{"brix: 35 ± 0.5 sd", func(w, s float64) float64 { return normal(35, brix(w, s), 0.5) }},
		{"brix: 33 ± 0.2 sd", func(w, s float64) float64 { return normal(33, brix(w, s), 0.2) }},
		{"brix: 35 ± 0.5 sd, mass: 310 g ± 1 g sd", func(w, s float64) float64 {
			return normal(35, brix(w, s), 0.5) * normal(310, w+s, 1)
		}},
		{"tds: 35 % ± 0.3 % sd, brix: 34.6 ± 0.4 sd", func(w, s float64) float64 {
			return normal(35, brix(w, s), 0.3) * normal(34.6, brix(w, s), 0.4)
		}},
		{"density: 1.150 g/ml ± 0.004 g/ml sd, mass: 297 g ± 2 g sd", func(w, s float64) float64 {
			return normal(1.150, density(w, s), 0.004) * normal(297, w+s, 2)
		}},
	}
	for _, c := range cases {
		t.Run(c.readings, func(t *testing.T) {
			want := bayes([2]float64{200, 100}, [2]float64{4, 6}, c.likelihood)
			a := readOf(t, c.readings, 2000)
			for k, id := range []constituent.ID{"WATER", "SUCS"} {
				col := a.Serving.Total(id)
				mean, sd := stat.MeanStdDev(col[1:], nil)
				t.Logf("%s: mean %.2f central %.2f exact %.2f g, sd %.3f exact %.3f g", id, mean, col[0], want.mean[k], sd, want.sd[k])
				assert.InDelta(t, want.mean[k], mean, 0.10*want.sd[k], "mean of %s", id)
				assert.InDelta(t, want.mean[k], col[0], 0.10*want.sd[k], "central %s", id)
				assert.InEpsilon(t, want.sd[k], sd, 0.10, "sd of %s", id)
			}
		})
	}
}

// What was read is as sure as the instrument, and not surer.
func TestWhatWasReadHasTheInstrumentsSpread(t *testing.T) {
	// The recipe alone leaves 1.4 °Bx and 7.2 g. With a prior that wide the
	// posterior is r·√(1 − r²/S).
	a := readOf(t, "brix: 34 ± 0.2 sd, mass: 305 g ± 1 g sd", 2000)
	assert.InDelta(t, 34, a.Chemistry.Brix.Mean, 0.05)
	assert.InEpsilon(t, 0.2, a.Chemistry.Brix.SD, 0.05)
	assert.InEpsilon(t, 1, a.Mass.SD, 0.05)
	assert.Empty(t, assaytest.NotesOf(a, "reading disagrees", ""))

	// Without ± the instrument of data/instruments.csv stands: 0.2 °Bx either way.
	a = readOf(t, "brix: 34.0", 2000)
	assert.InEpsilon(t, 0.2/math.Sqrt(3), a.Chemistry.Brix.SD, 0.05)
	assert.Len(t, assaytest.NotesOf(readOf(t, "brix: 40.0", 500), "reading disagrees", ""), 1)
}

// boiled is a syrup whose evaporation nobody has weighed.
const boiled = `
drink: "Boiled Down"
serves: 1
components:
  syrup:
    ingredients: [200 g ± 6 g core:orange-juice, 120 g ± 4 g core:sugar-white, 3 g ± 0.3 g core:citric-acid, 30 g ± 3 g core:lemon-juice]
    steps:
      - reduce: {by: 15 %% ± 8 %%}
    %s
build: [60 g ± 1 g syrup, 100 g core:milk-whole]
`

func TestReadingsNarrowAndNeverWiden(t *testing.T) {
	lib := assaytest.Core(t)
	const draws = 2000
	bare := assaytest.Assay(t, lib, fmt.Sprintf(boiled, ""), draws)
	syrup := assaytest.Component(t, bare, "syrup")
	for _, readings := range []string{"mass: 300 g ± 1 g", "brix: 50 ± 0.2", "brix: 50 ± 0.2, mass: 300 g ± 1 g", "density: 1.235 g/ml ± 0.003 g/ml, brix: 51 ± 0.5, mass: 298 g ± 2 g"} {
		t.Run(readings, func(t *testing.T) {
			a := assaytest.Assay(t, lib, fmt.Sprintf(boiled, "measured: {"+readings+"}"), draws)
			require.Empty(t, assaytest.NotesOf(a, "reading disagrees", ""))
			read := assaytest.Component(t, a, "syrup")
			narrower := 0
			for _, f := range syrup.Constituents {
				if f.Mean <= 0 || f.SD == 0 {
					continue
				}
				now := assaytest.Figure(t, read.Constituents, f.Constituent.ID)
				// The sd of a sample of n has a relative sd of 1/√(2n): 1.6 %. A
				// figure that grows keeps its relative spread.
				const noise = 4 * 0.016
				assert.LessOrEqual(t, now.SD/now.Mean, f.SD/f.Mean*(1+noise), "%s", f.Constituent.ID)
				if now.SD/now.Mean < 0.8*f.SD/f.Mean {
					narrower++
				}
			}
			t.Logf("%d figures are narrower by a fifth or more; sugars %.3g ± %.2g g, before %.3g ± %.2g g", narrower,
				assaytest.Figure(t, read.Constituents, "SUGAR").Mean, assaytest.Figure(t, read.Constituents, "SUGAR").SD, assaytest.Figure(t, syrup.Constituents, "SUGAR").Mean, assaytest.Figure(t, syrup.Constituents, "SUGAR").SD)
			assert.Positive(t, narrower)
		})
	}
}

// Two readings that a recipe can both satisfy are both satisfied, whichever
// stands first, and neither undoes what the other said.
func TestBrixAndMassTogetherDoNotFight(t *testing.T) {
	const brix, mass = "brix: 35 ± 0.3 sd", "mass: 308 g ± 1 g sd"
	together := readOf(t, brix+", "+mass, 2000)
	assert.InDelta(t, 35, together.Chemistry.Brix.Mean, 0.1)
	assert.InDelta(t, 308, together.Mass.Mean, 0.2)
	turned := readOf(t, mass+", "+brix, 2000)
	assert.Equal(t, together.Serving.Total("SUCS"), turned.Serving.Total("SUCS"), "the order of the keys says nothing")

	only := map[string]*assay.Assay{"brix": readOf(t, brix, 2000), "mass": readOf(t, mass, 2000)}
	assert.LessOrEqual(t, together.Chemistry.Brix.SD, only["brix"].Chemistry.Brix.SD*1.05)
	assert.LessOrEqual(t, together.Mass.SD, only["mass"].Mass.SD*1.05)
	for _, id := range []constituent.ID{"WATER", "SUCS"} {
		_, both := stat.MeanStdDev(together.Serving.Total(id)[1:], nil)
		for name, a := range only {
			_, one := stat.MeanStdDev(a.Serving.Total(id)[1:], nil)
			assert.LessOrEqual(t, both, one*1.05, "%s after %s alone", id, name)
		}
	}
}

// A cordial of rum: the alcoholometer tells how much of it was rum.
func TestReadingOfTheStrength(t *testing.T) {
	const text = `
drink: "Slow Harbour"
serves: 1
foods:
  spirit: {name: "Spirit of the test", per: 100 g, values: {WATER: 66.70 g, ALC: 33.30 g}, source: "OIML R 22: 40 %% by volume"}
  wet: {name: "Water of the test", per: 100 g, values: {WATER: 100 g}, source: "invented"}
build: [100 g ± 20 g own:spirit, 100 g ± 1 g own:wet]
%s
`
	bare := assaytest.Assay(t, assaytest.Library{}, fmt.Sprintf(text, ""), 2000)
	a := assaytest.Assay(t, assaytest.Library{}, fmt.Sprintf(text, "finish:\n  - measured: {abv: 21.5 % ± 0.2 % sd}"), 2000)
	alcohol, before := a.Serving.Total("ALC"), bare.Serving.Total("ALC")
	// 21.5 % by volume are 17.33 % by mass (OIML R 22 by the volumes of this
	// drink's own parts within 0.15 %): x·33.30 % = 17.33 % of (x + 100) gives 108.5 g.
	assert.InDelta(t, 108.5*0.333, alcohol[0], 0.8)
	_, was := stat.MeanStdDev(before[1:], nil)
	_, is := stat.MeanStdDev(alcohol[1:], nil)
	assert.Less(t, is, was/2, "the rest is what the spirit's own figures leave open")
}

func TestReadingOfWhatIsNotThereIsAFault(t *testing.T) {
	d, faults := drink.Parse("test", []byte(fmt.Sprintf(weighed, "finish:\n  - measured: {abv: 4 %}")), nil)
	_, err := assaytest.Run(context.Background(), d, faults, assaytest.Library{}, assaytest.Options{Draws: 10, Seed: 1})
	assert.ErrorContains(t, err, "abv was read, but")
}

// A refractometer tells the sugars of a syrup however much of its sucrose has split: nobody
// has written how long it boiled, so that sucrose alone lies anywhere.
func TestARefractometerTellsSugarsThatMaySplit(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(boiled, "measured: {brix: 50 ± 0.2}"), 2000)
	syrup := assaytest.Component(t, a, "syrup")
	sucrose, sugars := assaytest.Figure(t, syrup.Constituents, "SUCS"), assaytest.Figure(t, syrup.Constituents, "SUGAR")
	assert.Greater(t, sucrose.SD/sucrose.Mean, 0.5)
	assert.Less(t, sugars.SD/sugars.Mean, 0.02) // as sure as the instrument and what else is dissolved
}
