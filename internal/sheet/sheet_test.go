package sheet_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/evidence"
	"sipsum/internal/fail"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// tables are two, of which the drinks of these tests use one at most.
var tables = []source.Table{{ID: "own"}, {ID: "elsewhere"}}

// uncited knows no work.
func uncited(string, string) (source.Work, bool) { return source.Work{}, false }

// calculated runs a drink of foods of its own.
func calculated(t *testing.T, text string, o assaytest.Options) *assay.Assay {
	t.Helper()
	d, faults := drink.Parse("test", []byte(text), nil)
	sheet.Check(d, faults)
	o.Draws, o.Seed, o.Figures = 50, 1, evidence.Constituents(d)
	a, err := assaytest.Run(context.Background(), d, faults, shelf{}, o)
	require.NoError(t, err)
	return a
}

func built(t *testing.T, text string, rules ...string) *sheet.Sheet {
	t.Helper()
	s, err := sheet.Build("test", calculated(t, text, assaytest.Options{}), tables, uncited, rules)
	require.NoError(t, err)
	return s
}

const plain = `
drink: "Plain"
serves: 1
foods:
  wet: {name: "Wet", per: 100 g, values: {WATER: 100 g}, source: "invented", allergens: []}
  sweet: {name: "Sweet", per: 100 g, values: {WATER: 0 g, SUCS: 100 g}, source: "invented", allergens: [almond]}
build: [50 g own:wet, 10 g own:sweet]
`

// The rules are those asked for, else the drink's own, else the usual ones.
func TestRulesOfASheet(t *testing.T) {
	assert.Equal(t, []string{"eu"}, built(t, plain).Rules)
	assert.Equal(t, []string{"us"}, built(t, plain+"rules: [us]\n").Rules)
	assert.Equal(t, []string{"us", "eu"}, built(t, plain+"rules: [eu]\n", "us", "eu").Rules)
	_, err := sheet.Build("test", calculated(t, plain, assaytest.Options{}), nil, uncited, []string{"moon", "eu", "mars"})
	assert.Equal(t, fail.Wrong, fail.ExitCode(err))
	assert.ErrorContains(t, err, `no card rules "moon", "mars"`, "all at once")
	assert.Equal(t, []string{"us", "eu"}, built(t, plain, "us", "eu", "us").Rules, "none twice")
}

// Cards, workings and declarations are made when asked for, each set of rules in its
// place, and once: whoever asks again gets the same ones.
func TestCardsAreMadeWhenAskedFor(t *testing.T) {
	a := calculated(t, plain, assaytest.Options{})
	s, err := sheet.Build("test", a, tables, uncited, []string{"us", "eu"})
	require.NoError(t, err)
	a.Drink.Name = "Asked Later" // what is made now is not what was there when it was built
	a.Mass.Mean = 120
	cards, workings, declared := s.Cards(), s.Workings(), s.Allergens()
	require.Len(t, cards, 2)
	require.Len(t, workings, 2)
	require.Len(t, declared, 2)
	for i, rules := range []string{"us", "eu"} {
		assert.Equal(t, rules, cards[i].Rules)
		assert.Equal(t, rules, declared[i].Rules)
		assert.Equal(t, cards[i].Rows[0].Key, workings[i][0].Row)
		assert.InDelta(t, 120, cards[i].ServingG, 0)
	}
	assert.Same(t, &cards[0], &s.Cards()[0])
	assert.Same(t, &declared[0], &s.Allergens()[0])
}

// Only tables that a food of the drink comes from are named.
func TestTablesOfASheet(t *testing.T) {
	assert.Equal(t, []source.Table{{ID: "own"}}, built(t, plain).Tables)
}

// A food of one's own without a list of allergens has been assessed by nobody.
func TestNotAssessed(t *testing.T) {
	assert.False(t, built(t, plain).NotAssessed())
	assert.True(t, built(t, `
drink: "Unread"
serves: 1
foods:
  pack: {name: "A pack", per: 100 g, values: {WATER: 100 g}, source: "invented"}
build: [50 g own:pack]
`).NotAssessed())
}
