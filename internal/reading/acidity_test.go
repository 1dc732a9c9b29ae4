package reading_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger/ledgertest"
)

// calibrated is two liquids of chemicals, so that nothing but their readings is
// uncertain of their ions.
const calibrated = `
drink: "Two Meters"
serves: 1
components:
  sharp:
    ingredients: [1.00 g core:citric-acid, 0.50 g core:tripotassium-citrate, 98.50 g core:water-pure]
    measured: {ph: 3.00 ± 0.05}
  round:
    ingredients: [0.80 g core:lactic-acid, 0.60 g core:dipotassium-phosphate, 98.60 g core:water-pure]
    measured: {ph: 4.60 ± 0.05}
build: [50 g sharp, 50 g round]
`

// pooled is the reference: the ions of each component, calibrated and added up by
// package acid alone.
func TestBlendOfCalibratedComponentsIsTheSolveOfThePooledIons(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), calibrated, 200)
	s, err := acid.NewSolver(acidity.MeterCelsius)
	require.NoError(t, err)
	pooled := acid.New(0)
	for name, pH := range map[string]float64{"sharp": 3.00, "round": 4.60} {
		part := a.Serving.Only(func(row int) bool { return a.Serving.Rows[row].Path[0] == name })
		sol := acid.New(0)
		sol.AddGrams(func(at int) float64 { return part.Total(acid.Constituents()[at])[0] })
		missing, err := s.Calibrate(sol, pH)
		require.NoError(t, err)
		t.Logf("%s lacks %.4f mol/kg of strong ion", name, missing)
		pooled.Pour(sol, 1)
		assert.InDelta(t, pH, assaytest.Component(t, a, name).Chemistry.PHMeter.Mean, 1e-9, name)
	}
	state, err := s.Solve(pooled, acid.State{})
	require.NoError(t, err)
	assert.InDelta(t, state.PH, a.Chemistry.PHMeter.Mean, 1e-9)
	assert.Greater(t, (3.00+4.60)/2-a.Chemistry.PHMeter.Mean, 0.05, "a pH is not averaged")
}

// Both are read as they are expected: a meter that contradicts its recipe is doubted.
func TestReadPHHasTheMetersSpread(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), strings.NewReplacer("ph: 3.00", "ph: 3.29", "ph: 4.60", "ph: 3.59").Replace(calibrated), 1000)
	pH := assaytest.Component(t, a, "sharp").Chemistry.PHMeter
	assert.InEpsilon(t, 0.9*0.05, (pH.High-pH.Low)/2, 0.1, "nine tenths of a rectangle of ± 0.05")
	assert.Less(t, a.Chemistry.PHMeter.High-a.Chemistry.PHMeter.Low, 0.1)
}

// squash is a juice whose figures leave the acidity wide.
const squash = `
drink: "Bench Squash"
serves: 1
components:
  squash:
    ingredients: [200 g ± 6 g core:orange-juice, 40 g ± 3 g core:sugar-white, 30 g ± 3 g core:lemon-juice]
    measured: {%s}
build: [100 g squash]
`

