package assay_test

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/ledger"
)

// exact is the difference that rounding of floating point numbers may make.
const exact = 1e-9

// wholeDrink uses nested components, steps, an own food, volumes, a share and
// an eaten garnish.
const wholeDrink = `
drink: "Slow Ferry"
serves: %d
foods:
  house:
    name: "House oat"
    group: plant drink
    per: 100 ml
    density: 1.03 g/ml
    values: {FAT: 1.5 g, CHOAVL: 5.6 g, SUGAR: 3.1 g, PROCNT: 0.8 g, NA: 40 mg}
    source: "invented"
components:
  syrup:
    ingredients: [200 g core:orange-juice, 120 g core:sugar-white, 2.0 g ± 0.1 g core:citric-acid]
    steps:
      - reduce: {by: 12 %%}
      - strain: {collect: 240 g, through: cloth}
  base:
    ingredients: [150 g core:milk-whole, 60 g ± 3 g syrup, 5 %% core:honey]
    steps:
      - heat: {code: 2151}
      - split: {keep: {FAT: 20 %% ± 5 %%}, because: "invented"}
build: [36 g ± 2 g core:espresso, 90 g base, 25 g syrup, 60 ml own:house]
finish:
  - chill: {melt: 20 g ± 5 g}
garnish:
  - {food: "core:honey", amount: 3 g, eaten: true}
`

func TestContributionsSumToTotals(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(wholeDrink, 2), 200)
	for _, f := range a.PerServing {
		sum, shares := 0.0, 0.0
		for _, c := range f.Contributions {
			sum += c.Mean
			shares += c.Share.Mean
		}
		assert.InDelta(t, f.Mean, sum, exact*max(1, f.Mean), "%s", f.Constituent.ID)
		if f.Mean > 0 {
			assert.InDelta(t, 1, shares, exact, "%s", f.Constituent.ID)
		}
	}
	for _, c := range constituent.All() {
		if c.Kind != constituent.Figure {
			rowsSumTo(t, a.Serving, c)
		}
	}
}

func TestComponentsSumToTheServing(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(wholeDrink, 2), 50)
	mass := 0.0
	for _, c := range a.Components {
		mass += c.Mass.Mean
	}
	assert.InDelta(t, a.Mass.Mean, mass, exact*a.Mass.Mean)
	for _, f := range a.PerServing {
		sum := 0.0
		for _, c := range a.Components {
			sum += assaytest.Figure(t, c.Constituents, f.Constituent.ID).Mean
		}
		assert.InDelta(t, f.Mean, sum, exact*max(1, f.Mean), "%s", f.Constituent.ID)
	}
}

// rowsSumTo checks, in each draw, that the rows of a pot are its total and that
// a parent is the sum of its children.
func rowsSumTo(t *testing.T, pot *ledger.Pot, c *constituent.Constituent) {
	t.Helper()
	total := pot.Total(c.ID)
	rows, children := make([]float64, pot.N), make([]float64, pot.N)
	for row := range pot.Rows {
		for d, x := range pot.Of(row, c.ID) {
			rows[d] += x
		}
	}
	for _, child := range constituent.Sums().Children(c.ID) {
		for d, x := range pot.Total(child.ID) {
			children[d] += x
		}
	}
	for d := range total {
		slack := exact * max(1, total[d])
		require.InDelta(t, total[d], rows[d], slack, "rows of %s, draw %d", c.ID, d)
		if c.Kind == constituent.Parent {
			require.InDelta(t, total[d], children[d], slack, "parts of %s, draw %d", c.ID, d)
		}
	}
}

