package sheet_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// brief gives the brief of a drink of the core table, with a work behind every figure.
func brief(t *testing.T, text string) *sheet.Brief {
	t.Helper()
	figures := []constituent.ID{constituent.Sugar, constituent.OrganicAcids, "CITAC", constituent.Caffeine}
	a := assaytest.Asked(t, assaytest.Core(t), "drink: x\nserves: 1\n"+text, assaytest.Options{Draws: 60, Want: assay.Want{Figures: figures, Next: true}})
	s, err := sheet.Build("sipsum test", a, nil, func(_, id string) (source.Work, bool) { return source.Work{ID: id, Citation: "a paper"}, true }, nil)
	require.NoError(t, err)
	return sheet.BriefOf(s)
}

// A drink is set against what compare-with names, else against its one coffee, a part of the build
// or an ingredient of one; of two nobody knows which is meant.
func TestWhatABriefIsSetAgainst(t *testing.T) {
	const shot = "components:\n  shot: {ingredients: [40 g core:espresso]}\n  milk: {ingredients: [90 g core:milk-whole, 20 g core:filter-coffee]}\n"
	for build, want := range map[string]string{
		"compare-with: milk\n" + shot + "build: [30 g shot, 90 g milk]\n": "milk",
		shot + "build: [30 g shot, 60 g core:milk-whole]\n":               "shot",
		shot + "build: [30 g shot, 90 g milk]\n":                          "shot", // the milk is no coffee
		shot + "build: [90 g milk]\n":                                     "filter coffee",
		"build: [30 g core:espresso, 100 g core:water-pure]\n":            "espresso",
		"build: [30 g core:espresso, 100 g core:filter-coffee]\n":         "",
		"build: [30 g core:black-tea, 100 g core:milk-whole]\n":           "",
		"components:\n  brew:\n    ingredients: [18 g core:coffee-roasted-arabica, 300 g core:water-brew]\n    steps:\n      - brew: {out: 260 g, strength: 1.3 %}\nbuild: [100 g brew, 20 g core:milk-whole]\n": "brew",
	} {
		assert.Equal(t, want, brief(t, build).Against, build)
	}
}

// The line of a reading goes where the file takes it: to the readings of a component that has some,
// else below the component; that of the drink below finish.
func TestTheLineOfTheNextReading(t *testing.T) {
	const syrup = "components:\n  syrup:\n    ingredients: [100 g ± 20 g core:lemon-juice, 100 g ± 20 g core:sugar-white, 40 g ± 20 g core:water-pure]\n"
	n := brief(t, syrup+"build: [20 g syrup, 150 g core:espresso]\n").Next
	require.NotNil(t, n)
	assert.Equal(t, "syrup", n.Of)
	assert.Equal(t, "measured: {"+n.Reading+": …"+map[string]string{"brix": "", "ta": " %", "density": " g/ml"}[n.Reading]+"}", n.Line)
	assert.Equal(t, "syrup", n.Under)
	assert.False(t, n.Adds)
	n = brief(t, syrup+"    measured: {mass: 240 g}\nbuild: [20 g syrup, 150 g core:espresso]\n").Next
	require.NotNil(t, n)
	assert.True(t, n.Adds)
	assert.NotContains(t, n.Line, "measured")
	n = brief(t, "build: [150 g core:milk-whole, 30 g core:lemon-juice, 20 g core:milk-powder-skim]\n").Next
	require.NotNil(t, n)
	assert.Equal(t, "ph", n.Reading, "withheld without it")
	assert.Equal(t, "- measured: {ph: …}", n.Line)
	assert.Equal(t, "finish", n.Under)
}

// Foods that share the beginning of their names are told apart by what follows.
func TestWordsOfIngredients(t *testing.T) {
	b := brief(t, "build: [20 g core:sugar-white, 20 g core:sugar-brown, 60 g core:lemon-juice, 1 g core:citric-acid]\n")
	words := map[string][]string{}
	for _, x := range b.Senses {
		for _, f := range x.Figures {
			for _, i := range f.By {
				words[f.Key] = append(words[f.Key], i.Word)
			}
		}
	}
	assert.Equal(t, []string{"white sugar", "brown sugar", "lemon juice"}, words["SUGAR"])
	assert.Equal(t, "lemon juice", words["CITAC"][0])
	assert.Equal(t, "pure citric acid", words["CITAC"][1])
}

// A guest is told what any of the drink's rules wants declared, as on the card: celery and barley
// are no classes in the us, pine nuts are none in the eu.
func TestABriefHoldsTheAllergensOfAllRules(t *testing.T) {
	const build = "build: [10 g core:celery, 5 g core:pine-nut, 30 g core:milk-whole]\n"
	for _, rules := range []string{"[us, eu]", "[eu, us]"} {
		g := brief(t, "rules: "+rules+"\n"+build).Guest
		assert.ElementsMatch(t, []string{"Milk", "Pine nuts", "Celery"}, g.Contains, rules)
		assert.Len(t, g.Rules, 2)
	}
	assert.NotContains(t, brief(t, "rules: [us]\n"+build).Guest.Contains, "Celery")
}

// What is only poured into another component is held to its days and cold too.
func TestABriefMindsWhatIsKeptInsideAnother(t *testing.T) {
	const drink = "components:\n  inner: {ingredients: [50 g core:sugar-white, 50 g core:apple-juice], keeps: %s}\n  outer: {ingredients: [40 g inner, 60 g core:water-pure]}\nbuild: [60 g outer]\n"
	for keeps, says := range map[string]string{
		"60 days at 20 °C": "inner: 60 days are too long and 20 °C is too warm unless its own pH and water activity allow it (7 days at 5 °C or colder)",
		"4 days at 4 °C":   "",
	} {
		b := brief(t, fmt.Sprintf(drink, keeps))
		if says == "" {
			assert.Empty(t, b.Mind)
			continue
		}
		assert.Contains(t, b.Mind, says)
	}
}