// Whatever else is read beside it, each reading is met within its instrument, and the
// order of the keys says nothing; % of the mass is g/100 g.
func TestAcidityBrixAndMassDoNotFight(t *testing.T) {
	lib := assaytest.Core(t)
	bare := assaytest.Assay(t, lib, fmt.Sprintf(squash, "mass: 268 g ± 1 g"), 1000)
	a := assaytest.Assay(t, lib, fmt.Sprintf(squash, "ph: 3.05 ± 0.05, ta: 1.20 g/100 g ± 0.02 g/100 g, brix: 23.5 ± 0.2, mass: 268 g ± 1 g"), 1000)
	turned := assaytest.Assay(t, lib, fmt.Sprintf(squash, "mass: 268 g ± 1 g, brix: 23.5 ± 0.2, ta: 1.20 % ± 0.02 %, ph: 3.05 ± 0.05"), 1000)
	c := assaytest.Component(t, a, "squash").Chemistry
	assert.Empty(t, assaytest.NotesOf(a, "reading disagrees", ""))
	for _, r := range []struct {
		what       string
		got        composition.Result
		want, half float64
	}{
		{"pH", c.PHMeter.Result, 3.05, 0.05},
		{"titratable acidity", c.Acidity[0].Per100g.Result, 1.20, 0.02},
		{"°Brix", c.Brix, 23.5, 0.2},
	} {
		assert.InDelta(t, r.want, r.got.Mean, r.half, r.what)
		// Acid that the burette found is closed after °Brix is: a tenth of the instrument.
		assert.GreaterOrEqual(t, r.got.Low, r.want-1.1*r.half, r.what)
		assert.LessOrEqual(t, r.got.High, r.want+1.1*r.half, r.what)
		t.Logf("%s %.3f (%.3f–%.3f)", r.what, r.got.Mean, r.got.Low, r.got.High)
	}
	assert.Equal(t, a.Serving.Total("CITAC"), turned.Serving.Total("CITAC"))
	assert.Equal(t, a.Chemistry.PHMeter, turned.Chemistry.PHMeter)

	steps := fmt.Sprintf(squash, "brix: 23.5 ± 0.2")
	steps = strings.Replace(steps, "    measured:", "    steps:\n      - measured: {ph: 3.05 ± 0.05}\n      - measured: {ta: 1.20 g/100 g ± 0.02 g/100 g, mass: 268 g ± 1 g}\n    measured:", 1)
	one := assaytest.Component(t, assaytest.Assay(t, lib, steps, 1000), "squash").Chemistry
	assert.InDelta(t, c.PHMeter.Mean, one.PHMeter.Mean, 1e-6, "readings one after another are of one state")
	assert.InDelta(t, c.Acidity[0].Per100g.Mean, one.Acidity[0].Per100g.Mean, 1e-3)
	assert.InDelta(t, c.Brix.Mean, one.Brix.Mean, 0.05)

	citric, before := assaytest.Figure(t, a.PerServing, "CITAC"), assaytest.Figure(t, bare.PerServing, "CITAC")
	t.Logf("citric acid %.0f ± %.0f mg, before %.0f ± %.0f mg", citric.Mean, citric.SD, before.Mean, before.SD)
	assert.Less(t, citric.SD, 0.8*before.SD, "an acidity tells about the acids")
	for _, f := range a.PerServing {
		assaytest.RowsSumTo(t, a.Serving, f.Constituent)
	}
	assert.Less(t, ledgertest.Closed(a.Serving), exact)
}

// Water 200 ± 4 g and citric acid 5 ± 0.5 g, their titratable acidity read: it is the
// acid itself in 100 g, all but a thousandth that pH 8.1 leaves. The answer of the grid
// owes nothing to the ensemble.
func TestReadingOfTheAcidityIsTheExactPosterior(t *testing.T) {
	const text = `
drink: "On the Burette"
serves: 1
build: [200 g ± 4 g sd core:water-pure, 5 g ± 0.5 g sd core:citric-acid]
finish:
  - measured: {ta: %s}
`
	lib := assaytest.Core(t)
	for reading, z := range map[string]struct{ read, sd float64 }{
		"2.60 g/100 g ± 0.05 g/100 g sd": {2.60, 0.05}, "2.20 g/100 g ± 0.10 g/100 g sd": {2.20, 0.10}, "2.9 g/100 g ± 0.3 g/100 g sd": {2.9, 0.3},
	} {
		want := bayes([2]float64{200, 5}, [2]float64{4, 0.5}, func(water, citric float64) float64 {
			return normal(z.read, 100*citric/(water+citric), z.sd)
		})
		a := assaytest.Assay(t, lib, fmt.Sprintf(text, reading), 2000)
		for k, id := range []constituent.ID{"WATER", "CITAC"} {
			col := a.Serving.Total(id)
			mean, sd := stat.MeanStdDev(col[1:], nil)
			t.Logf("%s, %s: mean %.3f central %.3f exact %.3f g, sd %.3f exact %.3f g", reading, id, mean, col[0], want.mean[k], sd, want.sd[k])
			assert.InDelta(t, want.mean[k], mean, 0.10*want.sd[k], "mean of %s, %s", id, reading)
			assert.InDelta(t, want.mean[k], col[0], 0.10*want.sd[k], "central %s, %s", id, reading)
			assert.InEpsilon(t, want.sd[k], sd, 0.10, "sd of %s, %s", id, reading)
		}
	}
}

