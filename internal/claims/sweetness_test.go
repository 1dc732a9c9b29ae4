package claims_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/taste"
)

func sweetnessOf(t *testing.T, foods, build string) (claim.Figure, taste.SweetIndex) {
	t.Helper()
	a := run(t, assaytest.Core(t), "drink: x\nserves: 1\nfoods: {"+foods+"}\nbuild: ["+build+"]\n", 300)
	f, err := claims.NewGlass(a, nil).Property(claim.Sweetness)
	require.NoError(t, err)
	return f, taste.Of(a.Glass()).Sweet
}

// What claims ask of is the printed index, where every sugar is named and measured.
func TestSweetnessIsThatOfTheProfile(t *testing.T) {
	f, printed := sweetnessOf(t, "", "10 g core:sugar-white, 5 g core:fructose, 90 g core:water-pure")
	require.NotEmpty(t, f.Known)
	assert.InDelta(t, printed.Mean/100, f.Known[0], 0.002*printed.Mean/100, "sugar has a trace of others")
	assert.InDelta(t, printed.Draws[7]/100, f.Known[8], 0.002*printed.Mean/100)
}

// Of ten grams of sugars in 100 g of which nobody says which they are there is a gap from the least to the
// most sweet that they may be, and a line that would settle it; of sugars of which nobody knows how much,
// one by another key, that of their amount.
func TestSweetnessNamesWhatNobodyKnows(t *testing.T) {
	f, printed := sweetnessOf(t, "syr: {name: 'Syrup, invented', per: 100 g, values: {WATER: 90 g ± 0, CHOCDF: 10 g ± 0, SUGAR: 10 g ± 0, POLYL: 0 g ± 0, FIBTG: 0 g, PROCNT: 0 g, FAT: 0 g, ASH: 0 g}, source: x}", "100.00 g own:syr")
	require.Len(t, f.Gaps, 1, "sugars alone")
	assert.Equal(t, "which sugars of syrup they are", f.Gaps[0].What)
	assert.Equal(t, "which SUGAR of own:syr", f.Gaps[0].Key)
	assert.Contains(t, f.Gaps[0].Settle, "GLUS: … g")
	assert.Less(t, f.Known[0], printed.Mean/100)
	assert.Greater(t, f.Known[0]+f.Gaps[0].Most[0], printed.Mean/100)
	assert.InDelta(t, 0.1*1.7, f.Known[0]+f.Gaps[0].Most[0], 0.012, "10 g as sweet as the sweetest sugar (Russell et al. 2022: 1.7) in 96 ml")

	f, _ = sweetnessOf(t, "syr: {name: 'Syrup, invented', per: 100 g, values: {WATER: 80 g ± 0, SUCS: 5 g ± 0}, source: x}", "100.00 g own:syr")
	var keys []string
	for _, g := range f.Gaps {
		keys = append(keys, g.Key)
	}
	assert.Contains(t, strings.Join(keys, ", "), "SUGAR of own:syr")

	f, _ = sweetnessOf(t, "", "20 g core:sugar-white")
	assert.True(t, f.Unknown, "no liquid, no sweetness")
	assert.True(t, math.IsInf(f.Gaps[0].Most[0], 1))
}
