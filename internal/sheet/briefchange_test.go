package sheet_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// proposed gives the brief of a drink of the core table with its claims judged and its change looked
// for, as the command does, and a plan to run it again.
func proposed(t *testing.T, text string) (*sheet.Brief, *assay.Plan) {
	t.Helper()
	text = "drink: x\nserves: 1\n" + text
	const draws = 200
	r := assaytest.Found(t, assaytest.Core(t), text)
	plan := func(n int) *assay.Plan { return assay.Prepare(r, estimate.Ensemble{Seed: 1, N: n}) }
	drawn := plan(draws + 1)
	d, _ := drink.Parse("test", []byte(text), nil)
	a, err := drawn.Run(context.Background(), nil, assay.Want{Figures: evidence.Constituents(d), Intervals: true, Chemistry: true, Draws: true, Next: true})
	require.NoError(t, err)
	works := func(_, id string) (source.Work, bool) { return source.Work{ID: id, Citation: "a paper"}, true }
	s, err := sheet.Build("sipsum test", a, nil, works, nil)
	require.NoError(t, err)
	require.NoError(t, sheet.Judge(context.Background(), s, works, nil, nil))
	require.NoError(t, sheet.Propose(context.Background(), s, sheet.Again{Central: plan(1), Drawn: drawn}))
	return sheet.BriefOf(s), plan(1)
}

// with runs a drink with the amount that a change proposes.
func with(t *testing.T, plan *assay.Plan, c *sheet.Change) (before, after *assay.Assay) {
	t.Helper()
	run := func(other amount.Amounts) *assay.Assay {
		a, err := plan.Run(context.Background(), other, assay.Want{Chemistry: true, Draws: true})
		require.NoError(t, err)
		return a
	}
	before = run(nil)
	line := plan.Written()[c.Path]
	assert.Equal(t, line.Number, c.From)
	line.Number = c.To
	return before, run(amount.Amounts{c.Path: line})
}

// lemonade is sour and sweet: 10 g of sucrose and 0.5 g of citric acid in 110.5 g.
const lemonade = "scale: 0.1 g\nbuild: [100 g core:water-pure, 10 g core:sucrose, 0.5 g core:citric-acid, 10 g core:lemon-juice]\n"

// A claim that fails is not to be said, and mended by the smallest change of one amount: no more than
// 8 g of 10.25 g of sugars want at least 2.2 g less sucrose, and the lemon brings none of it.
func TestAFailingClaimIsMended(t *testing.T) {
	b, plan := proposed(t, lemonade+"claims: [{say: \"Hardly sweet.\", check: serving(SUGAR) < 8 g}]\n")
	require.NotNil(t, b.Dont)
	assert.Equal(t, []string{sheet.DontClaim, "Hardly sweet", "it holds in 0 of 100"}, []string{b.Dont.Kind, b.Dont.Sentence, b.Dont.Why})
	require.NotNil(t, b.Change)
	assert.Equal(t, sheet.ChangeClaim, b.Change.Kind)
	assert.Equal(t, "sucrose", b.Change.Of)
	before, after := with(t, plan, b.Change)
	assert.Greater(t, before.Serving.Central(constituent.Sugar), 8.0)
	assert.Less(t, after.Serving.Central(constituent.Sugar), 8.0)
	assert.Greater(t, b.Change.To, 7.5, "and no more than that")
	assert.Contains(t, b.Change.What, "then “Hardly sweet” holds in ")
}

// A claim that something unknown decides is not to be said either; no amount mends it.
func TestAnUnknownClaimIsNotToBeSaid(t *testing.T) {
	b, _ := proposed(t, "build: [100 g core:whey-acid, 10 g core:sucrose]\nclaims: [{say: \"Little lactic acid\", check: serving(LACAC) < 500 mg}]\n")
	require.NotNil(t, b.Dont)
	assert.Equal(t, sheet.DontClaim, b.Dont.Kind)
	assert.Contains(t, b.Dont.Why, "unknown: holds in 0 to 100 of 100; nobody knows lactic acid of ")
	if b.Change != nil {
		assert.NotEqual(t, sheet.ChangeClaim, b.Change.Kind)
	}
}

// A glass that overflows is mended first.
func TestAGlassThatOverflowsIsMended(t *testing.T) {
	b, plan := proposed(t, "glass: 100 ml\n"+lemonade)
	require.NotNil(t, b.Change)
	assert.Equal(t, []string{sheet.ChangeGlass, "it fits the glass of 100 ml"}, []string{b.Change.Kind, b.Change.What})
	before, after := with(t, plan, b.Change)
	assert.Greater(t, before.Volume.Mean, 100.0)
	assert.LessOrEqual(t, after.Volume.Mean, 100.0)
	assert.Greater(t, after.Volume.Mean, 99.0, "and no more than that")
}

// Of a drink with nothing wrong the least that a judge notices is told. Of water with sucrose alone
// that is 20.5 % of it (npj Sci Food 2022, 6:33): 10 g → 12.05 g, more by what the water is diluted.
func TestTheLeastThatAJudgeNotices(t *testing.T) {
	b, plan := proposed(t, "scale: 0.1 g\nbuild: [80 g core:water-pure, 10 g core:water-tap, 10 g core:sucrose]\n")
	require.NotNil(t, b.Change)
	assert.Equal(t, []string{sheet.ChangeNotice, "sucrose"}, []string{b.Change.Kind, b.Change.Of})
	assert.InDelta(t, 12.25, b.Change.To, 0.25)
	_, after := with(t, plan, b.Change)
	assert.InDelta(t, b.Change.To, after.Serving.Central(constituent.Sugar), 1e-9)
	assert.Contains(t, b.Change.What, "about the least a judge notices: sweeter by 2")
	none, _ := proposed(t, "build: [90 g core:water-pure, 0.2 g core:sucrose]\n")
	assert.Nil(t, none.Change, "nobody tastes that")
}

// A pot's name that suggests who does not lead is warned of, with who does.
func TestAPotsNameThatFools(t *testing.T) {
	b, _ := proposed(t, `
components:
  cherry syrup: {ingredients: [20 g core:sour-cherry-juice, 100 g core:sucrose, 3 g core:malic-acid]}
build: [60 g cherry syrup, 100 g core:water-pure]
`)
	require.NotNil(t, b.Dont)
	assert.Equal(t, []string{sheet.DontName, "Sour cherry juice brings the organic acids", "most are added as malic acid"}, []string{b.Dont.Kind, b.Dont.Sentence, b.Dont.Why})
}

// Who leads at central values and not in every draw is warned of; who leads in all of them is not.
func TestALeadThatTheIntervalDoesNotBear(t *testing.T) {
	b, _ := proposed(t, "build: [15 g core:passion-fruit-juice-purple, 18 g core:espresso, 70 g core:whey-acid]\n")
	require.NotNil(t, b.Dont)
	assert.Equal(t, sheet.DontMost, b.Dont.Kind)
	assert.Less(t, b.Dont.Least, 0.6)
	assert.Regexp(t, `^it may be as little as \d+ %$`, b.Dont.Why)
	clear, _ := proposed(t, "build: [60 g core:sucrose, 100 g core:water-pure, 1 g core:citric-acid]\n")
	assert.Nil(t, clear.Dont)
}
