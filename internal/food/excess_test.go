package food_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// milk is SR28 01077: its lactose is more than its carbohydrate by difference.
func milk(sugar float64) *food.Food {
	return sr("01077", "Milk, whole", "milk", map[constituent.ID]float64{
		"WATER": 88.13, "PROCNT": 3.15, "FAT": 3.25, "FASAT": 1.865, "CHOCDF": 4.80, "SUGAR": sugar, "LACS": sugar, "ASH": 0.67, "FIBTG": 0,
	})
}

func TestPublishedTotalAndPartsBothStand(t *testing.T) {
	p := food.Enter(milk(5.05), nil)
	assert.InDelta(t, 0.0480, p.Cell("CHOCDF").Amount, 1e-6)
	assert.InDelta(t, 0.0505, p.Cell("SUGAR").Amount, 1e-6)
	assert.InDelta(t, 0.8813, p.Cell("WATER").Amount, 1e-6, "and nothing else had to be scaled")
	rest := p.Cell("CHOCDF-other")
	assert.InDelta(t, -0.0025, rest.Amount, 1e-6)
	assert.True(t, rest.Known && rest.Exact(), "the difference of two figures has no spread of its own")
	assert.True(t, p.Cell("CHOAVL-other").Known)
	assert.Zero(t, p.Cell("CHOAVL-other").Amount)
	require.Len(t, p.Notes, 1)
	assert.Contains(t, p.Notes[0].Text, "both stand")

	// Parts are what their total is.
	sum := 0.0
	for _, child := range constituent.Sums().Children(constituent.Carbohydrate) {
		sum += p.Cells[child.Order].Amount
	}
	assert.InDelta(t, p.Cell("CHOCDF").Amount, sum, 1e-12)
}

func TestBeyondTwoStandardDeviationsThePartsAreKept(t *testing.T) {
	p := food.Enter(milk(9.0), nil)
	assert.Zero(t, p.Cell("CHOCDF-other").Amount)
	assert.InDelta(t, p.Cell("SUGAR").Amount, p.Cell("CHOCDF").Amount, 1e-12)
	require.NotEmpty(t, p.Notes)
	assert.Contains(t, p.Notes[0].Text, "the parts are kept")
}

func TestNegativeRestMakesNoRoomForAnUnknown(t *testing.T) {
	with, without := food.Enter(milk(5.05), nil).Cell("CITAC"), food.Enter(milk(4.80), nil).Cell("CITAC")
	require.False(t, with.Known)
	assert.Positive(t, with.Bound)
	assert.InEpsilon(t, without.Bound, with.Bound, 0.1)
}

func TestRoundingOfPublishedPartsIsNotWorthANote(t *testing.T) {
	f := sr("x", "Syrup", "syrup", map[constituent.ID]float64{"WATER": 30, "CHOCDF": 70, "SUGAR": 70.2, "SUCS": 70.2})
	assert.Empty(t, food.Enter(f, nil).Notes)
}
