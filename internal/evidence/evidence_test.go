package evidence_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
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
	return a
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
	assert.Equal(t, []string{"syrup brings 80 % (75 to 85) of the malic acid."}, c.Sentences)
}

func TestASentenceHoldsWhateverIsUnknown(t *testing.T) {
	c := acid(t, evidence.Of(drinkOf(20, 80, 140, true), works))
	assert.Equal(t, []string{"syrup brings at least 53 % of the malic acid, whatever is unknown."}, c.Sentences, "75 of 140: the low end, not the mean")
	assert.Empty(t, acid(t, evidence.Of(drinkOf(20, 80, 155, true), works)).Sentences, "the unknown could outweigh it: 75 of 155, though 80 are more than half")
	assert.Empty(t, acid(t, evidence.Of(drinkOf(20, 80, math.NaN(), true), works)).Sentences, "nothing bounds the unknown")
}

// A pure substance brings itself, which is no evidence; a syrup of it does.
func TestASubstancePouredAsSuchIsNoLead(t *testing.T) {
	a := drinkOf(20, 80, 100, false)
	a.Components[1].Mass.Mean = 0.081 // g for 80 mg: 99 % of it
	assert.Equal(t, []string{"80 % (75 to 85) of the malic acid is added pure."}, acid(t, evidence.Of(a, works)).Sentences)
	a.Components[1].House = true
	assert.Equal(t, []string{"syrup brings 80 % (75 to 85) of the malic acid."}, acid(t, evidence.Of(a, works)).Sentences)
	a.Components[1].House, a.Components[1].Mass.Mean = false, 8
	assert.Equal(t, []string{"syrup brings 80 % (75 to 85) of the malic acid."}, acid(t, evidence.Of(a, works)).Sentences)
}

func TestFiguresFromMemoryAreNoEvidence(t *testing.T) {
	memory := func(_, id string) (source.Work, bool) {
		return source.Work{ID: id, Citation: "a handbook, from memory"}, true
	}
	c := acid(t, evidence.Of(drinkOf(20, 80, 100, false), memory))
	assert.Empty(t, c.Entries[0].Works)
	assert.Empty(t, c.Sentences)
}

func TestWhatTheDrinkSurelyLacksIsLeftOut(t *testing.T) {
	assert.Empty(t, evidence.Of(drinkOf(0, 0, 0, false), works).Categories)
}

// A lead of exactly half is one.
func TestHalfIsALead(t *testing.T) {
	c := acid(t, evidence.Of(drinkOf(20, 80, 150, true), works)) // 75 of 150
	assert.Equal(t, []string{"syrup brings at least 50 % of the malic acid, whatever is unknown."}, c.Sentences)
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

// Nothing leads of what each brings a part of, and what one brings all of is all.
func TestAllAndNoLead(t *testing.T) {
	assert.Empty(t, acid(t, evidence.Of(drinkOf(48, 52, 100, false), works)).Sentences, "52 % (47 to 57)")
	a := drinkOf(20, 80, 100, false)
	a.Components[1].Constituents[0].Share = composition.Share{Mean: 1, Low: 0.995, High: 1}
	assert.Equal(t, []string{"syrup brings all of the malic acid."}, acid(t, evidence.Of(a, works)).Sentences)
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
