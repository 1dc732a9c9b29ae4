package ledger_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

func TestWritingARowLeavesTheOthersAlone(t *testing.T) {
	pot, _ := pots(t, 20)
	lactose := pot.Columns.At("LACS")
	require.False(t, pot.Has(0, lactose), "the juice has none")
	assert.Equal(t, make([]float64, 21), pot.Cell(0, lactose))
	copy(pot.Write(0, lactose), column(21, 3))
	assert.True(t, pot.Has(0, lactose))
	assert.Equal(t, column(21, 3), pot.Of(0, "LACS"))
	assert.Equal(t, make([]float64, 21), pot.Cell(1, pot.Columns.At("CITAC")), "the cream has no citric acid")
}

func TestFoodsDrawnSideBySideAreDrawnAlike(t *testing.T) {
	pot, profiles := pots(t, 200)
	alone, together := ledger.NewDrawer(1, 201, pot.Columns), ledger.NewDrawer(1, 201, pot.Columns)
	together.Draw([]*food.Profile{profiles[1], profiles[0]})
	for _, p := range profiles {
		assert.Equal(t, alone.PerGram(p), together.PerGram(p))
	}
}

func TestFirstIsThePotWithFewerDraws(t *testing.T) {
	many, _ := pots(t, 200)
	few, _ := pots(t, 20)
	tracer := charge{"read", "K"}
	copy(many.Carry(0, tracer), column(201, 2))
	first := many.First(21)
	assert.Equal(t, few.Mass(), first.Mass())
	for row := range few.Rows {
		assert.Equal(t, few.Of(row, "CITAC"), first.Of(row, "CITAC"))
	}
	assert.Equal(t, column(21, 2), first.Traced(0)[0].Column)
}
