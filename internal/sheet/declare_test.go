package sheet_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acidity"
	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// What nobody has stated of the alcohol of a food counts for nothing, but what a ferment may
// have made does.
func TestMostAlcohol(t *testing.T) {
	a := estimate.Amount{Mean: 2, WithBounds: 5, High: 3, UpTo: 6, Known: true}
	assert.InDelta(t, 3, sheet.MostAlcohol(a, false), 0)
	assert.InDelta(t, 6, sheet.MostAlcohol(a, true), 0)
	a.UpTo = 0
	assert.InDelta(t, 5, sheet.MostAlcohol(a, true), 0)
	a.High, a.WithBounds = 0, 1
	assert.InDelta(t, 2, sheet.MostAlcohol(a, true), 0, "never below what is known")
	a.WithBounds, a.UpTo = math.NaN(), math.NaN()
	assert.InDelta(t, 2, sheet.MostAlcohol(a, true), 0, "no bound, no figure")
}

// The rules read every name of a food, where it stands, and whether it is eaten.
func TestDeclarationsReadTheFoodsOfTheDrink(t *testing.T) {
	a := calculated(t, plain+"may-contain: [egg]\n", assaytest.Options{})
	a.Items[0].Food.Names = append(a.Items[0].Food.Names, food.Name{Language: "en", Text: "Hazelnut water"})
	s, err := sheet.Build("test", a, tables, uncited, nil)
	require.NoError(t, err)
	d := s.Allergens()[0]
	require.Len(t, d.Contains, 1)
	assert.Equal(t, []string{"almond"}, d.Contains[0].Leaves)
	require.Len(t, d.MayContain, 1)
	assert.Equal(t, []string{"egg"}, d.MayContain[0].Leaves)
	require.Len(t, d.Check, 1, "a further name says more than the list of the pack")
	assert.Equal(t, allergen.CheckContradicts, d.Check[0].Code)
	assert.Equal(t, "hazelnut", d.Check[0].Leaf)
}

// Cautions hang on the drink's steps, its amounts and its strength.
func TestCautionsOfADeclaration(t *testing.T) {
	const text = `
drink: "Strong"
serves: 1
foods:
  strong: {name: "Strong", per: 100 g, density: 0.95 g/ml, values: {WATER: 60 g, ALC: 40 g}, source: "invented", allergens: []}
  without: {name: "Without", group: wine, per: 100 g, density: 1 g/ml, values: {WATER: 95 g, ALC: 0 g}, source: "invented", allergens: []}
  unsaid: {name: "Unsaid", group: wine, per: 100 g, density: 1 g/ml, values: {WATER: 88 g}, source: "invented", allergens: []}
  weak: {name: "Weak", per: 100 g, values: {WATER: 100 g}, source: "invented", allergens: []}
build: [40 g own:`
	codes := func(of string) []string {
		var list []string
		for _, c := range built(t, text+of+"]\n").Allergens()[0].Cautions {
			list = append(list, c.Code)
		}
		return list
	}
	assert.Contains(t, codes("strong"), "alcohol-strength")
	assert.Empty(t, codes("weak"))
	for _, code := range []string{"alcohol", "alcohol-pregnancy", "alcohol-strength"} {
		assert.NotContains(t, codes("without"), code, "a wine of 0.0 % vol")
		assert.Contains(t, codes("unsaid"), code, "a wine of which nobody says")
	}
}

// Of the works that published the pH on which a liquid rests, of the drink or of a component,
// each food has its own; one from memory is no evidence, and a group has a text of its own.
func TestPHWorks(t *testing.T) {
	a := calculated(t, plain+"components:\n  half: {ingredients: [1 g own:wet]}\n", assaytest.Options{})
	juice, milk, sort := food.ID{Table: "core", Code: "juice"}, food.ID{Table: "core", Code: "milk"}, food.ID{Table: "core", Code: "sort"}
	a.Chemistry = &chemistry.Chemistry{RestsOn: []acidity.Calibration{{Food: juice, Source: "p1 p2 p3"}, {Food: sort, Group: "a group", Source: "p1"}}}
	a.Components = append(a.Components, assay.Component{Chemistry: &chemistry.Chemistry{RestsOn: []acidity.Calibration{{Food: milk, Source: "p1"}, {Food: juice, Source: "p1"}}}})
	works := func(table, id string) (source.Work, bool) {
		cited := map[string]string{"p1": "A paper", "p2": "a book: from memory"}[id]
		return source.Work{ID: table + ":" + id, Citation: cited}, cited != ""
	}
	s, err := sheet.Build("test", a, tables, works, nil)
	require.NoError(t, err)
	paper := []source.Work{{ID: "core:p1", Citation: "A paper"}}
	assert.Equal(t, sheet.PHWorks{juice: paper, milk: paper}, s.PHWorks)
}
