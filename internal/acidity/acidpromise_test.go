package acidity_test

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
	"sipsum/internal/chemistry"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/drivers"
	"sipsum/internal/ledger/ledgertest"
)

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

// What a reading is promised to narrow it narrows.
func TestPromiseOfAnAcidityIsKept(t *testing.T) {
	lib := assaytest.Core(t)
	d, faults := drink.Parse("test", []byte(fmt.Sprintf(squash, "mass: 270 g ± 1 g")), nil)
	bare, err := assaytest.Run(t.Context(), d, faults, lib, assaytest.Options{Draws: 2000, Seed: 1, Want: assay.Want{Next: true, Figures: []constituent.ID{"CITAC"}}})
	require.NoError(t, err)
	before := assaytest.Figure(t, bare.PerServing, "CITAC")
	for kind, unit := range map[string]string{"ph": "", "ta": " g/100 g"} {
		i := slices.IndexFunc(bare.Suggestions, func(s drivers.Suggestion) bool { return s.Of == "squash" && s.Reading == kind })
		if i < 0 { // nothing is promised of a reading that would narrow nothing
			require.Equal(t, "ph", kind)
			continue
		}
		s := bare.Suggestions[i]
		reading := fmt.Sprintf("mass: 270 g ± 1 g, %s: %.6f%s ± %.4f%s", kind, s.Expect.Mean, unit, map[string]float64{"ph": 0.05, "ta": 0.02 * s.Expect.Mean}[kind], unit)
		after := assaytest.Figure(t, assaytest.Assay(t, lib, fmt.Sprintf(squash, reading), 2000).PerServing, "CITAC")
		by := 1 - after.SD/before.SD
		t.Logf("%s: promised %.2f, kept %.2f", kind, s.Narrows[0].By, by)
		// Where a published pH is held beside an acidity, named acids give way in some draws:
		// a little less is kept than the update promises.
		assert.InDelta(t, s.Narrows[0].By, by, 0.15, kind)
	}
}

// Whatever is read of whatever liquid, there is an answer or a fault, and no figure that
// is not a number.
func TestAbsurdAciditiesAreMetOrRefused(t *testing.T) {
	lib, met := assaytest.Core(t), 0
	for _, food := range []string{"core:lemon-juice", "core:milk-whole", "core:water-pure", "core:water-brew", "core:salt", "core:honey", "core:vodka-40", "core:espresso", "core:oat-drink", "core:sugar-white"} {
		for _, reading := range []string{"ph: 1.0", "ph: 7.0", "ph: 11.0", "ta: 0 g/l", "ta: 60 g/l", "ph: 3.5, ta: 0 g/l", "ph: 2.0, ta: 100 g/l", "ph: 9.0, ta: 5 g/l"} {
			text := "drink: x\nserves: 1\ncomponents:\n  a: {ingredients: [100 g " + food + ", 1 g core:citric-acid], measured: {" + reading + "}}\nbuild: [50 g a, 50 g core:orange-juice]\n"
			d, faults := drink.Parse("test", []byte(text), nil)
			a, err := assaytest.Run(t.Context(), d, faults, lib, assaytest.Options{Draws: 60, Seed: 1})
			if err != nil {
				assert.ErrorContains(t, err, "acidity", "%s %s", food, reading)
				t.Logf("%s, %s: %v", food, reading, err)
				continue
			}
			met++
			if want, found := strings.CutPrefix(strings.Split(reading, ",")[0], "ph: "); found {
				got := chemistryOf(t, a, "a").PHMeter
				require.Empty(t, got.Why, "%s %s", food, reading)
				assert.Equal(t, want, fmt.Sprintf("%.1f", got.Mean), "%s %s", food, reading)
			}
			for _, c := range []*chemistry.Chemistry{a.Chemistry, chemistryOf(t, a, "a")} {
				if c.PHMeter.Why == "" {
					assert.False(t, math.IsNaN(c.PHMeter.Mean+c.PHMeter.Low+c.PHMeter.High), "%s %s", food, reading)
				}
			}
			for _, f := range a.PerServing {
				require.False(t, math.IsNaN(f.Mean) || math.IsInf(f.High, 0), "%s %s %s", food, reading, f.Constituent.ID)
			}
			assert.Less(t, ledgertest.Closed(a.Serving), 1e-9)
		}
	}
	assert.Greater(t, met, 60)
}
