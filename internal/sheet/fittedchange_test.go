package sheet_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/sheet"
)

func wished(t *testing.T, text string, w fit.Wish) *sheet.Fitted {
	t.Helper()
	r := assaytest.Found(t, assaytest.Core(t), text)
	b := fit.Bench{
		Central: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1}), Drawn: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 51}),
		Drink: r.Drink, Declared: func(string) (bool, error) { return false, nil },
	}
	aims, remarks, err := b.Wished(context.Background(), w)
	require.NoError(t, err)
	res, err := b.Fit(context.Background(), append(fit.Read(r.Drink, &fail.List{}), aims...))
	require.NoError(t, err)
	s, err := sheet.Build("test", res.After, nil, uncited, nil)
	require.NoError(t, err)
	return sheet.Fit(s, res, remarks)
}

const against = `
drink: against
serves: 1
scale: 1 g
build: [40 g core:gin-45, 30 g core:lemon-juice, 20 g core:sugar-white, 60 g core:water-pure]
targets: [serving(ALC) <= 12 g, serving(SUGAR) between 18 g and 22 g]
vary: [{of: core:gin-45, from: 20 g, to: 60 g}]
`

// Twelve grams of alcohol at most, of a drink that has fifteen, and a fifth stronger: only one can be. If it is the first,
// the page says so before all else, and which target it is.
func TestWhatWasAskedForAndWentTheOtherWayIsSaidFirst(t *testing.T) {
	f := wished(t, against, fit.Wish{Quality: fit.Strong, More: true, By: 0.2})
	require.Less(t, f.After.Strength.Mean, f.Before.Strength.Mean)
	assert.True(t, strings.HasPrefix(f.Line, "Asked for more strong by 20 %, and this goes the other way: alcohol "), f.Line)
	assert.Contains(t, f.Line, "(serving(ALC) <= 12 g")
	alone := strings.Replace(against, "targets: [serving(ALC) <= 12 g, serving(SUGAR) between 18 g and 22 g]\n", "", 1)
	assert.NotContains(t, wished(t, alone, fit.Wish{Quality: fit.Strong, More: true, By: 0.05}).Line, "Asked for")
}

// The chance of a ready target is of its change: beside it stand the change and its interval, and not the interval of the
// figure, which is wider. How far the kept ones may move, and by whose word, is said.
func TestAReadyTargetTellsTheChangeThatIsJudged(t *testing.T) {
	f := wished(t, string(assaytest.FileOf(t, "data/demo/garden-tide.yaml")), fit.Wish{Quality: fit.Sour, By: 0.05})
	for _, h := range f.Held {
		if h.Says == "" {
			assert.Empty(t, sheet.Changed(h), h.Text)
			continue
		}
		assert.Regexp(t, `^([−+]\d+(\.\d)?|0) %( \(([−+][\d.]+|0) to ([−+][\d.]+|0)\))? beside the drink as it is written; that holds, draw by draw, in \d+`, sheet.Changed(h))
		if h.Kept {
			assert.Regexp(t, `, within [\d.]+ % either way, (the least that a judge notices|our own bound)$`, h.Says)
		}
	}
	said := strings.Join(f.Remarks, "\n")
	assert.Contains(t, said, "20.5 to 33 % of how sweet it is, and that rises as citric acid is added (npj Sci Food 2022, 6:33, abstract)")
	assert.Contains(t, said, "no difference that is noticed was found in print")
}
