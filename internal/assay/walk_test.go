package assay_test

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// A food has one density and one portion, whoever pours it: lines of it go wrong together,
// and a portion goes wrong by itself.
func TestAFoodHasOneDensityWhoeverPoursIt(t *testing.T) {
	lib := assaytest.Library{}
	plum := &food.Food{
		ID: food.ID{Table: "t", Code: "plum"}, Edible: food.None, Density: food.Density{GramsPerMl: 1.1, SD: 0.1}, Chemical: true,
		Portions: []food.Portion{{Name: "slice", Grams: 7, SD: 1}, {Name: "fruit", Grams: 60, SD: food.None}},
	}
	lib[plum.ID] = plum
	a := assaytest.Assay(t, lib, `drink: x
serves: 1
build:
  - 50 ml ± 0.0000001 ml t:plum
  - 20 ml ± 0.0000001 ml t:plum
  - {food: "t:plum", portion: slice, count: 3}
  - {food: "t:plum", portion: slice, count: 1}
  - {food: "t:plum", portion: fruit, count: 1/2}
  - 10 g ± 0.0000001 g t:plum
`, 500)
	rows := make([][]float64, len(a.Serving.Rows))
	for i := range rows {
		rows[i] = a.Serving.Only(func(row int) bool { return row == i }).Mass()
	}
	require.Len(t, rows, 6)
	for i, want := range []float64{55, 22, 21, 7, 30, 10} {
		assert.InDelta(t, want, rows[i][0], 1e-6)
	}
	for d := range rows[0] {
		require.InDelta(t, 2.5, rows[0][d]/rows[1][d], 1e-6)
		require.InDelta(t, 3, rows[2][d]/rows[3][d], 1e-6)
		require.InDelta(t, 30, rows[4][d], 1e-6, "nobody says how far a fruit is off")
		require.InDelta(t, 10, rows[5][d], 1e-6)
	}
	assert.InDelta(t, 5, stat.StdDev(rows[0][1:], nil), 0.5, "50 ml of ± 0.1 g/ml")
	assert.InDelta(t, 3, stat.StdDev(rows[2][1:], nil), 0.3, "three slices of ± 1 g")
	assert.InDelta(t, 0, stat.Correlation(rows[0][1:], rows[2][1:], nil), 0.15)
}

// Shares are of the other lines of the same list, draw by draw.
func TestAShareIsOfTheOtherLines(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), `drink: x
serves: 1
components:
  pot: {ingredients: [40 g ± 4 g core:water-pure, 60 g ± 6 g core:sugar-white, 10 % ± 0.0000001 % core:honey, 5 % ± 0.0000001 % core:salt]}
build: [230 g pot]
`, 100)
	of := func(code string) []float64 {
		return a.Serving.Only(func(row int) bool { return a.Serving.Rows[row].Profile.Food.ID.Code == code }).Mass()
	}
	water, sugar, honey, salt := of("water-pure"), of("sugar-white"), of("honey"), of("salt")
	assert.InDelta(t, 20, honey[0], 1e-6, "230 g of which 115 parts are 100, 10 and 5")
	for d := range water {
		require.InDelta(t, 0.10*(water[d]+sugar[d]), honey[d], 1e-6)
		require.InDelta(t, 0.05*(water[d]+sugar[d]), salt[d], 1e-6)
	}
}

// Where milk curdles is asked of what is poured together, as warm as it is said to be; what a
// component has curdled already is asked no more.
func TestWhatIsAskedOfAPour(t *testing.T) {
	lib := assaytest.Core(t)
	a := assaytest.Assay(t, lib, "drink: x\nserves: 1\nat: 40 °C\nbuild: [100 g core:milk-whole, 20 g core:lemon-juice]\n", 10)
	require.NotNil(t, a.Curdling)
	assert.False(t, a.Curdling.Assumed)
	assert.Equal(t, 40.0, a.Curdling.Celsius)
	assert.Len(t, a.Curdling.Milk, 1)
	a = assaytest.Assay(t, lib, "drink: x\nserves: 1\nbuild: [100 g core:milk-whole, 20 g core:lemon-juice]\n", 10)
	require.NotNil(t, a.Curdling)
	assert.True(t, a.Curdling.Assumed)
	const veil = "drink: x\nserves: 1\ncomponents:\n  veil:\n    ingredients: [200 g core:milk-whole, 8 g core:lemon-juice]\n    steps: [%s]\n  outer: {ingredients: [100 g veil]}\nbuild: [90 g outer, 10 g core:lemon-juice]\n"
	assert.Nil(t, assaytest.Assay(t, lib, fmt.Sprintf(veil, "curdle: {collect: 160 g, by: acid, at: 63 °C}"), 10).Curdling)
	assert.NotNil(t, assaytest.Assay(t, lib, fmt.Sprintf(veil, "strain: {collect: 160 g, through: metal}"), 10).Curdling)
}

