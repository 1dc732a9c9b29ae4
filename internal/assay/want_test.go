package assay_test

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/note"
)

// quay is a sparkling drink with milk, a house-made syrup that is kept, and one that no line
// uses.
const quay = `
drink: "Low Quay"
serves: 2
glass: 60 ml
at: 5 °C
components:
  syrup:
    ingredients: [60 g core:lemon-juice, 60 g core:sugar-white]
    steps: [strain: {collect: 100 g, through: cloth}, add: 1 g core:salt]
    measured: {ph: 2.4}
    keeps: 5 days at 4 °C
  spare:
    ingredients: [10 g core:espresso]
    steps: [reduce: {by: 10 %}]
build: [20 g syrup, 120 g core:water-pure, 10 g core:milk-whole]
finish: [carbonate: {left: 2 g/l}, chill: {melt: 10 g}]
`

func run(t testing.TB, plan *assay.Plan, want assay.Want) *assay.Assay {
	t.Helper()
	a, err := plan.Run(context.Background(), nil, want)
	require.NoError(t, err)
	return a
}

// What is asked for decides what is given, never what it is.
func TestWhatIsWantedIsGiven(t *testing.T) {
	plan := planOf(t, assaytest.Core(t), quay, 30)
	whole := run(t, plan, assay.Want{Whole: true, Intervals: true, Chemistry: true, Degassed: true})
	brief := run(t, plan, assay.Want{Figures: []constituent.ID{"CITAC", "CAFFN"}, Intervals: true})

	assert.Nil(t, brief.Chemistry)
	assert.Nil(t, brief.Curdling)
	assert.Nil(t, brief.Per100g)
	assert.Nil(t, brief.Alone)
	for _, c := range brief.Components {
		assert.Nil(t, c.Chemistry)
		var ids []constituent.ID
		for _, f := range c.Constituents {
			ids = append(ids, f.Constituent.ID)
		}
		assert.ElementsMatch(t, []constituent.ID{"ENERC", "CITAC", "CAFFN"}, ids, c.Name)
	}
	assert.Equal(t, whole.Mass, brief.Mass)
	assert.Equal(t, whole.Volume, brief.Volume)
	for _, f := range brief.PerServing {
		g := assaytest.Figure(t, whole.PerServing, f.Constituent.ID)
		assert.Empty(t, assaytest.Differ(g.Result, f.Result), f.Constituent.ID)
		detailed := f.Constituent.ID == "ENERC" || f.Constituent.ID == "CITAC" || f.Constituent.ID == "CAFFN"
		shares := 0.0
		for _, part := range f.Contributions {
			shares += part.Share.Mean
		}
		switch {
		case !detailed && len(f.Contributions) > 0:
			assert.True(t, math.IsNaN(shares), "shares of %s", f.Constituent.ID)
		case detailed && f.Mean > 0:
			assert.InDelta(t, 1, shares, 1e-9, "shares of %s", f.Constituent.ID)
		}
	}
	sugar, inWhole := assaytest.Figure(t, brief.Per100ml, "SUGAR"), assaytest.Figure(t, whole.Per100ml, "SUGAR")
	assert.Equal(t, inWhole.Mean, sugar.Mean)
	assert.InDelta(t, assaytest.Figure(t, whole.PerServing, "SUGAR").Mean/whole.Mass.Mean*100, assaytest.Figure(t, whole.Per100g, "SUGAR").Mean, 1e-9)
	assert.NotEqual(t, inWhole.Low, sugar.Low, "its interval costs, and nobody asked")

	require.NotNil(t, whole.Chemistry)
	assert.NotNil(t, whole.Curdling, "milk and lemon")
	assert.Equal(t, 5.0, whole.Chemistry.Celsius)
	assert.NotZero(t, whole.Chemistry.Degassed)
	assert.Zero(t, run(t, plan, assay.Want{Chemistry: true}).Chemistry.Degassed)
	for _, c := range whole.Components {
		assert.Equal(t, c.House, c.Chemistry != nil, c.Name)
		if c.House {
			require.NotNil(t, c.Chemistry.Keeping)
			require.NotNil(t, c.Chemistry.Keeping.Holding)
			assert.InDelta(t, 2.4, c.Chemistry.Keeping.Holding.PH, 0.2, "as it was read")
			assert.Equal(t, 5.0, c.Chemistry.Celsius)
			assert.Nil(t, whole.Chemistry.Keeping)
		}
	}
}

