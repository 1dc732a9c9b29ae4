package drivers_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drivers"
)

// jug is water that is known to ± 4 g, and a bar's scale.
func jug(scale string) string {
	return "drink: \"Jug\"\nserves: 1\n" + scale + "foods:\n  wet: {name: \"Water of the test\", per: 100 g, values: {WATER: 100 g}, source: \"invented\"}\nbuild: [200 g ± 4 g sd own:wet]\n"
}

func suggested(t testing.TB, lib assaytest.Library, text string, draws int, wanted ...constituent.ID) []drivers.Suggestion {
	t.Helper()
	return assaytest.Asked(t, lib, text, assaytest.Options{Draws: draws, Want: assay.Want{Next: true, Figures: wanted}}).Suggestions
}

func find(list []drivers.Suggestion, of, kind string) (drivers.Suggestion, bool) {
	i := slices.IndexFunc(list, func(s drivers.Suggestion) bool { return s.Of == of && s.Reading == kind })
	if i < 0 {
		return drivers.Suggestion{}, false
	}
	return list[i], true
}

// Of a normal amount with variance 4² and a scale whose rectangle is half wide, the variance
// that is left is 1/(1/4² + 3/half²).
func TestAMassNarrowsAsTheNormalPosteriorDoes(t *testing.T) {
	for scale, half := range map[string]float64{"": 0.5, "scale: 10 g\n": 5, "scale: 20 g\n": 10} {
		s, ok := find(suggested(t, assaytest.Library{}, jug(scale), 4000, constituent.Water), "", "mass")
		require.True(t, ok, scale)
		require.Len(t, s.Narrows, 1)
		left := math.Sqrt(1 / (1.0/16 + 3/(half*half)))
		assert.InDelta(t, 1-left/4, s.Narrows[0].By, 0.02, scale)
		assert.InDelta(t, s.Narrows[0].By, s.Score, 1e-12)
		assert.Equal(t, "g", s.Unit)
		assert.InDelta(t, 200, s.Expect.Mean, 1e-9)
	}
}

// A reading that would narrow nothing by a fiftieth is not proposed: a scale of 100 g says
// nothing of ± 4 g.
func TestWhatWouldTellNothingIsNotProposed(t *testing.T) {
	_, ok := find(suggested(t, assaytest.Library{}, jug("scale: 100 g\n"), 4000, constituent.Water), "", "mass")
	assert.False(t, ok)
	assert.Empty(t, suggested(t, assaytest.Library{}, jug(""), 1, constituent.Water), "one draw tells no spread")
	assert.Empty(t, suggested(t, assaytest.Library{}, jug(""), 200, "SUCS"), "there is none of it")
	assert.Empty(t, suggested(t, assaytest.Library{}, jug(""), 200), "nothing is wanted")
}

// A score is the mean over all that is wanted and has a spread, each counted once; what
// hangs on the reading most comes first.
func TestTheScoreIsOfAllThatIsWanted(t *testing.T) {
	list := suggested(t, assaytest.Library{}, fmt.Sprintf(weighed, ""), 2000, "SUCS", constituent.Water, "SUCS", "CAFFN")
	s, ok := find(list, "", "mass")
	require.True(t, ok)
	require.Len(t, s.Narrows, 2)
	assert.Greater(t, s.Narrows[0].By, s.Narrows[1].By)
	assert.Equal(t, constituent.ID("SUCS"), s.Narrows[0].Constituent.ID, "its hand is the less sure")
	assert.InDelta(t, (s.Narrows[0].By+s.Narrows[1].By)/2, s.Score, 1e-12)
	assert.True(t, slices.IsSortedFunc(list, func(a, b drivers.Suggestion) int {
		if a.Score > b.Score {
			return -1
		}
		return 1
	}))
}