func TestNothingIsSetAgainstWhatIsNotInTheDrink(t *testing.T) {
	const text = "drink: x\nserves: 1\ncompare-with: %s\ncomponents:\n  spare: {ingredients: [10 g core:espresso]}\n  inner: {ingredients: [10 g core:espresso, 10 g core:honey]}\n  outer: {ingredients: [10 g inner, 30 g core:water-pure]}\nbuild: [20 g outer]\n"
	lib := assaytest.Core(t)
	assert.Contains(t, assaytest.Refused(t, lib, fmt.Sprintf(text, "spare")), `compare-with names "spare", and no line of the drink uses it`)
	inner := assaytest.Assay(t, lib, fmt.Sprintf(text, "inner"), 10)
	require.NotNil(t, inner.Alone)
	assert.InDelta(t, 5, inner.Alone.Mass.Mean, 1e-9)
	assert.Equal(t, "inner", inner.Alone.Name)
	assert.True(t, inner.Alone.House)
	outer := assaytest.Assay(t, lib, fmt.Sprintf(text, "outer"), 10)
	require.NotNil(t, outer.Alone)
	assert.InDelta(t, 20, outer.Alone.Mass.Mean, 1e-9)
	assert.Empty(t, outer.Also)
	both := assaytest.Assay(t, lib, fmt.Sprintf(text, "[outer, inner]"), 10)
	require.NotNil(t, both.Alone)
	assert.Equal(t, outer.Alone.Mass, both.Alone.Mass, "the first, as it is without the other")
	require.Len(t, both.Also, 1)
	assert.Equal(t, inner.Alone.Mass, both.Also[0].Mass)
	assert.Equal(t, "inner", both.Also[0].Name)
}

// What has not changed is not made again, nor solved: a run with another amount of the build
// does not do its steps, counted in what it allocates.
func TestUnchangedComponentsAreNotMadeAgain(t *testing.T) {
	const text = `drink: x
serves: 1
components:
  inner:
    ingredients: [100 g core:orange-juice, 50 g core:sugar-white, 10 g core:lemon-juice]
    steps: [reduce: {by: 10 %}, strain: {collect: 120 g, through: cloth}, invert: {share: 40 %}, reduce: {by: 5 %}, strain: {collect: 90 g, through: paper}]
  outer:
    ingredients: [40 g inner, 60 g core:plum-juice, 30 g core:espresso]
    steps: [strain: {collect: 120 g, through: cloth}, reduce: {by: 10 %}, strain: {collect: 90 g, through: paper}, reduce: {by: 5 %}]
build: [20 g outer]
`
	plan := planOf(t, assaytest.Core(t), text, 50)
	run(t, plan, assay.Want{})
	step := 0.0
	again := func(path string) float64 {
		return testing.AllocsPerRun(3, func() {
			other := plan.Written()[path]
			step += 0.01
			other.Number += step
			_, err := plan.Run(context.Background(), amount.Amounts{path: other}, assay.Want{Figures: []constituent.ID{"SUGAR"}})
			require.NoError(t, err)
		})
	}
	build, outer, inner := again("build/outer"), again("outer/core:espresso"), again("inner/core:sugar-white")
	t.Logf("%g, %g and %g allocations", build, outer, inner)
	const steps = 100 // what four steps allocate, at the least
	assert.Less(t, build+steps, outer, "neither component is made again")
	assert.Less(t, outer+steps, inner, "what is in another is not made again with it")
}
