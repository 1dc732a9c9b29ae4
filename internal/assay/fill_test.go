package assay_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

func TestFillRepairsTheUnknownAndIsMarked(t *testing.T) {
	lib := assaytest.Core(t)
	for id, f := range assaytest.SR28(t) {
		lib[id] = f
	}
	const text = "drink: \"Sharp\"\nserves: 1\nbuild:\n  - {food: \"sr:09152\", amount: 20 g%s}\n  - 60 g sr:14411\n"
	bare := assaytest.Assay(t, lib, strings.Replace(text, "%s", "", 1), 50, "CITAC")
	a := assaytest.Assay(t, lib, strings.Replace(text, "%s", ", fill: \"core:lemon-juice\"", 1), 50, "CITAC")
	citric := assaytest.Figure(t, a.PerServing, "CITAC")
	require.False(t, citric.Unknown || citric.Partial)
	assert.Equal(t, 1.0, citric.Coverage)
	assert.GreaterOrEqual(t, citric.State, estimate.Calculated, "a borrowed figure is not measured in this food")
	lender, ok := lib[food.ID{Table: "core", Code: "lemon-juice"}].Value("CITAC")
	require.True(t, ok)
	// It may be scaled down to what SR28's own carbohydrate leaves, never up.
	assert.LessOrEqual(t, citric.Mean, lender.Amount/100*20*(1+exact))
	assert.Greater(t, citric.Mean, lender.Amount/100*20*0.7)

	require.Len(t, citric.Contributions, 1)
	con := citric.Contributions[0]
	assert.Equal(t, "sr:09152", con.Food)
	assert.Equal(t, "core", con.Table, "the row behind the figure is the lender's")
	assert.NotEmpty(t, con.Source)
	assert.Contains(t, con.SourceNote, "borrowed from core:lemon-juice")
	borrowed := assaytest.NotesOf(a, "borrowed", "")
	require.Len(t, borrowed, 1)
	assert.Contains(t, borrowed[0], "core:lemon-juice")

	// What SR28 prints itself stays as it was.
	for _, id := range []constituent.ID{"WATER", "SUGAR", "PROCNT", "K", "VITC"} {
		before := assaytest.Figure(t, bare.PerServing, id)
		assert.InDelta(t, before.Mean, assaytest.Figure(t, a.PerServing, id).Mean, 2e-3*before.Mean, id)
	}
}