// A reading that the recipe expects moves nothing but what is uncertain.
func TestReadingOfTheExpectedAcidityMovesNoAcid(t *testing.T) {
	lib := assaytest.Core(t)
	bare := assaytest.Assay(t, lib, fmt.Sprintf(squash, "mass: 270 g ± 1 g"), 500)
	c := assaytest.Component(t, bare, "squash").Chemistry
	a := assaytest.Assay(t, lib, fmt.Sprintf(squash, fmt.Sprintf("mass: 270 g ± 1 g, ph: %.6f ± 0.05, ta: %.6f g/100 g ± 0.02 g/100 g", c.PHMeter.Mean, c.Acidity[0].Per100g.Mean)), 500)
	for _, id := range []constituent.ID{"CITAC", "MALAC", "K", "WATER"} {
		assert.InEpsilon(t, assaytest.Figure(t, bare.PerServing, id).Mean, assaytest.Figure(t, a.PerServing, id).Mean, 1e-4, "%s", id)
	}
}

// Of a food nobody knows the acids of, pH and titratable acidity are read: those of
// citric acid of 0.1 mol/l (19.2 g/l, pH 2.08 in published tables of common acids).
// Tenfold in water the tables print 2.62, and hundredfold 3.24.
func TestReadingsMakeAnUnknownAcidComputable(t *testing.T) {
	const text = `
drink: "Nobody's Leaf"
serves: 1
foods:
  leaf: {name: "Leaf extract", per: 100 g, values: {WATER: 98 g}, source: "invented"}
components:
  extract:
    ingredients: [100 g own:leaf]
    measured: {ph: 2.08 ± 0.02, ta: 19.2 g/l ± 0.2 g/l}
build: [%s]
`
	lib := assaytest.Core(t)
	for build, want := range map[string]float64{"10.0 g extract, 90.0 g core:water-pure": 2.62, "1.00 g extract, 99.00 g core:water-pure": 3.24} {
		pH := assaytest.Assay(t, lib, fmt.Sprintf(text, build), 500).Chemistry.PHMeter
		require.Empty(t, pH.Why)
		t.Logf("%s: %.3f (%.3f–%.3f), published %.2f", build, pH.Mean, pH.Low, pH.High, want)
		assert.InDelta(t, want, pH.Mean, 0.05, build)
	}
}

// What was read goes on through steps: half of the water away, twice as acid; strained,
// the same liquor.
func TestReadingsGoThroughSteps(t *testing.T) {
	const text = `
drink: "Onward"
serves: 1
components:
  juice:
    ingredients: [300 g core:orange-juice]
    steps:
      - measured: {ph: 3.50, ta: 0.90 g/100 g}
      %s
build: [100 g juice]
`
	lib := assaytest.Core(t)
	acidity := func(step string) chemistry.Estimate {
		return assaytest.Component(t, assaytest.Assay(t, lib, fmt.Sprintf(text, step), 200), "juice").Chemistry.Acidity[0].Per100g
	}
	as := acidity("")
	assert.InDelta(t, 0.90, as.Mean, 0.01)
	assert.InEpsilon(t, 2*as.Mean, acidity("- reduce: {to: 150 g}").Mean, 0.02)
	assert.InEpsilon(t, as.Mean/2, acidity("- dilute: {to: 600 g}").Mean, 0.02)
	// Pulp stays behind: what is left is liquor.
	assert.InEpsilon(t, as.Mean, acidity("- strain: {collect: 200 g, through: paper}").Mean, 0.02)
}
