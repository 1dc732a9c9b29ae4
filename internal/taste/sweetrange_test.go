package taste_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/taste"
)

// Where all sugars are named and measured the range is the index itself, draw by draw.
func TestTheRangeOfNamedSugarsIsTheIndex(t *testing.T) {
	g := glass(grams{"SUCS": 3, "GLUS": 4, "FRUS": 2}, nil)
	r, s := taste.RangeOfSweetness(g), taste.Sweetness(g)
	require.Empty(t, r.Gaps)
	assert.InDelta(t, s.Mean, r.Least[0], 1e-8)
	assert.InDeltaSlice(t, s.Draws, r.Least[1:], 1e-8)
	assert.Len(t, r.Factors, 2, "sucrose is the measure")
}

// Six grams of sugars of which nobody says which they are, and which may be sucrose (1) and up to two grams
// of lactose (0.15 to 0.601 in data/taste_sweetness.csv): at the least 2 × 0.15 + 4 × 1 = 4.3 g as sucrose, at
// the most 6, where the sweetest of all sugars would make 10.2.
func TestUnsaidSugarsAreWhatTheyMayBe(t *testing.T) {
	r := taste.RangeOfSweetness(glass(grams{"SUGAR-other": 6}, grams{"SUCS": math.NaN(), "LACS": 2}))
	require.Len(t, r.Gaps, 1)
	assert.True(t, r.Gaps[0].Unsaid)
	assert.EqualValues(t, "SUGAR", r.Gaps[0].Of.ID)
	assert.InDelta(t, 4.3, r.Least[0], 1e-9)
	assert.InDelta(t, 1.7, r.Gaps[0].Most[0], 1e-9)

	r = taste.RangeOfSweetness(glass(grams{"SUGAR-other": 6}, nil))
	assert.InDelta(t, 6*0.15, r.Least[0], 1e-9, "none that it may be: anything")
	assert.InDelta(t, 6*(1.7-0.15), r.Gaps[0].Most[0], 1e-9)
}

// What nobody has measured is none at the least, and at the most as sweet as the sweetest that it may be;
// glucose gets sweeter in what is sweeter (Nickerson), so that more comes than the sugar itself brings.
func TestUnmeasuredSugars(t *testing.T) {
	most := unknownSugar(2)
	most["SUCS"] = 2
	g := glass(grams{"GLUS": 10}, most)
	r := taste.RangeOfSweetness(g)
	require.Len(t, r.Gaps, 1)
	assert.InDelta(t, taste.Sweetness(g).Mean, r.Least[0], 1e-8)
	assert.Greater(t, r.Gaps[0].Most[0], 2.0)
	assert.Less(t, r.Gaps[0].Most[0], 2.6)

	r = taste.RangeOfSweetness(glass(grams{"GLUS": 10, "SUGAR-other": 3, "POLYL-other": 2}, nil))
	require.Len(t, r.Gaps, 2)
	all := taste.Sweetness(glass(grams{"GLUS": 10, "SUCS": 3*1.7 + 2*1.2}, nil))
	assert.InDelta(t, all.Mean, r.Least[0]+r.Gaps[0].Most[0]+r.Gaps[1].Most[0], 1e-8, "all gaps together are all at their most")

	r = taste.RangeOfSweetness(glass(grams{"SUCS": 5}, unknownSugar(math.NaN())))
	require.Len(t, r.Gaps, 1)
	assert.True(t, math.IsInf(r.Gaps[0].Most[0], 1))
	assert.InDelta(t, 5, r.Least[0], 1e-9)

	r = taste.RangeOfSweetness(glass(grams{"SUCS": 5, "GLYRL": 1}, nil))
	assert.Equal(t, []*constituent.Constituent{constituent.Must("GLYRL")}, r.Without)
}
