package recipe_test

import (
	"context"
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
)

// shelf is a small library: a lemon that has portions, a density and an edible share, and a
// powder that has none of them.
func shelf() assaytest.Library {
	lib := assaytest.Library{}
	for _, f := range []*food.Food{
		{
			ID: food.ID{Table: "t", Code: "lemon"}, Names: []food.Name{{Text: "Lemon"}}, Edible: 0.6, Density: food.Density{GramsPerMl: 1.1, SD: 0.02},
			Portions: []food.Portion{{Name: "slice", Grams: 7, SD: 1}, {Name: "fruit", Grams: 84, SD: 9}},
		},
		{ID: food.ID{Table: "t", Code: "powder"}, Names: []food.Name{{Text: "Powder"}}, Edible: food.None, Density: food.Density{GramsPerMl: food.None, SD: food.None}},
	} {
		lib[f.ID] = f
	}
	return lib
}

func TestHowALineBecomesGrams(t *testing.T) {
	for line, want := range map[string][2]float64{ // one base unit in grams, and its sd
		`"10 g t:lemon"`:  {1, 0},
		`"10 ml t:lemon"`: {1.1, 0.02},
		`{food: "t:lemon", portion: slice, count: 2}`:                 {7, 1},
		`{food: "t:lemon", portion: fruit, count: 2, as: whole}`:      {84 * 0.6, 9 * 0.6},
		`{food: "t:lemon", amount: 10 g, as: whole}`:                  {0.6, 0},
		`{food: "t:lemon", amount: 10 ml, as: whole}`:                 {1.1 * 0.6, 0.02 * 0.6},
		`{food: "t:lemon", amount: 10 ml, as: edible}`:                {1.1, 0.02},
		`{food: "t:powder", amount: 10 g, as: edible}, "5 g t:lemon"`: {1, 0},
	} {
		r, err := find(t, shelf(), "drink: x\nserves: 1\nbuild: ["+line+"]\n")
		require.NoError(t, err, line)
		in := r.Lines[r.Drink.Build[0].Path]
		assert.InDelta(t, want[0], in.Grams, 1e-12, line)
		assert.InDelta(t, want[1], in.GramsSD, 1e-12, line)
		assert.Nil(t, in.Component)
	}
}

// All that is wrong is reported at once, each where it stands and with what to do.
func TestWhatAFoodLacksIsSaidAtItsLine(t *testing.T) {
	_, err := find(t, shelf(), `drink: x
serves: 1
components:
  unused: {ingredients: ["1 g t:nothing"]}
build:
  - 10 ml t:powder
  - {food: "t:powder", amount: 10 g, as: whole}
  - {food: "t:powder", portion: slice, count: 1}
  - {food: "t:lemon", portion: wedge, count: 1}
  - 10 g own:nowhere
  - 10 g Nobody
  - 10 g Nobody
`)
	var e *fail.Error
	require.True(t, errors.As(err, &e), "%v", err)
	var said []string
	for _, f := range e.Faults {
		said = append(said, fmt.Sprintf("%d: %s (%s)", f.Line, f.What, f.Do))
	}
	assert.Equal(t, []string{
		`4: no food t:nothing ()`,
		`6: ml is a volume, but t:powder has no density (write grams; or describe it under foods: with density:)`,
		`7: t:powder has no edible share (weigh the edible part and write as: edible)`,
		`8: t:powder has no portion "slice" (it has none: write grams)`,
		`9: t:lemon has no portion "wedge" (it has "slice", "fruit")`,
		`10: no own food "nowhere" under foods: (search with: sipsum food find WORDS)`,
		`11: no component and no food is called "Nobody" (search with: sipsum food find WORDS)`, // once: the next line has the same name
	}, said)
}

// hints is a library that suggests, and one that breaks.
type hints struct {
	assaytest.Library
	near []string
	stop error
}

func (h hints) Near(context.Context, string) []string { return h.near }

func (h hints) Named(ctx context.Context, name string) (food.ID, bool, error) {
	if h.stop != nil {
		return food.ID{}, false, h.stop
	}
	return h.Library.Named(ctx, name)
}