func TestServingTimesServesIsTheBuild(t *testing.T) {
	lib := assaytest.Core(t)
	build, each := assaytest.Assay(t, lib, fmt.Sprintf(wholeDrink, 1), 100), assaytest.Assay(t, lib, fmt.Sprintf(wholeDrink, 4), 100)
	const serves = 4
	// 36 + 90 + 25 g, 60 ml of 1.03 g/ml, 20 g of ice, 3 g of honey.
	assert.InDelta(t, 36+90+25+60*1.03+20+3, build.Mass.Mean, 1e-6)
	assert.InDelta(t, build.Mass.Mean, serves*each.Mass.Mean, exact*build.Mass.Mean)
	assert.InDelta(t, build.Volume.Mean, serves*each.Volume.Mean, exact*build.Volume.Mean)
	for _, f := range build.PerServing {
		one := assaytest.Figure(t, each.PerServing, f.Constituent.ID)
		assert.InDelta(t, f.Mean, serves*one.Mean, exact*max(1, f.Mean), "%s", f.Constituent.ID)
		assert.InDelta(t, f.High, serves*one.High, exact*max(1, f.High), "%s", f.Constituent.ID)
		per := assaytest.Figure(t, each.Per100g, f.Constituent.ID)
		assert.InDelta(t, one.Mean, per.Mean*each.Mass.Mean/100, exact*max(1, one.Mean), "%s per 100 g", f.Constituent.ID)
		per = assaytest.Figure(t, each.Per100ml, f.Constituent.ID)
		assert.InDelta(t, one.Mean, per.Mean*each.Volume.Mean/100, exact*max(1, one.Mean), "%s per 100 ml", f.Constituent.ID)
	}
}

// cells gives every column of a serving by its line and constituent.
func cells(a *assay.Assay) map[string][]float64 {
	all := map[string][]float64{}
	for row, r := range a.Serving.Rows {
		for col, c := range a.Serving.Columns.List {
			all[fmt.Sprint(r.Path, r.Line, c.ID)] = a.Serving.Cell(row, col)
		}
	}
	return all
}

func TestAddedLineChangesNoDrawOfTheOthers(t *testing.T) {
	lib := assaytest.Core(t)
	const before = "drink: \"Two\"\nserves: 1\nbuild: [%s 40 g ± 2 g core:orange-juice, 30 g core:milk-whole %s]\n"
	alone := cells(assaytest.Assay(t, lib, fmt.Sprintf(before, "", ""), 300))
	for _, more := range [][2]string{{"5 g core:lemon-juice,", ""}, {"", ", 36 g core:espresso"}, {"10 g core:vodka-40,", ", 20 g core:honey, 9 g core:cream-heavy"}} {
		with := cells(assaytest.Assay(t, lib, fmt.Sprintf(before, more[0], more[1]), 300))
		require.Greater(t, len(with), len(alone))
		for key, column := range alone {
			require.Equal(t, column, with[key], key)
		}
	}
}

func TestFewerDrawsAreTheFirstOfMore(t *testing.T) {
	lib := assaytest.Core(t)
	few, many := cells(assaytest.Assay(t, lib, fmt.Sprintf(wholeDrink, 2), 200)), cells(assaytest.Assay(t, lib, fmt.Sprintf(wholeDrink, 2), 1000))
	require.Len(t, many, len(few))
	for key, column := range few {
		require.Equal(t, column, many[key][:201], key)
	}
}

func TestOneSeedGivesOneResult(t *testing.T) {
	lib := assaytest.Core(t)
	text := fmt.Sprintf(wholeDrink, 2)
	a, again := assaytest.Assay(t, lib, text, 10), assaytest.Assay(t, lib, text, 10)
	assert.Equal(t, cells(a), cells(again))
	d, faults := drink.Parse("test", []byte(text), nil)
	other, err := assaytest.Run(context.Background(), d, faults, lib, assaytest.Options{Draws: 10, Seed: 2})
	require.NoError(t, err)
	sugar, otherSugar := a.Serving.Total("SUGAR"), other.Serving.Total("SUGAR")
	assert.Equal(t, sugar[0], otherSugar[0], "central values do not hang on the seed")
	assert.NotEqual(t, sugar[1:], otherSugar[1:])
}

// Half of a component's volume is half of its mass.
func TestVolumeOfAComponentIsItsMassOverItsDensity(t *testing.T) {
	lib := assaytest.Core(t)
	const text = "drink: \"Poured\"\nserves: 1\ncomponents:\n  syrup:\n    ingredients: [100 g core:orange-juice, 100 g core:sugar-white]\nbuild: [%s syrup]\n"
	whole := assaytest.Assay(t, lib, fmt.Sprintf(text, "200 g"), 50)
	assert.InDelta(t, whole.Mass.Mean, whole.Volume.Mean*whole.Density.Mean, exact*whole.Mass.Mean)
	half := assaytest.Assay(t, lib, fmt.Sprintf(text, fmt.Sprintf("%.9f ml", whole.Volume.Mean/2)), 50)
	assert.InDelta(t, 100, half.Mass.Mean, 1e-6)
}
