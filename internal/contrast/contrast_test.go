package contrast_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/contrast"
)

// A drink against itself: nothing, with no interval, whatever it holds and nobody knows.
func TestADrinkIsNoOtherThanItself(t *testing.T) {
	foods := assaytest.Core(t)
	for name, text := range drinks(t) {
		c := compared(t, found(t, foods, text[0], text[1]), found(t, foods, text[0], text[1]))
		for of, d := range differences(c) {
			if of == "sweet" || of == "sour" { // withheld where the figure is
				assert.Zero(t, d.Sign(), "%s: %s", name, of)
				continue
			}
			assert.True(t, d.None(), "%s: %s: %+v", name, of, d)
			assert.Zero(t, d.Summary, "%s: %s", name, of)
		}
		assert.True(t, c.Same(), name)
		assert.Empty(t, c.Changes, name)
	}
}

const glass = `drink: "Slack Water"
serves: 2
components:
  syrup:
    ingredients: [100 g core:sugar-white, 100 g ± 4 g core:lemon-juice]
build:
  - 40 g ± 6 g core:espresso
  - 30 g syrup
  - 80 g core:whey-acid
`

// What B has more than A, A has less than B: to the last bit, and the ends change places.
func TestTheOtherWayRoundIsTheOpposite(t *testing.T) {
	foods := assaytest.Core(t)
	var list [][2]string
	for _, text := range drinks(t) {
		list = append(list, text)
	}
	for i, text := range list[1:] {
		a, b := found(t, foods, list[i][0], list[i][1]), found(t, foods, text[0], text[1])
		opposite(t, compared(t, a, b), compared(t, b, a))
	}
	a, b := found(t, foods, glass, "."), found(t, foods, replaced(t, glass, "30 g syrup", "26 g syrup"), ".")
	opposite(t, compared(t, a, b), compared(t, b, a))
}

func opposite(t *testing.T, ab, ba *contrast.Contrast) {
	t.Helper()
	other := differences(ba)
	for of, d := range differences(ab) {
		o := other[of]
		near := func(x, y float64, what string) {
			if math.IsNaN(x) || math.IsNaN(y) {
				assert.Equal(t, math.IsNaN(x), math.IsNaN(y), "%s: %s", of, what)
				return
			}
			assert.InDelta(t, x, -y, 1e-9*(1+math.Abs(x)), "%s: %s", of, what)
		}
		near(d.Mean, o.Mean, "mean")
		near(d.Low, o.High, "low")
		near(d.High, o.Low, "high")
		near(d.Least, o.Most, "least")
		near(d.Most, o.Least, "most")
		assert.Equal(t, d.Sign(), -o.Sign(), of)
	}
}

// A gram of white sugar more for two: half a gram of it each, with the spread of that gram and of
// the table's value, and none of what else is in the glass.
func TestAGramOfSugarIsAGramOfSugar(t *testing.T) {
	foods := assaytest.Core(t)
	c := texts(t, foods, glass, glass+"  - 1.00 g core:sugar-white\n")
	sugar := assaytest.Assay(t, foods, "drink: Sugar\nserves: 1\nbuild: [100 g core:sugar-white]\n", draws, constituent.Sugar)
	per100g := assaytest.Figure(t, sugar.Per100g, constituent.Sugar)
	f := figure(t, c, constituent.Sugar)
	assert.InDelta(t, per100g.Mean/200, f.Mean, 1e-12)
	const half = 0.005 // of the last digit of 1.00 g
	assert.GreaterOrEqual(t, f.Low, (1-half)*per100g.Low/200)
	assert.LessOrEqual(t, f.High, (1+half)*per100g.High/200)
	assert.Less(t, f.High-f.Low, 0.01, "the glass itself: %g", f.A.High-f.A.Low)
	assert.Greater(t, f.A.High-f.A.Low, 0.3)
	assert.Equal(t, 1, f.Sign())
	require.NotNil(t, f.Mostly)
	assert.Equal(t, "core:sugar-white", f.Mostly.Part.Food.String())
	assert.Equal(t, [2]bool{false, true}, f.Mostly.In)
	for _, id := range []constituent.ID{constituent.Caffeine, constituent.ID("CITAC"), constituent.ID("LACAC")} {
		assert.True(t, figure(t, c, id).None(), "%s comes of what both hold", id)
	}
	assert.Equal(t, []contrast.Change{{Where: "build", What: "core:sugar-white", To: "1 g", Line: true}}, c.Changes)
}

