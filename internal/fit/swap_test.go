package fit_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
)

// exchanged looks for a food of the core table in the place of one of a drink, or among a few.
func exchanged(t *testing.T, text string, x fit.Exchange, among ...string) (*fit.Exchanged, error) {
	t.Helper()
	lib := assaytest.Core(t)
	r := assaytest.Found(t, lib, text)
	var pool []*food.Food
	for id, f := range lib {
		if len(among) == 0 || slices.Contains(among, id.Code) {
			pool = append(pool, f)
		}
	}
	slices.SortFunc(pool, func(a, b *food.Food) int { return strings.Compare(a.ID.Code, b.ID.Code) })
	return benchOf(r).Swap(context.Background(), r, x, pool, func(ctx context.Context, d *drink.Drink) (fit.Bench, *recipe.Recipe, error) {
		found, err := recipe.Find(ctx, d, &fail.List{}, lib)
		if err != nil {
			return fit.Bench{}, nil, err
		}
		return benchOf(found), found, nil
	})
}

func codes(x *fit.Exchanged) (list []string) {
	for _, f := range x.Found {
		list = append(list, f.Food.ID.Code)
	}
	return list
}

// of gives a proposal by its code.
func of(t *testing.T, x *fit.Exchanged, code string) fit.Substitute {
	t.Helper()
	i := slices.Index(codes(x), code)
	require.GreaterOrEqual(t, i, 0, "%s among %v", code, codes(x))
	return x.Found[i]
}

// By molar mass (IUPAC 2021, abridged standard atomic weights) 180.156 g of glucose are 198.171 g of its
// monohydrate, and 192.123 g of citric acid 210.138 g of its monohydrate.
func TestWhatIsTheSameButForItsWaterIsFittedByItsMolarMass(t *testing.T) {
	for _, x := range []struct {
		from, to string
		factor   float64
	}{{"glucose", "dextrose-monohydrate", 198.171 / 180.156}, {"citric-acid", "citric-acid-monohydrate", 210.138 / 192.123}} {
		res, err := exchanged(t, "\ndrink: plain\nserves: 1\nscale: 0.01 g\nbuild: [10 g core:"+x.from+", 300 g core:water-pure]\n", fit.Exchange{Food: "core:" + x.from}, x.to)
		require.NoError(t, err)
		found := of(t, res, x.to)
		assert.InEpsilon(t, 10*x.factor, found.Poured[0].To.Number, 0.02, x.from)
		assert.Greater(t, found.Sure, 0.99, x.from)
	}
}

// Syrups of 65 and 30 % sucrose: 20 g of the one are 43.3 g of the other, of which 300 g of water hide the
// volume. In the same place at the same mass it would be half as sweet.
func TestTwoSyrupsAreFittedByTheirSugar(t *testing.T) {
	res, err := exchanged(t, `
drink: syrups
serves: 1
scale: 0.1 g
foods:
  rich: {name: Rich, group: syrup, per: 100 g, values: {WATER: 33.5 g ± 0 g, SUGAR: 66.5 g ± 0 g, SUCS: 66.5 g ± 0 g}, allergens: [], source: made up}
build: [20 g own:rich, 600 g core:water-pure]
`, fit.Exchange{Food: "own:rich"}, "sugar-white", "sucrose-syrup")
	require.NoError(t, err)
	assert.InEpsilon(t, 20*66.5/99.9, of(t, res, "sugar-white").Poured[0].To.Number, 0.05, "sugar is sucrose by 99.9 %")
	assert.Equal(t, fit.Sweet, res.Brings[0].Quality)
}

const latte = `
drink: hot
serves: 1
at: 60 °C
scale: 1 g
build: [40 g core:espresso, 160 g core:milk-whole, 8 g core:sugar-white]
`