// A still drink has no gas to lose, and one without a temperature is at a meter's.
func TestAStillDrinkIsNotDegassed(t *testing.T) {
	a := run(t, planOf(t, assaytest.Core(t), "drink: x\nserves: 1\nbuild: [10 g core:lemon-juice, 90 g core:water-pure]\n", 30), assay.Want{Chemistry: true, Degassed: true})
	assert.Zero(t, a.Chemistry.Degassed)
	assert.Equal(t, 25.0, a.Chemistry.Celsius)
}

// Of what is surely not in a drink whoever asks for the whole is told so; what nobody knows
// is not listed, unless somebody wants it.
func TestTheWholeListsWhatThereIsSurelyNone(t *testing.T) {
	const text = "drink: x\nserves: 1\nfoods:\n  a: {name: A, per: 100 g, values: {WATER: 90 g, CAFFN: 0 mg, SUCS: 10 g}, source: invented}\nbuild: [50 g own:a]\n"
	has := func(list composition.Composition, id constituent.ID) bool { _, ok := list.Find(id); return ok }
	plan := planOf(t, assaytest.Core(t), text, 10)
	whole, brief, asked := run(t, plan, assay.Want{Whole: true}), run(t, plan, assay.Want{}), run(t, plan, assay.Want{Figures: []constituent.ID{"VITC"}})
	assert.True(t, has(whole.PerServing, "SUCS"))
	assert.True(t, has(brief.PerServing, "SUCS"))
	assert.True(t, has(whole.PerServing, "CAFFN"))
	assert.False(t, has(brief.PerServing, "CAFFN"))
	assert.False(t, has(whole.PerServing, "VITC"), "nobody knows")
	assert.True(t, has(asked.PerServing, "VITC"))
	for _, list := range []composition.Composition{whole.PerServing, brief.PerServing} {
		assert.False(t, has(list, constituent.Mass))
		assert.True(t, has(list, constituent.Energy))
		assert.True(t, has(list, constituent.EnergyKcal))
	}
}

func textsOf(a *assay.Assay, kind string) []string {
	var texts []string
	for _, n := range a.Notes {
		if n.Kind == kind {
			texts = append(texts, n.Text)
		}
	}
	return texts
}

func TestAGlassThatOverflowsIsSaid(t *testing.T) {
	plan := planOf(t, assaytest.Core(t), quay, 10)
	a := run(t, plan, assay.Want{})
	assert.Equal(t, []string{"a serving of " + note.Number(a.Volume.Mean) + " ml overflows a glass of 60 ml"}, textsOf(a, "glass"))
	less, err := plan.Run(context.Background(), amount.Amounts{"build/core:water-pure": amountOf(t, "50 g")}, assay.Want{})
	require.NoError(t, err)
	assert.Empty(t, textsOf(less, "glass"))
}

// What a pantry brings and the drink does not use is not in it.
func TestComponentsThatAreInTheDrink(t *testing.T) {
	a := run(t, planOf(t, assaytest.Core(t), quay, 10), assay.Want{})
	assert.Equal(t, map[string]bool{"syrup": true}, a.Used())
}

// What nobody knows is said with whom it hangs on, and how much it can be.
func TestWhatIsUnknownIsSaid(t *testing.T) {
	const text = `drink: x
serves: 1
foods:
  a: {name: A, per: 100 g, values: {WATER: 80 g, CHOAVL: 20 g, CAFFN: 10 mg}, source: invented}
  b: {name: B, per: 100 g, values: {WATER: 80 g, CHOAVL: 20 g}, source: invented}
  c: {name: C, per: 100 g, values: {WATER: 80 g, CHOAVL: 20 g}, source: invented}
build: [50 g own:a, 20 g own:b, 10 g own:b, 5 g own:c]
`
	a := run(t, planOf(t, assaytest.Core(t), text, 10), assay.Want{Figures: []constituent.ID{"SUGAR", "CAFFN"}})
	seen := map[constituent.ID]bool{}
	for _, n := range a.Notes {
		if n.Kind != "unknown" {
			continue
		}
		seen[n.Constituent] = true
		f := assaytest.Figure(t, a.PerServing, n.Constituent)
		assert.Contains(t, n.Text, f.Constituent.Name+" is not known in every food")
		if math.IsNaN(f.UpTo) {
			assert.Contains(t, n.Text, "nothing bounds it")
		} else {
			assert.Contains(t, n.Text, ": up to "+note.Number(f.UpTo)+" "+f.Unit+" a serving")
		}
		switch n.Constituent {
		case "CAFFN":
			assert.Equal(t, []string{"own:b", "own:c"}, n.Foods)
		case "SUGAR":
			assert.Equal(t, []string{"own:a", "own:b", "own:c"}, n.Foods)
		}
	}
	assert.True(t, seen["CAFFN"])
	assert.True(t, seen["SUGAR"])
	assert.False(t, seen["CHOAVL"])
	for _, id := range []constituent.ID{"CAFFN", "SUGAR"} {
		mean, most, known := a.AmountOf(id)
		f := assaytest.Figure(t, a.PerServing, id)
		assert.InDelta(t, f.Mean, mean, 1e-9)
		assert.InDelta(t, f.WithBounds, most, 1e-6)
		assert.Equal(t, id == "CAFFN", known, id)
	}
}

