package assay_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
)

// vermouth is a drink of own vermouth at 90 mg of sulphur dioxide a kilogram, as of 30 g in 150 g,
// made by steps.
func vermouth(t *testing.T, steps string) *assay.Assay {
	t.Helper()
	if steps != "" {
		steps = "\n    steps: [" + steps + "]"
	}
	return assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(`
drink: "Declared"
serves: 1
foods:
  vermouth:
    name: "House vermouth"
    group: wine
    per: 1 kg
    values: {SO2: 90 mg ± 0.001 mg, quinine: 20 mg ± 0.001 mg, WATER: 740 g, ALC: 130 g, SUGAR: 130 g}
    source: "invented"
components:
  pot:
    ingredients: [30 g ± 0.0001 g own:vermouth, 120 g ± 0.0001 g core:water-pure]%s
build: [150 g ± 0.0001 g pot]
`, steps), 200)
}

// 30 g at 90 mg/kg in a drink of 150 g are 18 mg/kg: 30 × 90 ÷ 150, to be declared above 10
// (Regulation (EU) No 1169/2011, Annex II, item 12).
func TestSulphurDioxideOfAMix(t *testing.T) {
	for _, steps := range []string{"", "strain: {collect: 150 g ± 0.0001 g, through: paper}"} {
		a := vermouth(t, steps)
		mg, most, known := a.AmountOf("SO2")
		assert.True(t, known)
		assert.InDelta(t, 2.7, mg, 0.05, steps)
		assert.InDelta(t, 18, mg/a.Mass.Mean*1000, 0.3, steps)
		assert.InDelta(t, mg, most, 1e-9, "nothing else in it can hold any")
		mg, _, known = a.AmountOf("quinine")
		assert.True(t, known)
		assert.InDelta(t, 0.6, mg, 0.02, steps)
	}
}

// What is heated may have lost all of its sulphur dioxide, and may have lost none: some of it
// is bound. It is not less than before what it may be.
func TestHeatMakesSulphurDioxideUnknown(t *testing.T) {
	for step, quinine := range map[string]float64{"reduce: {by: 20 %}": 0.6 / 0.8, `heat: {code: "5004"}`: 0.6} {
		a := vermouth(t, step)
		mg, most, _ := a.AmountOf("SO2")
		assert.InDelta(t, 0, mg, 0.001, step)
		assert.GreaterOrEqual(t, most, 2.69, step)
		f, ok := a.PerServing.Find("SO2")
		assert.True(t, ok && f.Partial, step)
		mg, _, _ = a.AmountOf("quinine")
		assert.InDelta(t, quinine, mg, 0.02, "%s: quinine does not boil off", step)
	}
}

// Pure substances by their formula: potassium metabisulphite gives 57.6 % of its mass of sulphur
// dioxide (OIV International Oenological Codex: 57.6 %), the hydrochloride dihydrate of quinine
// holds 81.7 % of the base (324.4 ÷ 396.9).
func TestSaltsGiveWhatTheLawCounts(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), "drink: x\nserves: 1\nbuild: [1000 g core:water-pure, 1 g ± 0.000001 g core:potassium-metabisulphite, 0.1 g ± 0.000001 g core:quinine-hydrochloride, 1 g core:sucralose]\n", 50)
	for id, want := range map[constituent.ID]float64{"SO2": 576, "quinine": 81.7, "sucralose": 1000, "ASPM": 0, "saccharin": 0} {
		mg, most, known := a.AmountOf(id)
		assert.True(t, known, id)
		assert.InDelta(t, want, mg, 0.005*want, id)
		assert.InDelta(t, mg, most, 1e-9, id)
	}
}

// What the law counts is no part of the sums of masses, and yet it is no water: an own food of
// nothing but a sweetener does not thin a drink.
func TestAPureSweetenerIsNoWater(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), `
drink: x
serves: 1
foods:
  sweet: {name: "Sweetener, pure", group: sugar, per: 100 g, values: {ASPM: 98 g, SUGAR: 0 g}, source: "invented"}
build: [100 g ± 0.0001 g core:sugar-white, 10 g ± 0.0001 g own:sweet]
`, 50)
	water, _, _ := a.AmountOf(constituent.Water)
	assert.Less(t, water, 0.3)
	assert.InDelta(t, 110, a.Mass.Mean, 0.01)
	mg, _, _ := a.AmountOf("ASPM")
	assert.InDelta(t, 9800, mg, 100)
}
