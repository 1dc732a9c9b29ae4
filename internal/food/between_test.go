package food_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// The lots of one survey say nothing of another country's: twenty analyses with
// 1 % between them are known worse than that, a designer's own ± is not.
func TestSamplesOfOneSourceAreNotAllSources(t *testing.T) {
	f := sr("x", "Almond", "nut", map[constituent.ID]float64{"WATER": 5, "FAT": 50, "PROCNT": 21, "K": 700})
	stated(f, "K", 7, 20)
	sd := food.Enter(f, nil).Cell("K").SD * 1e5
	assert.Greater(t, sd, 2*7.0)
	assert.LessOrEqual(t, sd, math.Hypot(7, 700*food.ClassSpread(constituent.Must("K"), "nut")))
	stated(f, "K", 7, 0)
	assert.InDelta(t, 7, food.Enter(f, nil).Cell("K").SD*1e5, 1e-9)
}

// A total keeps the spread that was measured of it: parts that vary by 30 % each
// do not make it vary more.
func TestTotalsKeepTheirOwnSpread(t *testing.T) {
	f := sr("x", "Melon", "fruit", map[constituent.ID]float64{"WATER": 91, "CHOCDF": 7.5, "FIBTG": 0.4, "SUGAR": 6.2, "GLUS": 1.6, "FRUS": 3.4, "SUCS": 1.2})
	stated(f, "SUGAR", 0.35, 0)
	p := food.Enter(f, nil)
	require.Len(t, p.Totals, 1, "carbohydrate by difference is no measurement")
	assert.Equal(t, constituent.Sugar, p.Totals[0].Constituent.ID)
	assert.InDelta(t, 0.35/6.2, p.Totals[0].Cell.SD/p.Totals[0].Cell.Amount, 1e-9)
	assert.InDelta(t, p.Cell("SUGAR").Amount, p.Totals[0].Cell.Amount, 1e-9)
}

// A class default says how such totals vary; where the parts were measured and
// make up less than that, they know better.
func TestMeasuredPartsKnowBetterThanADefault(t *testing.T) {
	f := sr("x", "Melon", "fruit", map[constituent.ID]float64{"WATER": 91, "SUGAR": 6.2, "GLUS": 1.6, "FRUS": 3.4, "SUCS": 1.2})
	for id, sd := range map[constituent.ID]float64{"GLUS": 0.02, "FRUS": 0.02, "SUCS": 0.02} {
		stated(f, id, sd, 0)
	}
	assert.Empty(t, food.Enter(f, nil).Totals)
}