// Regulation (EU) No 1169/2011, Annex II: 7, milk and products thereof including lactose, whatever animal
// it is of; lactose-free milk is milk.
func TestWithoutMilkIsWithoutWhatIsMadeOfMilk(t *testing.T) {
	milk := fit.Exchange{Food: "Milk", Without: []string{"cow milk", "goat milk", "sheep milk", "buffalo milk", "milk"}}
	res, err := exchanged(t, latte, milk, "milk-goat", "milk-sheep", "milk-lactose-free", "cream-single", "whey-acid", "lactose-monohydrate", "oat-drink", "soya-drink-plain", "coconut-drink")
	require.NoError(t, err)
	assert.ElementsMatch(t, []string{"oat-drink", "soya-drink-plain", "coconut-drink"}, codes(res))
	assert.Equal(t, fit.Body, res.Brings[0].Quality)
	for _, f := range res.Found {
		assert.Empty(t, f.Still, f.Food.ID.Code)
	}
	res, err = exchanged(t, strings.Replace(latte, "8 g core:sugar-white", "8 g core:milk-condensed", 1), milk, "oat-drink")
	require.NoError(t, err)
	for _, f := range res.Found {
		assert.NotEmpty(t, f.Still, "condensed milk is there all the same")
	}
}

// Regulation (EC) No 1924/2006, Annex: reduced by at least 30 %. As sweet as sugar with less of it are what
// sweetens more, and polyols, which are none.
func TestLessSugarBringsLessOfIt(t *testing.T) {
	sugar := constituent.Must(constituent.Sugar)
	res, err := exchanged(t, latte, fit.Exchange{Food: "core:sugar-white", Less: sugar})
	require.NoError(t, err)
	require.NotEmpty(t, res.Found)
	for _, f := range res.Found {
		before, after := assaytest.Figure(t, res.Before.PerServing, "SUGAR").Mean, assaytest.Figure(t, f.After.PerServing, "SUGAR").Mean
		assert.LessOrEqual(t, after, before-0.3*8*0.995, f.Food.ID.Code)
	}
	assert.NotContains(t, codes(res), "sugar-brown")
	assert.NotContains(t, codes(res), "glucose", "less sweet, so that it takes more")
}

const lemonade = `
drink: sour
serves: 1
scale: 0.1 g
build: [30 g core:lemon-juice, 20 g core:sugar-white, 150 g core:water-pure]
`

// Whose deciding figure nobody has measured is no answer: it would do if it were read.
func TestWhatNobodyHasMeasuredWouldDo(t *testing.T) {
	res, err := exchanged(t, string(assaytest.FileOf(t, "data/demo/garden-tide.yaml")), fit.Exchange{Food: "core:passion-fruit-juice-purple"}, "acerola-juice", "passion-fruit-juice-yellow")
	require.NoError(t, err)
	assert.Equal(t, []string{"passion-fruit-juice-yellow"}, codes(res))
	require.Len(t, res.Would, 1)
	assert.Equal(t, "acerola-juice", res.Would[0].Food.ID.Code)
	assert.Contains(t, res.Would[0].Read, "titratable acidity")
	res, err = exchanged(t, lemonade, fit.Exchange{Food: "core:lemon-juice"}, "lime-juice", "apple-juice")
	require.NoError(t, err)
	assert.Equal(t, "lime-juice", codes(res)[0])
}

// A step that the other food does not go through leaves it out, with the reason.
func TestAStepThatCannotBeDoneIsTheReason(t *testing.T) {
	res, err := exchanged(t, string(assaytest.FileOf(t, "data/demo/harbour-veil.yaml")), fit.Exchange{Food: "core:milk-whole"}, "coconut-drink", "oat-drink")
	require.NoError(t, err)
	assert.Empty(t, res.Found)
	assert.NotEmpty(t, res.Why)
	require.NotEmpty(t, res.Out)
	assert.Contains(t, res.Out[0].Why, "curdles")
	assert.Equal(t, []string{"mint veil"}, res.Unread)
}

// What is there for its smell alone has no figure by which another could stand for it.
func TestWhatBringsNoTasteHasNoOther(t *testing.T) {
	res, err := exchanged(t, string(assaytest.FileOf(t, "data/demo/garden-tide.yaml")), fit.Exchange{Food: "Spearmint"})
	require.NoError(t, err)
	assert.Empty(t, res.Found)
	assert.Contains(t, res.Why, "smell")
	_, err = exchanged(t, latte, fit.Exchange{Food: "core:gin-45"})
	assert.ErrorContains(t, err, "no food that the drink pours")
}