func TestWhatIsNearIsOnlySuggested(t *testing.T) {
	_, err := find(t, hints{Library: shelf(), near: []string{"t:lemon Lemon", "t:powder Powder"}}, "drink: x\nserves: 1\nbuild: [10 g Lemonn]\n")
	assert.ErrorContains(t, err, `no component and no food is called "Lemonn" (did you mean t:lemon Lemon or t:powder Powder?)`)
	broken := errors.New("the table cannot be read")
	_, err = find(t, hints{Library: shelf(), stop: broken}, "drink: x\nserves: 1\nbuild: [10 g Lemon, 10 ml t:powder]\n")
	assert.ErrorIs(t, err, broken, "what is not the file's fault is no fault of the file")
}

func TestAFoodIsFoundByItsWholeName(t *testing.T) {
	r, err := find(t, shelf(), "drink: x\nserves: 1\nfoods:\n  a: {name: \"Oat\", per: 100 g, values: {SUGAR: 10 g}, source: \"invented\"}\nbuild: [10 g Lemon, 5 g Oat, 3 g own:a]\n")
	require.NoError(t, err)
	var found []string
	for _, line := range r.Drink.Build {
		found = append(found, r.Lines[line.Path].Profile.Food.ID.String())
	}
	assert.Equal(t, []string{"t:lemon", "own:a", "own:a"}, found)
	assert.Len(t, r.Profiles, 3, "a food is entered once; the water of ice is the third")
	_, err = find(t, shelf(), "drink: x\nserves: 1\nfoods:\n  a: {name: \"Oat\", per: 100 g, values: {SUGAR: 10 g}, source: \"invented\"}\nbuild: [10 g a]\n")
	assert.ErrorContains(t, err, `no component and no food is called "a" (did you mean your own:a?)`)
}

// What a line or an own food borrows is the lender's, and each lender makes a profile of
// its own.
func TestAFoodBorrowsWhereItSaysSo(t *testing.T) {
	r, err := find(t, assaytest.Core(t), `drink: x
serves: 1
foods:
  thin: {name: "Thin", group: fruit juice, fill: "core:lemon-juice", per: 100 g, values: {WATER: 92 g}, source: "invented"}
  bare: {name: "Bare", group: fruit juice, per: 100 g, values: {WATER: 92 g}, source: "invented"}
build:
  - 10 g own:thin
  - 10 g own:bare
  - {food: "own:bare", amount: 10 g, fill: "core:lemon-juice"}
  - {food: "own:thin", amount: 10 g, fill: "core:orange-juice"}
  - 5 g own:bare
`)
	require.NoError(t, err)
	var lenders []string
	for _, line := range r.Drink.Build {
		p := r.Lines[line.Path].Profile
		require.NotNil(t, p, line.Path)
		lender := "nobody"
		if p.Lender != nil {
			lender = p.Lender.ID.Code
		}
		lenders = append(lenders, lender)
	}
	assert.Equal(t, []string{"lemon-juice", "nobody", "lemon-juice", "orange-juice", "nobody"}, lenders)
	assert.Len(t, r.Profiles, 5)
	assert.Same(t, r.Lines[r.Drink.Build[1].Path].Profile, r.Lines[r.Drink.Build[4].Path].Profile)
	_, err = find(t, assaytest.Core(t), "drink: x\nserves: 1\nbuild:\n  - {food: core:honey, amount: 10 g, fill: \"core:nobody\"}\n")
	assert.ErrorContains(t, err, "no food core:nobody")
}

// Where a food stands in a drink, whether it is drunk, and who says what allergens it has.
func TestItemsSayWhereAFoodStands(t *testing.T) {
	r, err := find(t, assaytest.Core(t), `drink: x
serves: 1
foods:
  oat: {name: "Oat", per: 100 g, values: {SUGAR: 10 g}, allergens: [oats], source: "invented"}
  rice: {name: "Rice", per: 100 g, values: {SUGAR: 10 g}, source: "invented"}
components:
  inner: {ingredients: [10 g own:oat]}
  outer: {ingredients: [5 g inner], steps: [add: 1 g core:salt]}
  spare: {ingredients: [10 g core:espresso]}
build: [10 g outer, 5 g own:rice]
finish: [add: 2 g core:honey, chill: {melt: 20 g}]
garnish: [1 g inner, {food: core:sugar-white, amount: 1 g, eaten: true}]
`)
	require.NoError(t, err)
	var items []string
	for _, it := range r.Items {
		items = append(items, fmt.Sprint(it.Food.ID, it.Path, it.Eaten, it.Own, it.Stated))
	}
	assert.Equal(t, []string{
		"own:oat [outer inner] true true true",
		"core:salt [outer] true false false",
		"own:rice [] true true false",
		"core:honey [] true false false",
		"own:oat [inner] false true true",
		"core:sugar-white [] true false false",
	}, items)
	assert.Equal(t, "Water, pure", r.Called[recipe.PartID{Food: r.Water.Food.ID}])
	for _, name := range []string{"inner", "outer", "spare"} {
		assert.Equal(t, name, r.Called[recipe.PartID{Component: name}])
	}
	for _, line := range r.Drink.Components[1].Ingredients {
		assert.Equal(t, "inner", r.Lines[line.Path].Component.Name)
	}
}

