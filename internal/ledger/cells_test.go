package ledger_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
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
	alone, together := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: 201}, pot.Columns), ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: 201}, pot.Columns)
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

// A food has a column only of what it is known to hold: a known zero and an unknown have
// none, and readers are given zeros.
func TestNothingHasNoColumn(t *testing.T) {
	p := profile("x", map[constituent.ID]float64{"WATER": 90, "GLUS": 5, "LACS": 0})
	columns := ledger.NewColumns([]*food.Profile{p}, "LACS", "FRUS")
	cells := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: 21}, columns).PerGram(p)
	require.True(t, p.Cell("LACS").Known)
	require.False(t, p.Cell("FRUS").Known)
	assert.Nil(t, cells[columns.At("LACS")])
	assert.Nil(t, cells[columns.At("FRUS")])
	assert.NotNil(t, cells[columns.At("GLUS")])
}

// A journal has every food drawn when it is asked for, column by column, and not before:
// side by side nothing would stand in order.
func TestFoodsOfAJournalAreDrawnOneAfterTheOther(t *testing.T) {
	pot, profiles := pots(t, 20)
	journal := &estimate.Journal{}
	drawer := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: 21, Journal: journal}, pot.Columns)
	drawer.Draw(profiles)
	assert.Empty(t, journal.Entries())
	drawer.PerGram(profiles[1])
	require.Greater(t, len(journal.Entries()), 3)
	for _, e := range journal.Entries() {
		assert.Equal(t, estimate.Tables, e.Cause)
		assert.Contains(t, e.Name, profiles[1].Food.ID.String())
		assert.Len(t, e.Column, 21)
	}
}
