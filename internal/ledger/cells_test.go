package ledger_test

import (
	"fmt"
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

// Two pots lose what both have lost.
func TestLossesAddUp(t *testing.T) {
	assert.Equal(t, []float64{5, 7}, ledger.Lost{Grams: []float64{1, 2}}.Plus(ledger.Lost{Grams: []float64{4, 5}}).Grams)
}

// A copy holds the same and goes its own way; what joins stands as if it had been poured.
func TestCopiesAndJoinedPots(t *testing.T) {
	pot, _ := pots(t, 20)
	trace := charge{"read", "K"}
	pot.Carry(0, trace)[0] = 3
	same := pot.Copy()
	assert.Equal(t, pot.Mass(), same.Mass())
	assert.Equal(t, pot.Rows, same.Rows)
	assert.Equal(t, fmt.Sprint(pot.Bounds(0)), fmt.Sprint(same.Bounds(0)), "some are NaN")
	assert.Equal(t, 3.0, same.Carry(0, trace)[0])
	mass := pot.Mass()
	same.Scale(column(21, 2))
	assert.Equal(t, mass, pot.Mass())
	for d, grams := range same.Mass() {
		assert.InDelta(t, 2*mass[d], grams, 1e-9)
	}
	pot.Join(same)
	require.Len(t, pot.Rows, 4)
	assert.InDelta(t, 3*mass[5], pot.Mass()[5], 1e-9)
	assert.InDelta(t, pot.Total("SUGAR")[0], pot.Central("SUGAR"), 1e-12)
	assert.Positive(t, pot.Central("SUGAR"))
}

// Other draws of the same columns: the central values stay, the draws do not.
func TestADrawerWithOtherDraws(t *testing.T) {
	p := profile("x", map[constituent.ID]float64{"WATER": 90, "GLUS": 5})
	columns := ledger.NewColumns([]*food.Profile{p})
	first := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: 21}, columns)
	other := first.With(estimate.Ensemble{Seed: 2, N: 11})
	at := columns.At("GLUS")
	a, b := first.PerGram(p)[at], other.PerGram(p)[at]
	assert.Len(t, b, 11)
	assert.Equal(t, a[0], b[0])
	assert.NotEqual(t, a[1], b[1])
	assert.Equal(t, 11, other.NewPot().N)
}

// What a row carries may be taken from it, one thing or all.
func TestARowSheds(t *testing.T) {
	pot, _ := pots(t, 1)
	a, b := charge{"a", "K"}, charge{"b", "K"}
	pot.Carry(0, a)[0], pot.Carry(0, b)[0], pot.Carry(1, a)[0] = 1, 2, 3
	pot.Shed(0, a)
	require.Len(t, pot.Traced(0), 1)
	assert.Equal(t, 2.0, pot.Carry(0, b)[0])
	assert.Len(t, pot.Traced(1), 1)
}