// A refractometer is misled by alcohol, an alcoholometer finds none where there is none, and
// a scale for coffee is for coffee and tea.
func TestOnlyReadingsThatSuitAreProposed(t *testing.T) {
	lib := assaytest.Core(t)
	for _, c := range []struct {
		ingredients string
		wanted      constituent.ID
		has, not    []string
	}{
		{"100 g ± 20 g core:sugar-white, 100 g ± 20 g core:water-pure", "SUCS", []string{"brix", "density"}, []string{"tds", "abv", "ta"}},
		{"100 g ± 20 g core:vodka-40, 100 g ± 20 g core:water-pure", "ALC", []string{"abv"}, []string{"brix", "tds"}},
		{"1 g ± 0.5 g core:vodka-40, 100 g ± 20 g core:water-pure", "ALC", []string{"abv"}, []string{"brix", "tds"}},
		{"100 g ± 20 g core:filter-coffee, 100 g ± 20 g core:water-pure", "CAFFN", []string{"tds"}, []string{"brix", "abv"}},
		{"1 g ± 0.9 g core:citric-acid, 200 g core:water-pure", "CITAC", []string{"ta", "ph"}, []string{"tds", "abv"}},
		{"60 g ± 20 g core:lemon-juice, 100 g ± 20 g core:water-pure", "CITAC", []string{"ta", "brix"}, []string{"tds", "abv"}},
	} {
		text := "drink: x\nserves: 1\ncomponents: {pot: {ingredients: [" + c.ingredients + "]}}\nbuild: [100 g pot]\n"
		list := suggested(t, lib, text, 400, c.wanted)
		for _, kind := range c.has {
			s, ok := find(list, "pot", kind)
			if assert.True(t, ok, "%s of %s", kind, c.ingredients) {
				assert.GreaterOrEqual(t, s.Narrows[0].By, 0.02)
			}
		}
		for _, kind := range c.not {
			_, ok := find(list, "pot", kind)
			assert.False(t, ok, "%s of %s", kind, c.ingredients)
		}
	}
}

// What was read is not proposed again; what was not, is.
func TestAReadingTakenIsNotProposed(t *testing.T) {
	lib := assaytest.Core(t)
	const text = "drink: x\nserves: 1\ncomponents:\n  pot:\n    ingredients: [60 g ± 20 g core:lemon-juice, 40 g ± 10 g core:sugar-white]\n%sbuild: [100 g pot]\n"
	kinds := func(measured string) (kinds []string) {
		for _, s := range suggested(t, lib, fmt.Sprintf(text, measured), 400, "CITAC", "SUGAR") {
			if s.Of == "pot" {
				kinds = append(kinds, s.Reading)
			}
		}
		return kinds
	}
	before := kinds("")
	for _, kind := range []string{"mass", "brix", "ta"} {
		assert.Contains(t, before, kind)
	}
	for kind, reading := range map[string]string{"mass": "mass: 100 g", "brix": "brix: 44", "ta": "ta: 3.5 g/100 g"} {
		assert.NotContains(t, kinds("    measured: {"+reading+"}\n"), kind)
	}
}

func TestAPHThatWasReadIsNotProposed(t *testing.T) {
	const text = "drink: x\nserves: 1\ncomponents:\n  pot:\n    ingredients: [1 g ± 0.9 g core:citric-acid, 200 g core:water-pure]\n%sbuild: [100 g pot]\n"
	lib := assaytest.Core(t)
	s, ok := find(suggested(t, lib, fmt.Sprintf(text, ""), 400, "CITAC"), "pot", "ph")
	require.True(t, ok)
	assert.Less(t, s.Narrows[0].By, 0.9, "no model of a pH is exact")
	_, ok = find(suggested(t, lib, fmt.Sprintf(text, "    measured: {ph: 2.4}\n"), 400, "CITAC"), "pot", "ph")
	assert.False(t, ok)
}

// Where nobody knows the acids no meter's reading is foretold.
func TestNothingIsForetoldOfAcidsThatNobodyKnows(t *testing.T) {
	text := "drink: x\nserves: 1\nfoods:\n  cordial: {name: A cordial, group: fruit juice, per: 100 g, values: {WATER: 85 g, SUGAR: 5 g ± 0.1 g, CHOCDF: 14 g}, source: made up}\nbuild: [100 g ± 20 g own:cordial]\n"
	list := suggested(t, assaytest.Core(t), text, 100, "SUGAR")
	require.NotEmpty(t, list)
	for _, s := range list {
		assert.NotContains(t, []string{"ph", "ta"}, s.Reading)
	}
}
