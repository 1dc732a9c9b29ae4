package sheet_test

import (
	"context"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claims"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
	"sipsum/internal/fail"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// proposed gives the brief of a drink of the core table with its claims judged and its change looked
// for, as the command does, and a plan to run it again.
func proposed(t *testing.T, text string) (*sheet.Brief, *assay.Plan) {
	t.Helper()
	return held(t, text, "")
}

// held does so of a drink that is held to house rules; empty: to none.
func held(t *testing.T, text, rules string) (*sheet.Brief, *assay.Plan) {
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
	if rules != "" {
		h, faults := drink.ParseHouseRules("rules", []byte(rules))
		require.NoError(t, faults.Err(fail.Wrong))
		require.NoError(t, sheet.JudgeHouse(context.Background(), s, h, works, nil))
	}
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
	assert.Equal(t, []string{sheet.ChangeGlass, "it fits the glass of 100 ml; a serving 14 % smaller"}, []string{b.Change.Kind, b.Change.What})
	before, after := with(t, plan, b.Change)
	assert.Greater(t, before.Volume.Mean, 100.0)
	assert.LessOrEqual(t, after.Volume.Mean, 100.0)
	assert.Greater(t, after.Volume.Mean, 99.0, "and no more than that")
}

// Where nothing is to be mended nothing is proposed, however small the change that a judge notices.
func TestNothingIsProposedForNothing(t *testing.T) {
	for _, text := range []string{lemonade, lemonade + "claims: [{say: \"Sweet.\", check: serving(SUGAR) > 8 g}]\n", "glass: 200 ml\n" + lemonade} {
		b, _ := proposed(t, text)
		assert.Nil(t, b.Change, text)
	}
}

// A change names what it mends, keeps what holds where another line can do it as well, and else says
// what it breaks: of 10.25 g of sugars and 1.01 g of citric acid, 0.55 g of it weighed in, a fifth less
// sucrose breaks the claim on sugars, and more citric acid none.
func TestAChangeKeepsWhatHolds(t *testing.T) {
	ratio := "{say: \"Ten of sugar to one of acid, no more.\", check: \"ratio(SUGAR, CITAC) < 9\"}"
	alone, _ := proposed(t, lemonade+"claims: ["+ratio+"]\n")
	require.NotNil(t, alone.Change)
	assert.Equal(t, "sucrose", alone.Change.Of, "the smallest")
	kept, _ := proposed(t, lemonade+"claims: [{say: \"Sweet.\", check: serving(SUGAR) > 10 g}, "+ratio+"]\n")
	require.NotNil(t, kept.Change)
	assert.NotEqual(t, "sucrose", kept.Change.Of)
	assert.Empty(t, kept.Change.Breaks)
	assert.Contains(t, kept.Change.What, "then “Ten of sugar to one of acid, no more” holds in ")
	both, _ := proposed(t, lemonade+"claims: [{say: \"Sweet.\", check: serving(SUGAR) > 10 g}, {say: \"Hardly sweet.\", check: serving(SUGAR) < 8 g}]\n")
	require.NotNil(t, both.Change)
	assert.Equal(t, []string{"“Sweet”"}, both.Change.Breaks)
	assert.Contains(t, both.Change.What, "; but it breaks “Sweet”")
	assert.Contains(t, both.Change.Short, "; breaks “Sweet”")
}

// A house rule that fails is mended as a claim is, in as many draws as it takes to pass, and one that is
// kept stays so: of 117 ml at the most 100.
func TestAHouseRuleIsMended(t *testing.T) {
	b, _ := held(t, lemonade, "rules: invented\nlimits: [{say: \"Hardly sweet\", check: serving(SUGAR) < 8 g}]\nvolume: at least 80 ml\n")
	require.NotNil(t, b.Change)
	assert.Equal(t, []string{sheet.ChangeRule, "“Hardly sweet”", "sucrose"}, []string{b.Change.Kind, b.Change.Mends, b.Change.Of})
	assert.Regexp(t, `^then the rule “Hardly sweet” passes, in (9[5-9]|100) of 100$`, b.Change.What)
	kept, plan := held(t, lemonade+"claims: [{say: \"Sweet.\", check: per100ml(SUGAR) > 8 g}]\n", "rules: invented\nvolume: 80 to 100 ml\n")
	require.NotNil(t, kept.Change)
	assert.Equal(t, []string{sheet.ChangeRule, "water"}, []string{kept.Change.Kind, kept.Change.Of})
	_, after := with(t, plan, kept.Change)
	assert.LessOrEqual(t, after.Volume.High, 100.1)
	assert.Empty(t, kept.Change.Breaks)
}

// A serving, and a coffee, that is smaller by more than a tenth is said to be.
func TestAChangeSaysWhatItShrinks(t *testing.T) {
	b, plan := proposed(t, "build: [40 g core:espresso, 60 g core:water-pure]\nclaims: [{say: \"Mild.\", check: serving(CAFFN) < 150 mg}]\n")
	require.NotNil(t, b.Change)
	require.Len(t, b.Change.Shrinks, 2)
	before, after := with(t, plan, b.Change)
	assert.InDelta(t, 1-after.Mass.Mean/before.Mass.Mean, b.Change.Shrinks[0].By, 1e-3)
	assert.InDelta(t, 1-b.Change.To/b.Change.From, b.Change.Shrinks[1].By, 1e-9)
	assert.Contains(t, b.Change.What, " % less coffee")
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

// Who brings most at central values and half in too few draws is warned of, in the words of the claim that
// says so; who likely brings half is not, however little it may be in the worst of draws.
func TestALeadThatTheDrawsDoNotBear(t *testing.T) {
	for build, want := range map[string]string{
		"build: [7 g core:passion-fruit-juice-purple, 36 g core:espresso, 40 g core:pear-juice]\n": "Passion fruit juice brings most of the citric acid",
		"build: [15 g core:passion-fruit-juice-purple, 18 g core:espresso, 70 g core:whey-acid]\n": "Espresso brings most of the chlorogenic acids",
		"build: [20 g core:lemon-juice, 30 g core:pear-juice]\n":                                   "", // at least 38 % of the malic acid, by no means surely most
		"build: [60 g core:sucrose, 100 g core:water-pure, 1 g core:citric-acid]\n":                "",
	} {
		b, _ := proposed(t, build)
		if want == "" {
			assert.Nil(t, b.Dont, build)
			continue
		}
		require.NotNil(t, b.Dont, build)
		assert.Equal(t, []string{sheet.DontMost, want}, []string{b.Dont.Kind, b.Dont.Sentence})
		assert.False(t, b.Dont.Least >= 0.5, build)
		claimed, _ := proposed(t, build+fmt.Sprintf("claims: [{say: \"It does\", check: 'share(%s, \"%s\") >= 50 %%'}]\n", b.Dont.Constituent.ID, b.Dont.Food))
		if math.IsNaN(b.Dont.P) {
			assert.Equal(t, "nobody knows chlorogenic acids of passion fruit juice", b.Dont.Short)
			assert.Equal(t, claimed.Dont.Short, b.Dont.Short)
			continue
		}
		assert.Less(t, b.Dont.P, 0.75)
		assert.Equal(t, fmt.Sprintf("it holds in %d of 100", claims.OfHundred(b.Dont.P)), b.Dont.Why)
	}
}