// How a food entered is told of those that are in the drink, by the name that the page has.
func TestHowFoodsEnteredIsTold(t *testing.T) {
	with := run(t, planOf(t, assaytest.Core(t), "drink: x\nserves: 1\nfoods:\n  a: {name: A, group: fruit juice, fill: \"core:lemon-juice\", per: 100 g, values: {WATER: 90 g}, source: invented}\nbuild: [10 g own:a, 5 g own:a]\n", 10), assay.Want{})
	told := 0
	for _, n := range with.Notes {
		if len(n.Foods) == 1 && n.Foods[0] == "own:a" && n.Kind != "unknown" {
			told++
			assert.Regexp(t, "^A: ", n.Text)
		}
	}
	assert.Positive(t, told)
}

// What a component is made of may come to nothing with other amounts; then it cannot be poured.
func TestAnEmptyComponentCannotBePoured(t *testing.T) {
	plan := planOf(t, assaytest.Core(t), "drink: x\nserves: 1\ncomponents: {pot: {ingredients: [10 g core:lemon-juice]}}\nbuild: [10 g pot]\n", 10)
	run(t, plan, assay.Want{})
	_, err := plan.Run(context.Background(), amount.Amounts{"pot/core:lemon-juice": amountOf(t, "0 g")}, assay.Want{})
	assert.ErrorContains(t, err, `component "pot" is empty (give it ingredients)`)
	run(t, plan, assay.Want{})
}

// What a food was analysed for is listed though there is none, and so is what a step took
// away: somebody looked, or there was some.
func TestWhatSomebodyLookedForIsListed(t *testing.T) {
	lib := assaytest.Library{}
	value := func(id constituent.ID, amount float64, state estimate.State) food.Value {
		return food.Value{Constituent: id, Amount: amount, SD: food.None, Low: food.None, High: food.None, Limit: food.None, State: state}
	}
	f := &food.Food{
		ID: food.ID{Table: "t", Code: "a"}, Edible: food.None, Density: food.Density{GramsPerMl: food.None, SD: food.None},
		Values: []food.Value{
			value("WATER", 90, estimate.Calculated), value("FAT", 5, estimate.Calculated), value("CAFFN", 0, estimate.Measured), value("THEBRN", 0, estimate.Calculated), value("K", 80, estimate.Calculated),
		},
	}
	lib[f.ID] = f
	a := run(t, planOf(t, lib, "drink: x\nserves: 1\ncomponents: {pot: {ingredients: [\"100 g t:a\"], steps: [{split: {keep: {K: 0 %}, because: \"test\"}}]}}\nbuild: [50 g pot]\n", 10), assay.Want{})
	for id, listed := range map[constituent.ID]bool{"CAFFN": true, "THEBRN": false, "K": true} {
		f, ok := a.PerServing.Find(id)
		assert.Equal(t, listed, ok, id)
		assert.Zero(t, f.Mean, id)
	}
}

// A reading is of the state in which it was taken: what follows does not take it again.
func TestAReadingIsTakenOnce(t *testing.T) {
	a := run(t, planOf(t, assaytest.Core(t), walked["read and titrated"], 20), assay.Want{})
	var taken []string
	for _, r := range a.Readings {
		taken = append(taken, strings.Join(r.Path, "/")+" "+r.Kind)
	}
	assert.Equal(t, []string{"syrup mass", "syrup brix", "syrup ph"}, taken)
}
