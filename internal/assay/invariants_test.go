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
)

// exact is the difference that rounding of floating point numbers may make.
const exact = 1e-9

func TestContributionsSumToTotals(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(assaytest.WholeDrink, 2), 200)
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
			assaytest.RowsSumTo(t, a.Serving, c)
		}
	}
}

func TestComponentsSumToTheServing(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(assaytest.WholeDrink, 2), 50)
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

func TestServingTimesServesIsTheBuild(t *testing.T) {
	lib := assaytest.Core(t)
	build, each := assaytest.Assay(t, lib, fmt.Sprintf(assaytest.WholeDrink, 1), 100), assaytest.Assay(t, lib, fmt.Sprintf(assaytest.WholeDrink, 4), 100)
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
	few, many := cells(assaytest.Assay(t, lib, fmt.Sprintf(assaytest.WholeDrink, 2), 200)), cells(assaytest.Assay(t, lib, fmt.Sprintf(assaytest.WholeDrink, 2), 1000))
	require.Len(t, many, len(few))
	for key, column := range few {
		require.Equal(t, column, many[key][:201], key)
	}
}

func TestOneSeedGivesOneResult(t *testing.T) {
	lib := assaytest.Core(t)
	text := fmt.Sprintf(assaytest.WholeDrink, 2)
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
