package across_test

import (
	"context"
	"maps"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/across"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// row is an invented row of an agency's table, at a place of data/crosswalk.csv.
func row(table, code string, holds map[constituent.ID]float64) *food.Food {
	f := assaytest.Exact(code, "fruit juice", holds)
	f.ID = food.ID{Table: table, Code: code}
	return f
}

func run(t *testing.T, text string, tables []string, ids []constituent.ID, rows ...*food.Food) *across.Across {
	t.Helper()
	lib := maps.Clone(assaytest.Core(t))
	for _, f := range rows {
		lib[f.ID] = f
	}
	r := assaytest.Found(t, lib, text)
	a, err := across.Run(context.Background(), r, lib, tables, estimate.Ensemble{Seed: 1, N: 101}, ids)
	require.NoError(t, err)
	return a
}

const lemonade = `
drink: lemonade
serves: 2
build: [100 g core:lemon-juice, 60 g core:espresso]
`

func figure(t *testing.T, a *across.Across, id constituent.ID) across.Figure {
	t.Helper()
	for _, f := range a.Figures {
		if f.Constituent.ID == id {
			return f
		}
	}
	require.Fail(t, "no figure", id)
	return across.Figure{}
}

// A glass has 50 g of lemon juice: of 4 and of 6 g of citric acid in 100 g there are 2 and 3 g beside
// that of the espresso, which stays; a table without the acid is no zero.
func TestTablesAreSetBesideEachOther(t *testing.T) {
	water := map[constituent.ID]float64{"WATER": 90}
	a := run(t, lemonade, []string{"ciqual", "stfcj", "swiss", "sr"}, []constituent.ID{"CITAC", "CAFFN", "SUGAR"},
		row("ciqual", "2007", map[constituent.ID]float64{"WATER": 90, "CITAC": 4000, "SUGAR": 2}),
		row("stfcj", "07156", map[constituent.ID]float64{"WATER": 90, "CITAC": 6000, "SUGAR": 2}),
		row("swiss", "605", water),
	)
	citric := figure(t, a, "CITAC")
	espresso := citric.Voices[0].Mean - 2000
	assert.InDelta(t, assaytest.Figure(t, assaytest.Assay(t, assaytest.Core(t), "drink: x\nserves: 1\nbuild: [30 g core:espresso]\n", 100).PerServing, "CITAC").Mean, espresso, 1e-6)
	assert.Equal(t, 2, citric.Tables)
	assert.InDelta(t, 2000+espresso, citric.Low, 1e-6)
	assert.InDelta(t, 3000+espresso, citric.High, 1e-6)
	assert.Equal(t, across.Absent, citric.Voices[2].Standing)
	assert.Equal(t, "core:lemon-juice", citric.Voices[2].Lacks[0].ID.String())
	assert.Equal(t, across.AsCore, citric.Voices[3].Standing, "sr has nothing of it here")
	require.NotNil(t, citric.Most)
	assert.InDelta(t, 2000, citric.Most.Low, 1e-6)
	assert.InDelta(t, 3000, citric.Most.High, 1e-6)
	assert.Equal(t, "ciqual", citric.Most.LowBy)
	assert.Equal(t, "stfcj", citric.Most.HighBy)
	assert.Equal(t, "core:lemon-juice", a.Most.Food.ID.String())

	caffeine := figure(t, a, "CAFFN")
	assert.Zero(t, caffeine.Tables, "nobody took the espresso")
	assert.Equal(t, across.AsCore, caffeine.Voices[0].Standing)
	assert.InDelta(t, caffeine.Core.Mean, caffeine.Voices[0].Mean, 1e-9, "as it is")
	assert.InDelta(t, caffeine.Core.High, caffeine.Voices[0].High, 1e-9, "in the same draws")
	assert.Nil(t, figure(t, a, "SUGAR").Most, "they agree")
}

// A stand-in is no second opinion, and what a table has no row for is named.
func TestWhatStaysIsNamed(t *testing.T) {
	a := run(t, lemonade, []string{"ciqual", "sr"}, []constituent.ID{"CITAC"}, row("ciqual", "2007", map[constituent.ID]float64{"WATER": 90, "CITAC": 4000}))
	require.Len(t, a.Tables[0].Stays, 1)
	assert.Equal(t, "core:espresso", a.Tables[0].Stays[0].Food.ID.String())
	assert.Contains(t, a.Tables[0].Stays[0].Why, "stand-in: another strength")
	require.Len(t, a.Tables[1].Stays, 2)
	assert.Contains(t, a.Tables[1].Stays[0].Why, "no row 09152")
	assert.Empty(t, a.Tables[1].Taken)
}

// Of two juices one table knows the acid of one alone: its figure is told in part and is in no spread.
func TestAPartIsNoWhole(t *testing.T) {
	a := run(t, "drink: x\nserves: 1\nbuild: [50 g core:lemon-juice, 50 g core:apple-juice]\n", []string{"ciqual"}, []constituent.ID{"MALAC"},
		row("ciqual", "2007", map[constituent.ID]float64{"WATER": 90, "MALAC": 300}),
		row("ciqual", "2074", map[constituent.ID]float64{"WATER": 88, "SUGAR": 10}),
	)
	malic := figure(t, a, "MALAC")
	assert.Equal(t, across.Partly, malic.Voices[0].Standing)
	assert.Zero(t, malic.Tables)
	assert.Equal(t, "core:apple-juice", malic.Voices[0].Lacks[0].ID.String())
}

func TestTheTablesWithAJudgement(t *testing.T) {
	assert.Subset(t, across.Tables(), []string{"sr", "ciqual", "stfcj", "swiss", "afcd"})
	assert.NotContains(t, across.Tables(), "fndds", "made from sr")
}