// Only the change shows: the espresso's caffeine is known to a third, and the shot to a seventh, and
// neither stands in the difference that a drop of water makes; the shot itself does.
func TestOnlyTheChangeShows(t *testing.T) {
	foods := assaytest.Core(t)
	wet := texts(t, foods, glass, glass+"  - 2 g core:water-pure\n")
	caffeine := figure(t, wet, constituent.Caffeine)
	assert.Greater(t, caffeine.A.High-caffeine.A.Low, 40.0, "mg: what the file knows of it")
	assert.True(t, caffeine.None())
	ph := liquid(t, wet, contrast.PH)
	require.Empty(t, ph.Why)
	assert.Greater(t, ph.A.High-ph.A.Low, 0.2)
	assert.Less(t, ph.Most-ph.Least, 0.05)
	less := texts(t, foods, glass, replaced(t, glass, "40 g ± 6 g core:espresso", "20 g ± 1 g core:espresso"))
	caffeine = figure(t, less, constituent.Caffeine)
	assert.Equal(t, -1, caffeine.Sign())
	assert.InDelta(t, caffeine.B.Mean-caffeine.A.Mean, caffeine.Mean, 1e-9)
	alone := (caffeine.A.High - caffeine.A.Low) + (caffeine.B.High - caffeine.B.Low)
	assert.Less(t, caffeine.High-caffeine.Low, 0.75*alone, "mg: one espresso, drawn once")
}

// A hand that errs by 6 g does not tell 40 g from 41 g.
func TestAChangeBelowTheHandIsNone(t *testing.T) {
	foods := assaytest.Core(t)
	c := texts(t, foods, glass, replaced(t, glass, "40 g ± 6 g core:espresso", "41 g ± 6 g core:espresso"))
	assert.Positive(t, figure(t, c, constituent.Caffeine).Mean)
	assert.Zero(t, figure(t, c, constituent.Caffeine).Sign())
	assert.Zero(t, c.Mass.Sign())
}

// What nobody knows goes out where both hold as much of it, and stands at its worst where they do
// not: lactic acid of acid whey is bounded and not known.
func TestTheUnknownGoesOutWhereItIsTheSame(t *testing.T) {
	foods := assaytest.Core(t)
	const lactic = constituent.ID("LACAC")
	same := figure(t, texts(t, foods, glass, replaced(t, glass, "30 g syrup", "20 g syrup")), lactic)
	assert.True(t, same.A.Partial)
	for _, f := range same.Open {
		assert.NotEqual(t, "core:whey-acid", f.ID.String())
	}
	more := figure(t, texts(t, foods, glass, replaced(t, glass, "80 g core:whey-acid", "90 g core:whey-acid")), lactic)
	assert.Zero(t, more.Sign())
	assert.InDelta(t, 0.125*more.A.WithBounds, more.Most, 0.1*0.125*more.A.WithBounds, "ten grams in eighty more of what may be")
	gone := figure(t, texts(t, foods, glass, replaced(t, glass, "80 g core:whey-acid", "80 g core:water-pure")), lactic)
	assert.LessOrEqual(t, gone.Least, -0.9*gone.A.WithBounds)
}

// Where nothing bounds what one of them does not know, nobody knows the difference.
func TestNobodyKnowsWhereNothingBounds(t *testing.T) {
	foods := assaytest.Core(t)
	const mystery = glass + "  - 10 g own:mystery\nfoods:\n  mystery: {name: Mystery, per: 100 g, values: {sugars: 10 g}, source: invented}\n"
	for what, b := range map[string]string{"in one alone": glass, "more of it": replaced(t, mystery, "10 g own:mystery", "11 g own:mystery"), "stated otherwise": replaced(t, mystery, "sugars: 10 g", "sugars: 9 g")} {
		f := figure(t, texts(t, foods, mystery, b), constituent.Caffeine)
		assert.False(t, f.Bounded(), what)
		assert.Zero(t, f.Sign(), what)
		assert.False(t, f.None(), what)
	}
	assert.True(t, figure(t, texts(t, foods, mystery, replaced(t, mystery, "80 g core:whey", "90 g core:whey")), constituent.Caffeine).None(), "as much of it in both")
}

func TestStreamsFollowPotFoodAndAmount(t *testing.T) {
	type named = amount.Streams
	for _, c := range []struct {
		what   string
		a, b   amount.Written
		ofA, B named
	}{
		{"the same", amount.Written{"build/x": "1 g"}, amount.Written{"build/x": "1 g"}, named{}, named{}},
		{"in one alone", amount.Written{"build/x": "1 g"}, amount.Written{"build/y": "1 g"}, named{}, named{}},
		{"another amount", amount.Written{"build/x": "1 g"}, amount.Written{"build/x": "2 g"}, named{"build/x": "build/x 1 g"}, named{"build/x": "build/x 2 g"}},
		{
			"one more of the food before it",
			amount.Written{"build/x": "5 g"}, amount.Written{"build/x": "2 g", "build/x~2": "5 g"},
			named{"build/x": "build/x 5 g"}, named{"build/x": "build/x 2 g", "build/x~2": "build/x 5 g"},
		},
		{
			"twice the same",
			amount.Written{"build/x": "5 g", "build/x~2": "5 g"}, amount.Written{"build/x": "5 g"},
			named{"build/x": "build/x 5 g", "build/x~2": "build/x 5 g 2"}, named{"build/x": "build/x 5 g"},
		},
		{
			"a step of the kind before it",
			amount.Written{"pot/add/x": "5 g"}, amount.Written{"pot/add/y": "1 g", "pot/add~2/x": "5 g"},
			named{"pot/add/x": "pot/add/x 5 g"}, named{"pot/add~2/x": "pot/add/x 5 g"},
		},
	} {
		ofA, ofB := contrast.Streams(c.a, c.b)
		assert.Equal(t, c.ofA, ofA, c.what)
		assert.Equal(t, c.B, ofB, c.what)
		back, forth := contrast.Streams(c.b, c.a)
		assert.Equal(t, ofA, forth, c.what)
		assert.Equal(t, ofB, back, c.what)
	}
}

