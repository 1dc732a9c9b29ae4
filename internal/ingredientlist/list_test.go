package ingredientlist_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/allergen"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/ingredientlist"
)

// written gives a list as a text, what is emphasised between stars.
func written(list []ingredientlist.Ingredient) string {
	var texts []string
	for _, x := range list {
		var text strings.Builder
		for _, p := range x.Name {
			if p.Strong {
				text.WriteString("*" + p.Text + "*")
			} else {
				text.WriteString(p.Text)
			}
		}
		if len(x.Of) > 0 {
			text.WriteString(" (" + written(x.Of) + ")")
		}
		texts = append(texts, text.String())
	}
	return strings.Join(texts, ", ")
}

func listOf(t *testing.T, rules, text string) ingredientlist.List {
	t.Helper()
	a := assaytest.Assay(t, assaytest.Core(t), text, 5)
	var items []allergen.Item
	for _, it := range a.Items {
		items = append(items, allergen.Item{
			Food: it.Food.ID, Name: it.Food.Name(), Group: it.Food.Group, Marks: it.Food.Marks, Stated: it.Stated, Own: it.Own, Path: it.Path, Eaten: it.Eaten,
		})
	}
	d, err := allergen.Declare(rules, items, nil)
	require.NoError(t, err)
	return ingredientlist.Of(a, d)
}

const punch = `
drink: "Punch"
serves: 2
foods:
  leaf: {name: "Gelatine, leaf", per: 100 g, fill: core:gelatin, allergens: [fish]}
components:
  base:
    ingredients: [5 g core:wheat-flour, 30 g core:almond, 100 g core:water-tap]
    steps:
      - strain: {collect: 90 g, through: cloth}
  syrup:
    ingredients: [60 g base, 50 g core:sugar-white, 2 g own:leaf, 20 g core:water-pure, 10 g core:sugar-white]
    steps:
      - reduce: {to: 100 g}
build: [50 g syrup, 45 g core:milk-whole, 10 g base, 4 g core:beer]
finish:
  - chill: {melt: 15 g}
garnish:
  - 1 g core:sesame-seed
  - {food: core:mint-liqueur, amount: 2 g, eaten: true}
`

// Article 18(1): in descending order of weight as recorded at use; Annex VII, part A, 1: water by
// what is in the finished product; part E: compound ingredients with their own. Article 21(1):
// the name of what Annex II lists stands out. The order follows from the masses by hand: sugar is
// 50 + 10 g and stands before 60 g of the base, the water that is not boiled off after both.
func TestListOfIngredients(t *testing.T) {
	l := listOf(t, "eu", punch)
	assert.Equal(t, "Ingredients", l.Heading)
	assert.Equal(t, "syrup (base (Tap water, *Almond*, White *wheat* flour), White sugar, Water, Gelatine – leaf (*Fish*)), "+
		"Whole *milk* – 3.25 % fat, Water, base (Tap water, *Almond*, White *wheat* flour), Beer (*barley*), Mint liqueur – 36 % vol.", written(l.Ingredients))
	assert.Equal(t, "*Sesame seed*", written(l.NotEaten))
	require.Len(t, l.Ingredients, 6)
	assert.InDelta(t, 15, l.Ingredients[2].Grams, 1e-9, "of the ice all")
	syrup := l.Ingredients[0].Of
	assert.InDelta(t, 60, syrup[0].Grams, 1e-9)
	assert.InDelta(t, 60, syrup[1].Grams, 1e-9, "poured twice, listed once")
	assert.Less(t, syrup[2].Grams, 20., "water that boils off is no ingredient")
	assert.Positive(t, syrup[2].Grams)
}

// 21 CFR 101.4 and 343(w): the same order, the source by its US name; barley is none there.
func TestListUnderOtherRules(t *testing.T) {
	us := written(listOf(t, "us", punch).Ingredients)
	assert.Contains(t, us, "*Almond*")
	assert.Contains(t, us, "Beer, ")
	anz := written(listOf(t, "anz", punch).Ingredients)
	assert.Contains(t, anz, "Beer (*Barley*)", "the cereal is named in the list, gluten in the summary")
	assert.Equal(t, "unverified", listOf(t, "codex", punch).Status)
}