// What steps pour and nobody names is brought, once.
func TestStepsBringWhatNobodyNames(t *testing.T) {
	r, err := find(t, assaytest.Core(t), "drink: x\nserves: 1\nbuild: [100 g core:water-pure]\nfinish: [carbonate: {left: 5 g/l}, chill: {melt: 20 g}]\n")
	require.NoError(t, err)
	gas := food.ID{Table: "core", Code: "carbon-dioxide"}
	for id, p := range r.Brought {
		assert.Equal(t, id, p.Food.ID)
		assert.Contains(t, r.Profiles, p)
		if id != r.Water.Food.ID {
			gas = id
		}
	}
	require.Len(t, r.Brought, 2, "gas, and the water of ice")
	assert.Contains(t, r.Brought, gas)
	assert.Same(t, r.Water, r.Brought[r.Water.Food.ID])
	still, err := find(t, assaytest.Core(t), "drink: x\nserves: 1\nbuild: [100 g core:water-pure]\n")
	require.NoError(t, err)
	assert.Len(t, still.Brought, 1)
}

func TestTheGarnishAsTheFileHasIt(t *testing.T) {
	r, err := find(t, shelf(), `drink: x
serves: 2
components: {rim: {ingredients: ["1 g t:powder"]}}
build: ["10 g t:powder"]
garnish: [{food: "t:lemon", portion: slice, count: 1/2}, 5 g rim, {food: "t:powder", amount: 1.5 g ± 0.5 g, eaten: true}]
`)
	require.NoError(t, err)
	assert.Equal(t, []recipe.Garnish{
		{PartID: recipe.PartID{Food: food.ID{Table: "t", Code: "lemon"}}, Name: "Lemon", Amount: "0.5 × slice"},
		{PartID: recipe.PartID{Component: "rim"}, Name: "rim", Amount: "5 g"},
		{PartID: recipe.PartID{Food: food.ID{Table: "t", Code: "powder"}}, Name: "Powder", Amount: "1.5 g ± 0.5 g", Eaten: true},
	}, r.Garnish())
}

// Foods whose names differ by what cannot be seen, or by the case of a letter, are told apart.
func TestNamesThatLookAlikeAreToldApart(t *testing.T) {
	for _, other := range []string{"lemon", "Le\u200bmon", "Lemon\u00ad", "Le\u0007mon", " Lemon ", "LEMON"} {
		lib := shelf()
		lib[food.ID{Table: "t", Code: "powder"}].Names = []food.Name{{Text: other}}
		r, err := find(t, lib, "drink: x\nserves: 1\nbuild: [\"10 g t:lemon\", \"10 g t:powder\"]\n")
		require.NoError(t, err)
		assert.Equal(t, "Lemon (t:lemon)", r.Called[ofFood("t", "lemon")], "%q", other)
		assert.Equal(t, other+" (t:powder)", r.Called[ofFood("t", "powder")], "%q", other)
	}
	lib := shelf()
	lib[food.ID{Table: "t", Code: "powder"}].Names = nil
	r, err := find(t, lib, "drink: x\nserves: 1\nbuild: [\"10 g t:lemon\", \"10 g t:powder\"]\n")
	require.NoError(t, err)
	assert.Equal(t, "t:powder", r.Called[ofFood("t", "powder")])
	assert.Equal(t, "Lemon", r.Called[ofFood("t", "lemon")])
}

// A component that uses itself is the parser's fault to tell, and no endless walk.
func TestACycleEnds(t *testing.T) {
	const text = "drink: x\nserves: 1\ncomponents:\n  a: {ingredients: [10 g b]}\n  b: {ingredients: [10 g a]}\nbuild: [10 g a]\n"
	assert.Contains(t, assaytest.Refused(t, shelf(), text), "a")
}