// What hangs on a reading of the drink that contradicts its recipe is not said of it, and neither is
// how it stands to its coffee; with a reading that agrees both are.
func TestABriefSaysNothingThatHangsOnAContradiction(t *testing.T) {
	const build = "compare-with: shot\ncomponents:\n  shot: {ingredients: [36 g core:espresso]}\nbuild: [36 g shot, 40 g core:passion-fruit-juice-purple, 1 g core:citric-acid]\n"
	acids := func(b *sheet.Brief) (list []string) {
		for _, s := range b.Say {
			if s.Constituent.Parent == constituent.OrganicAcids || s.Constituent.ID == constituent.OrganicAcids {
				list = append(list, s.Text)
			}
		}
		return list
	}
	assert.NotEmpty(t, acids(brief(t, build)))
	assert.Empty(t, acids(brief(t, build+"finish: [measured: {ta: 0.2 g/l}]\n")))
}

// What a reading of the drink says against its recipe it does not say of the coffee alone: that has
// what it has without the reading, in every draw.
func TestAReadingOfTheDrinkLeavesTheCoffeeAlone(t *testing.T) {
	const build = "drink: x\nserves: 1\ncompare-with: shot\ncomponents:\n  shot: {ingredients: [40 g core:espresso]}\nbuild: [36 g shot, 40 g core:passion-fruit-juice-purple, 1 g core:citric-acid]\n"
	alone := func(more string) *assay.Component {
		return assaytest.Asked(t, assaytest.Core(t), build+more, assaytest.Options{Draws: 60, Want: assay.Want{Figures: []constituent.ID{constituent.OrganicAcids, "CITAC"}, Intervals: true, Chemistry: true}}).Alone
	}
	want, is := alone(""), alone("finish: [measured: {ta: 0.2 g/l}]\n")
	for _, id := range []constituent.ID{constituent.OrganicAcids, "CITAC"} {
		w, _ := want.Constituents.Find(id)
		f, ok := is.Constituents.Find(id)
		require.True(t, ok)
		assert.InDelta(t, w.Low, f.Low, 1e-9, id)
		assert.InDelta(t, w.Mean, f.Mean, 1e-9, id)
	}
	assert.Equal(t, want.Chemistry.PHMeter.Mean, is.Chemistry.PHMeter.Mean)
}

// A reading that nobody has to decide about reaches part of the way to its recipe, and no line says that
// anything spans both; one that somebody has to decide about says so.
func TestALineSaysHowFarAContradictionReaches(t *testing.T) {
	for reading, want := range map[string]string{"ph: 5.5": "reaches part of the way", "ta: 0.5 g/l": "spans both"} {
		a := assaytest.Asked(t, assaytest.Core(t), "drink: \"Sour Glass\"\nserves: 1\ncomponents:\n  syrup: {ingredients: [150 g core:passion-fruit-juice-purple, 90 g core:sugar-white, 1 g core:citric-acid], measured: {"+reading+"}}\nbuild: [36 g core:espresso, 40 g syrup]\n", assaytest.Options{Draws: 400, Want: assay.Want{Figures: []constituent.ID{constituent.OrganicAcids}}})
		s, err := sheet.Build("sipsum test", a, nil, func(_, id string) (source.Work, bool) { return source.Work{ID: id, Citation: "a paper"}, true }, nil)
		require.NoError(t, err)
		lines := sheet.Contradictions(s)
		require.Len(t, lines, 1, reading)
		assert.Contains(t, lines[0], want, reading)
	}
}

// A pot of kilograms is told in grams, with no power of ten.
func TestAContradictionIsToldWithoutAPowerOfTen(t *testing.T) {
	a := assaytest.Asked(t, assaytest.Core(t), "drink: \"Large Pot\"\nserves: 20\ncomponents:\n  syrup: {ingredients: [1 kg core:sugar-white, 1 kg core:water-pure], measured: {mass: 5200 g}}\nbuild: [400 g syrup, 720 g core:espresso]\n", assaytest.Options{Draws: 400})
	s, err := sheet.Build("sipsum test", a, nil, func(_, id string) (source.Work, bool) { return source.Work{ID: id, Citation: "a paper"}, true }, nil)
	require.NoError(t, err)
	lines := sheet.Contradictions(s)
	require.Len(t, lines, 1)
	assert.Contains(t, lines[0], "read 5200 · expected 2000 · used 3460 g")
}

// Milk that as much lemon juice sours curdles (Fox and McSweeney 1998: at pH 4.6), and a coffee with
// milk does not (common practice, no source); where protein leaves the pH open the first is said all
// the same.
func TestABriefMindsMilkThatMayCurdle(t *testing.T) {
	sour := brief(t, "build: [60 g core:milk-whole, 60 g core:lemon-juice]\n").Mind
	require.Len(t, sour, 1)
	assert.Contains(t, sour[0], "may curdle: its recipe makes about pH 2")
	assert.Empty(t, brief(t, "at: 60 °C\nbuild: [150 g core:milk-whole, 36 g core:espresso]\n").Mind)
	assert.Empty(t, brief(t, "build: [150 g core:milk-whole, 60 g core:water-pure]\n").Mind)
}