// A line that is inserted changes no draw of the others, not even of the same food.
func TestAnInsertedLineLeavesTheOthers(t *testing.T) {
	foods := assaytest.Core(t)
	const wide = "drink: Wide\nserves: 1\nbuild:\n  - 50 g ± 20 g core:honey\n  - 100 g core:water-pure\n"
	c := texts(t, foods, wide, replaced(t, wide, "build:\n", "build:\n  - 1.00 g core:honey\n"))
	assert.InDelta(t, 1, c.Mass.Mean, 1e-9)
	assert.Less(t, c.Mass.High-c.Mass.Low, 0.02)
	assert.Greater(t, c.Mass.A.High-c.Mass.A.Low, 30.0)
}

func TestChangesOfAFile(t *testing.T) {
	foods := assaytest.Core(t)
	const before = `drink: Was
serves: 1
at: 6 °C
foods:
  oat: {name: Oat, per: 100 g, values: {sugars: 3.1 g}, source: invented}
components:
  syrup:
    ingredients: [90 g core:sugar-white, 100 g core:water-pure]
    steps:
      - reduce: {to: 170 g}
      - strain: {collect: 160 g, through: cloth}
    keeps: 4 days at 4 °C
  old: {ingredients: [10 g core:honey, 5 g core:water-pure]}
build: [30 g syrup, 10 g old, 40 g own:oat]
`
	after := before
	for _, x := range [][2]string{
		{"90 g core:sugar-white, 100 g core:water-pure", "100 g core:water-pure, 80 g core:sugar-white"},
		{"through: cloth", "through: paper"}, {"4 days", "5 days"}, {"sugars: 3.1 g", "sugars: 2.9 g ± 0.1 g"},
		{"  old: {ingredients: [10 g core:honey, 5 g core:water-pure]}\n", "  new: {ingredients: [8 g core:honey], steps: [treat: flamed]}\n"},
		{"10 g old", "10 g new"}, {"at: 6 °C", "at: 8 °C"},
	} {
		after = replaced(t, after, x[0], x[1])
	}
	c := texts(t, foods, before, after)
	assert.Equal(t, []contrast.Change{
		{Where: "the drink", What: "at", From: "6 °C", To: "8 °C"},
		{Where: "own:oat", What: "sugars", From: "3.1 g", To: "2.9 g ± 0.1 g"},
		{Where: "syrup", What: "core:sugar-white", From: "90 g", To: "80 g", Line: true},
		{Where: "syrup", What: "strain", From: "collect 160 g, cloth", To: "collect 160 g, paper"},
		{Where: "syrup", What: "keeps", From: "4 days at 4 °C", To: "5 days at 4 °C"},
		{Where: "old", From: "10 g core:honey; 5 g core:water-pure"},
		{Where: "build", What: "old", From: "10 g", Line: true},
		{Where: "build", What: "new", To: "10 g", Line: true},
		{Where: "new", To: "8 g core:honey; treat: flamed"},
	}, c.Changes)
}

// What in no draw is as much as a judge notices is smaller; what may be as much, a judge may notice.
// The shares are those of data/taste_differences.csv.
func TestWhatAJudgeNotices(t *testing.T) {
	foods := assaytest.Core(t)
	const sweet = "drink: Sweet\nserves: 1\nbuild: [100 g core:water-pure, 10 g core:sugar-white, 1.00 g core:citric-acid]\n"
	little := texts(t, foods, sweet, replaced(t, sweet, "10 g core:sugar", "11 g core:sugar"))
	assert.Equal(t, contrast.Smaller, little.Sweet.Notice, "a tenth more")
	assert.Equal(t, 1, little.Sweet.Index.Sign())
	much := texts(t, foods, sweet, replaced(t, sweet, "10 g core:sugar", "14 g core:sugar"))
	assert.Equal(t, contrast.May, much.Sweet.Notice, "two fifths more")
	sour := texts(t, foods, sweet, replaced(t, sweet, "1.00 g core:citric", "1.05 g core:citric"))
	assert.Equal(t, contrast.Smaller, sour.Sour.Notice, "a twentieth more")
	sourer := texts(t, foods, sweet, replaced(t, sweet, "1.00 g core:citric", "1.20 g core:citric"))
	assert.Equal(t, contrast.Surely, sourer.Sour.Notice, "a fifth more, of which 17.96 % is the most")
	assert.Equal(t, -1, liquid(t, sourer, contrast.PH).Sign())
	none := texts(t, foods, "drink: None\nserves: 1\nbuild: [100 g core:water-pure]\n", sweet)
	assert.Equal(t, contrast.Untold, none.Sweet.Notice, "a share of nothing is none")
}
