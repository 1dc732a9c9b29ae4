package evidence_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
	"sipsum/internal/food"
	"sipsum/internal/source"
)

func figure(id constituent.ID, mean, withBounds float64, partial bool) composition.Figure {
	return composition.Figure{
		Constituent: constituent.Must(id),
		Result: composition.Result{
			Summary: estimate.Summary{Mean: mean, Low: mean, High: mean}, Unit: constituent.Must(id).Unit,
			WithBounds: withBounds, Partial: partial, Unknown: mean == 0 && partial,
		},
		Contributions: []composition.Contribution{{Food: "own:x", Table: "own", Source: "paper", Mean: mean}},
	}
}

// drinkOf is an assay of two components with the given malic acid, mg; the
// tests are of the view, not of foods.
func drinkOf(first, second, withBounds float64, partial bool) *assay.Assay {
	part := func(x float64) composition.Figure {
		f := figure("MALAC", x, x, false)
		f.Share = composition.Share{Mean: x / (first + second), Low: x/(first+second) - 0.05, High: x/(first+second) + 0.05}
		f.Share.Least = f.Share.Low * (first + second) / max(withBounds, first+second)
		if math.IsNaN(withBounds) {
			f.Share.Least = math.NaN()
		}
		return f
	}
	a := &assay.Assay{
		Drink: &drink.Drink{CompareWith: "coffee"},
		Basis: assay.Basis{PerServing: composition.Composition{figure("MALAC", first+second, withBounds, partial)}},
		Components: []assay.Component{
			{Name: "coffee", Constituents: composition.Composition{part(first)}},
			{Name: "syrup", Constituents: composition.Composition{part(second)}},
		},
	}
	a.Alone = &a.Components[0]
	a.PerServing[0].Contributions = []composition.Contribution{
		{Food: "own:grounds", Table: "own", Source: "paper", Mean: first, Path: []string{"coffee"}},
		{Food: "own:pear", Table: "own", Source: "book", Mean: second, Path: []string{"syrup"}},
	}
	pour := func(code string, known, most float64) assaytest.Poured {
		const grams, mg = 100.0, 1000.0
		p := assaytest.Poured{Code: code, Grams: grams, Holds: map[constituent.ID]float64{"MALAC": known / mg / grams, constituent.Water: 1 - known/mg/grams}}
		if most != 0 {
			p.Most = map[constituent.ID]float64{}
			for up := constituent.ID("MALAC"); up != "" && up != constituent.Mass; up = constituent.Must(up).Parent { // nobody knows its totals either
				p.Most[up] = most / mg / grams
			}
		}
		return p
	}
	rest := 0.0
	if partial {
		rest = withBounds - first - second
	}
	a.Serving, _ = assaytest.Pot(10, pour("grounds", first, 0), pour("herb", 0, rest), pour("pear", second, 0))
	for row, pot := range []string{"coffee", "coffee", "syrup"} {
		a.Serving.Rows[row].Path = []string{pot}
		a.Serving.Rows[row].Profile.Food.Names = []food.Name{{Text: a.Serving.Rows[row].Profile.Food.ID.Code}}
	}
	return a
}

// texts are the sentences of a category.
func texts(c evidence.Category) []string {
	var list []string
	for _, s := range c.Sentences {
		list = append(list, s.Text)
	}
	return list
}

func works(_, id string) (source.Work, bool) { return source.Work{ID: id, Citation: "a paper"}, true }

func acid(t *testing.T, v evidence.View) evidence.Category {
	t.Helper()
	require.Len(t, v.Categories, 1)
	assert.Equal(t, "acid", v.Categories[0].Name)
	return v.Categories[0]
}

func TestPartsStandLargestFirstAndTheCoffeeAlone(t *testing.T) {
	c := acid(t, evidence.Of(drinkOf(20, 80, 100, false), works))
	require.Len(t, c.Entries, 1)
	assert.Equal(t, "syrup", c.Entries[0].Parts[0].Name)
	require.NotNil(t, c.Entries[0].Alone)
	assert.Equal(t, 20.0, c.Entries[0].Alone.Mean)
	assert.Equal(t, []string{"The pear brings most of the malic acid: at least 80 %."}, texts(c))
	assert.Len(t, c.Entries[0].Works, 2)
	assert.Equal(t, []source.Work{{ID: "book", Citation: "a paper"}}, c.Sentences[0].Works, "those of whom it names")
}

func TestASentenceHoldsWhateverIsUnknown(t *testing.T) {
	c := acid(t, evidence.Of(drinkOf(20, 80, 130, true), works))
	assert.Equal(t, []string{"The pear brings most of the malic acid: at least 61 %."}, texts(c), "80 of 130")
	c = acid(t, evidence.Of(drinkOf(20, 80, 190, true), works))
	assert.Equal(t, []string{"The pear brings at least a third of the malic acid: 42 % or more."}, texts(c), "80 of 190, and the herb may bring 90")
	assert.Empty(t, acid(t, evidence.Of(drinkOf(20, 80, math.NaN(), true), works)).Sentences, "nothing bounds the unknown")
}

