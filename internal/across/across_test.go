package across_test

import (
	"context"
	"maps"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/across"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
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
	var asked []across.Asked
	for _, id := range tables {
		asked = append(asked, across.Asked{ID: id, Format: id})
	}
	a, err := across.Run(context.Background(), r, lib, asked, estimate.Ensemble{Seed: 1, N: 101}, ids)
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
	judged := map[string]bool{}
	for _, row := range embedded.Rows("crosswalk.csv") {
		if row.Text("match") != "" {
			judged[row.Text("table")] = true
		}
	}
	assert.ElementsMatch(t, slices.Collect(maps.Keys(judged)), across.Tables(), "data/across_tables.csv and data/crosswalk.csv say otherwise which tables are taken")
	assert.Subset(t, across.Tables(), []string{"sr", "ciqual", "stfcj", "swiss", "afcd"})
	assert.NotContains(t, across.Tables(), "fndds", "made from sr")
}

// A table's name is what somebody gave it; the crosswalk goes by its format.
func TestATableGoesByAnyName(t *testing.T) {
	lib := maps.Clone(assaytest.Core(t))
	f := row("paris", "2007", map[constituent.ID]float64{"WATER": 90, "CITAC": 4000})
	lib[f.ID] = f
	r := assaytest.Found(t, lib, lemonade)
	a, err := across.Run(context.Background(), r, lib, []across.Asked{{ID: "paris", Format: "ciqual", Edition: "2017"}}, estimate.Ensemble{Seed: 1, N: 11}, []constituent.ID{"CITAC"})
	require.NoError(t, err)
	require.Len(t, a.Tables[0].Taken, 1)
	assert.Equal(t, "paris:2007", a.Tables[0].Taken[0].By.ID.String())
	assert.Equal(t, across.Told, figure(t, a, "CITAC").Voices[0].Standing)
	assert.Equal(t, "2020", a.Tables[0].Judged(), "and not the edition that is loaded")
	assert.Contains(t, across.WhyNot("fndds"), "sr")
	assert.Empty(t, across.WhyNot("ciqual"))
}

// What a table has no food for stands as core has it, and is not its opinion: of the sugars of a glass of
// 5 g of lemon juice and 60 g of apple juice a table that has the lemon alone tells next to nothing.
func TestWhatIsMostlyCoreIsNotSpoken(t *testing.T) {
	a := run(t, "drink: x\nserves: 1\nbuild: [5 g core:lemon-juice, 60 g core:apple-juice]\n", []string{"ciqual", "swiss"}, []constituent.ID{"SUGAR"},
		row("ciqual", "2007", map[constituent.ID]float64{"WATER": 90, "SUGAR": 2}),
		row("swiss", "605", map[constituent.ID]float64{"WATER": 90, "SUGAR": 2}),
	)
	f := figure(t, a, "SUGAR")
	assert.Equal(t, 2, f.Tables)
	assert.Zero(t, f.Speak)
	assert.InDelta(t, 0.1/f.Voices[0].Mean, f.Voices[0].Own, 1e-6, "0.1 g of all")
	assert.False(t, f.Voices[0].Speaks())
}

// White sugar splits in a syrup by its pH. A table whose juice has no acid leaves more of it whole, and
// that is no disagreement about white sugar: of 100 g it has 99.8 as the core table.
func TestWhatAStepTurnsIsNoOpinion(t *testing.T) {
	const text = `
drink: x
serves: 1
components:
  syrup:
    ingredients: [100 g core:lemon-juice, 100 g core:sugar-white]
    steps: [heat: {at: 95 °C, for: 30 min}]
build: [40 g syrup]
`
	sugar := map[constituent.ID]float64{"WATER": 0.2, "SUGAR": 99.8, "SUCS": 99.8, "GLUS": 0, "FRUS": 0}
	juice := map[constituent.ID]float64{"WATER": 96, "SUGAR": 2.2, "SUCS": 0.4, "GLUS": 0.9, "FRUS": 0.9}
	a := run(t, text, []string{"ciqual"}, []constituent.ID{"SUGAR", "SUCS", "GLUS"},
		row("ciqual", "31016", sugar), row("ciqual", "2007", juice),
	)
	sucrose := figure(t, a, "SUCS")
	require.Less(t, sucrose.Core.Mean, 0.7*20, "the core table's syrup splits, or this tries nothing")
	assert.Equal(t, across.Turned, sucrose.Voices[0].Standing)
	assert.Equal(t, across.Turned, figure(t, a, "GLUS").Voices[0].Standing)
	assert.Equal(t, across.Told, figure(t, a, "SUGAR").Voices[0].Standing)
	assert.Less(t, sucrose.Core.Mean, sucrose.Voices[0].Mean)
}

// What tables do not mean alike is told of those that are asked, and such a figure is no disagreement.
func TestUnlikeDefinitionsAreMarked(t *testing.T) {
	a := run(t, lemonade, []string{"ciqual", "stfcj"}, []constituent.ID{"FIBTG", "ENERC", "CITAC"},
		row("ciqual", "2007", map[constituent.ID]float64{"WATER": 90, "FIBTG": 0.1}),
		row("stfcj", "07156", map[constituent.ID]float64{"WATER": 90, "FIBTG": 3}),
	)
	assert.True(t, a.Marked(figure(t, a, "FIBTG")))
	assert.False(t, a.Marked(figure(t, a, "ENERC")), "all are reckoned by one set of factors")
	assert.False(t, a.Marked(figure(t, a, "CITAC")))
	var said []string
	for _, u := range a.Unlike {
		said = append(said, string(u.Constituent.ID)+" "+u.Table)
		assert.NotEmpty(t, u.Source)
		assert.NotContains(t, u.Source, "from memory")
	}
	assert.Equal(t, []string{"ENERC ", "FIBTG ", "FIBTG stfcj"}, said)
	assert.Nil(t, a.Most)
}

// A few milligrams of lactic acid lie further apart by their share than grams of citric acid do, and are
// nothing beside them.
func TestTheMostIsOfWhatMatters(t *testing.T) {
	a := run(t, "drink: x\nserves: 1\nbuild: [50 g core:lemon-juice, 30 g core:milk-whole]\n", []string{"stfcj", "afcd"}, []constituent.ID{"OA", "CITAC", "LACAC"},
		row("stfcj", "07156", map[constituent.ID]float64{"WATER": 90, "OA": 6.5, "CITAC": 6500, "LACAC": 0}),
		row("afcd", "F004726", map[constituent.ID]float64{"WATER": 90, "OA": 4.6, "CITAC": 4600, "LACAC": 0}),
		row("stfcj", "13003", map[constituent.ID]float64{"WATER": 88, "OA": 0.2, "CITAC": 160, "LACAC": 5}),
		row("afcd", "F005634", map[constituent.ID]float64{"WATER": 88, "OA": 0.2, "CITAC": 160, "LACAC": 40}),
	)
	require.NotNil(t, a.Most)
	assert.Equal(t, "core:lemon-juice", a.Most.Food.ID.String())
}
