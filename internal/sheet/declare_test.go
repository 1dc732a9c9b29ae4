package sheet_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acidity"
	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/ingredientlist"
	"sipsum/internal/label"
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

// 2.7 mg of sulphur dioxide in a serving of 150 g and 120 ml are 18 mg a kilogram and 22.5 mg a
// litre, by hand; of a drink without a volume there is nothing to say by the litre.
func TestSulphurDioxideByTheKilogramAndTheLitre(t *testing.T) {
	so2 := estimate.Amount{Mean: 2.7, WithBounds: 2.7, Known: true}
	facts := label.Facts{ServingG: 150, ServingMl: 120, Serving: map[constituent.ID]estimate.Amount{"SO2": so2}}
	x := sheet.Measured("eu", facts)
	assert.InDelta(t, 18, x.PerKg.Mean, 1e-9)
	assert.InDelta(t, 22.5, x.PerLitre.Mean, 1e-9)
	facts.ServingMl = 0
	assert.False(t, sheet.Measured("eu", facts).PerLitre.Known)
	assert.False(t, sheet.Measured("eu", label.Facts{ServingG: 150}).PerKg.Known, "nobody has stated any")
}

// What waits for a decision is said once, whatever the sets of rules, with where it is written;
// an allergen that no rules know is a fault at its place.
func TestWhatWaitsForADecision(t *testing.T) {
	assert.Empty(t, built(t, plain).Undecided())
	s := built(t, strings.ReplaceAll(plain, `name: "Sweet"`, `name: "Hazelnut paste"`)+"rules: [eu, us]\n")
	assert.Equal(t, []string{"own:sweet: the name says hazelnuts, the list of allergens does not"}, s.Undecided())
	assert.True(t, s.NotAssessed())
	require.Len(t, s.Allergens()[0].Check, 1)
	assert.Equal(t, 6, s.Allergens()[0].Check[0].Places[0].Line)

	d, faults := drink.Parse("a.yaml", []byte(strings.Replace(plain, "[almond]", "[almond, stones]", 1)), nil)
	sheet.Check(d, faults)
	err := faults.Err(fail.Wrong)
	require.Error(t, err)
	assert.Contains(t, err.Error(), `a.yaml:6:`)
	assert.Contains(t, err.Error(), `"stones"`)
}

// The list of ingredients stands with the declaration of its rules.
func TestIngredientsOfADeclaration(t *testing.T) {
	list := built(t, plain).Allergens()[0].Ingredients
	assert.Equal(t, "eu", list.Rules)
	require.Len(t, list.Ingredients, 2)
	assert.Equal(t, "Wet", list.Ingredients[0].Name[0].Text)
	assert.InDelta(t, 50, list.Ingredients[0].Grams, 1e-9)
	assert.True(t, slices.ContainsFunc(list.Ingredients[1].Name, func(p ingredientlist.Part) bool { return p.Strong && p.Text == "almonds" }))
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