func TestFiguresFromMemoryAreNoEvidence(t *testing.T) {
	memory := func(_, id string) (source.Work, bool) {
		return source.Work{ID: id, Citation: "a handbook, from memory"}, true
	}
	c := acid(t, evidence.Of(drinkOf(20, 80, 100, false), memory))
	assert.Empty(t, c.Entries[0].Works)
	assert.Empty(t, c.Sentences)

	a := drinkOf(20, 80, 100, false) // of the part that counts, though not of all
	a.PerServing[0].Contributions = []composition.Contribution{{Food: "own:pear", Table: "own", Source: "seen", Mean: 80}, {Food: "own:grounds", Table: "own", Source: "remembered", Mean: 20}}
	half := func(_, id string) (source.Work, bool) {
		return source.Work{ID: id, Citation: map[string]string{"seen": "a paper", "remembered": "a handbook, from memory"}[id]}, true
	}
	c = acid(t, evidence.Of(a, half))
	assert.NotEmpty(t, c.Entries[0].Works)
	assert.Empty(t, c.Sentences)
}

// What the drink file says of where its own foods have their figures from is a work that its owner has
// seen, and is cited for them; without it, or from memory, they are no evidence.
func TestAnOwnFoodIsCitedByItsOwnSource(t *testing.T) {
	nobody := func(string, string) (source.Work, bool) { return source.Work{}, false }
	a := drinkOf(20, 80, 100, false)
	assert.Empty(t, acid(t, evidence.Of(a, nobody)).Sentences)
	a.Drink.Foods = []drink.OwnFood{{Code: "pear", Source: "lab 1"}, {Code: "grounds", Source: "lab 2"}}
	c := acid(t, evidence.Of(a, nobody))
	assert.Equal(t, []string{"The pear brings most of the malic acid: at least 80 %."}, texts(c))
	assert.Equal(t, []source.Work{{ID: "own:pear", Citation: "lab 1", Note: evidence.OwnSource}}, c.Sentences[0].Works)
	a.Drink.Foods[1].Source = "a handbook, from memory"
	assert.Empty(t, acid(t, evidence.Of(a, nobody)).Sentences)
}

// What is only a trace is not spoken of.
func TestTracesAreNotSpokenOf(t *testing.T) {
	a := drinkOf(20, 80, 100, false)
	a.PerServing[0].State = estimate.Trace
	assert.Empty(t, acid(t, evidence.Of(a, works)).Sentences)
}

// An assay without a liquid says nothing, and nothing fails.
func TestNothingIsSaidOfNoPot(t *testing.T) {
	a := drinkOf(20, 80, 100, false)
	a.Serving = nil
	assert.Empty(t, acid(t, evidence.Of(a, works)).Sentences)
}

func TestWhatTheDrinkSurelyLacksIsLeftOut(t *testing.T) {
	assert.Empty(t, evidence.Of(drinkOf(0, 0, 0, false), works).Categories)
}

// A component that surely has none of a constituent is not listed, one of which nobody knows
// is: unknown is not zero.
func TestAComponentOfWhichNobodyKnowsIsListed(t *testing.T) {
	a := drinkOf(20, 80, 150, true)
	a.Components = append(a.Components,
		assay.Component{Name: "water", Constituents: composition.Composition{figure("MALAC", 0, 0, false)}},
		assay.Component{Name: "herb", Constituents: composition.Composition{figure("MALAC", 0, 50, true)}})
	var names []string
	for _, p := range acid(t, evidence.Of(a, works)).Entries[0].Parts {
		names = append(names, p.Name)
	}
	assert.Equal(t, []string{"syrup", "coffee", "herb"}, names)
}

// A drink's own categories stand for the standard ones.
func TestOwnCategories(t *testing.T) {
	a := drinkOf(20, 80, 100, false)
	a.Drink.Categories = []drink.Category{{Name: "bright", Tags: []string{"CITAC", "MALAC"}}}
	assert.Equal(t, []constituent.ID{"CITAC", "MALAC"}, evidence.Constituents(a.Drink))
	v := evidence.Of(a, works)
	require.Len(t, v.Categories, 1)
	assert.Equal(t, "bright", v.Categories[0].Name)
	assert.Contains(t, evidence.Constituents(&drink.Drink{}), constituent.ID("MALAC"))
}

// Beside the drink stands what it is compared with, if it has any.
func TestAloneIsWhatIsThere(t *testing.T) {
	a := drinkOf(20, 80, 100, false)
	a.Alone.Constituents = composition.Composition{figure("MALAC", 0, 0, false)}
	assert.Nil(t, acid(t, evidence.Of(a, works)).Entries[0].Alone)
	a.Alone.Constituents = composition.Composition{figure("MALAC", 0, 3, true)}
	assert.NotNil(t, acid(t, evidence.Of(a, works)).Entries[0].Alone, "unknown is not zero")
	a.Alone = nil
	assert.Nil(t, acid(t, evidence.Of(a, works)).Entries[0].Alone)
}

// A work is named once, and only for a figure that it stands behind.
func TestWorksAreThoseBehindTheFigure(t *testing.T) {
	a := drinkOf(20, 80, 100, false)
	f := &a.PerServing[0]
	f.Contributions = []composition.Contribution{
		{Table: "own", Source: "b a", Mean: 80}, {Table: "own", Source: "a", Mean: 20}, {Table: "own", Source: "c", Mean: 0},
	}
	var ids []string
	for _, w := range acid(t, evidence.Of(a, works)).Entries[0].Works {
		ids = append(ids, w.ID)
	}
	assert.Equal(t, []string{"b", "a"}, ids)
}
