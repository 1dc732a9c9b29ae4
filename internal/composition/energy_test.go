package composition_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// Regulation (EU) No 1169/2011, annex XIV: kJ and kcal of a gram. Water, ash and gas bring
// none.
var annexXIV = []struct {
	id       constituent.ID
	kJ, kcal float64
}{
	{"SUCS", 17, 4}, {"STARCH", 17, 4}, {"SORTL", 10, 2.4}, {"ERYTHL", 0, 0}, {"PROCNT", 17, 4}, {"FASAT", 37, 9}, {"FAT-other", 37, 9},
	{"ALC", 29, 7}, {"CITAC", 13, 3}, {"OA-other", 13, 3}, {"FIBTG", 8, 2}, {"WATER", 0, 0}, {"ASH", 0, 0}, {"CO2", 0, 0},
}

func TestEnergyOfAGram(t *testing.T) {
	for _, row := range annexXIV {
		pot, _ := assaytest.Pot(20, assaytest.Poured{Code: "pure", Grams: 3, SD: 0.1, Holds: grams{row.id: 1}})
		f := compose(t, &composition.Meter{}, pot, estimate.Constant(pot.N, 2), 10, "ENERC", "ENERC_KCAL")
		assert.InDelta(t, 15*row.kJ, f["ENERC"].Mean, 1e-9, row.id)
		assert.InDelta(t, 15*row.kcal, f["ENERC_KCAL"].Mean, 1e-9, row.id)
		same(t, over(pot.Mass(), 5*row.kJ, 0, estimate.Constant(pot.N, 1)), f["ENERC"].Summary)
		assert.False(t, f["ENERC"].Partial || f["ENERC"].Unknown)
		assert.Equal(t, 1.0, f["ENERC"].Coverage)
	}
}

// What is unknown may bring as much as the richest of it: fat 37 kJ, carbohydrate, of which
// none is richer than sugars, 17. What is unknown inside a known total is not missing.
func TestUnknownEnergyIsUpToItsRichest(t *testing.T) {
	for id, kJ := range map[constituent.ID]float64{"FAT": 37, "CHOCDF": 17, "ALC": 29, "PROCNT": 17} {
		pot, _ := assaytest.Pot(draws, assaytest.Poured{Code: "half", Grams: 100, SD: 4, Holds: grams{"WATER": 0.8, "SUCS": 0.1, "MASS-other": 0.1}, Most: grams{id: 0.05}})
		if id == "CHOCDF" {
			pot, _ = assaytest.Pot(draws, assaytest.Poured{Code: "half", Grams: 100, SD: 4, Holds: grams{"WATER": 0.8, "PROCNT": 0.1, "MASS-other": 0.1}, Most: grams{id: 0.05}})
		}
		one := estimate.Constant(pot.N, 1)
		f := compose(t, &composition.Meter{}, pot, one, 1, "ENERC", "ENERC_KCAL")
		e := f["ENERC"]
		assert.InDelta(t, 170, e.Mean, 1e-9, id)
		assert.True(t, e.Partial, id)
		assert.False(t, e.Unknown, id)
		assert.InDelta(t, 170+5*kJ, e.WithBounds, 1e-9, id)
		assert.InDelta(t, 170/(170+5*kJ), e.Coverage, 1e-9, id)
		energy := pot.Total("SUCS")
		if id == "CHOCDF" {
			energy = pot.Total("PROCNT")
		}
		assert.InDelta(t, over(energy, 17, 5*kJ/17, one).High, e.UpTo, 1e-9, id)
		per100 := compose(t, &composition.Meter{}, pot, estimate.Constant(pot.N, 50), 100, "ENERC")["ENERC"]
		assert.InDelta(t, 2*e.WithBounds, per100.WithBounds, 1e-9, id)
		assert.InDelta(t, 2*e.UpTo, per100.UpTo, 1e-9, id)
	}
	within, _ := assaytest.Pot(0, assaytest.Poured{Code: "fat", Grams: 10, Holds: grams{"FAT-other": 1}, Most: grams{"FASAT": 1, "WATER": 0}})
	e := compose(t, &composition.Meter{}, within, estimate.Constant(1, 1), 1, "ENERC")["ENERC"]
	assert.False(t, e.Partial)

	nobody, _ := assaytest.Pot(0, assaytest.Poured{Code: "tin", Grams: 10, Holds: grams{"MASS-other": 1}, Most: grams{"FAT": 0.5, "CHOCDF": math.NaN()}})
	e = compose(t, &composition.Meter{}, nobody, estimate.Constant(1, 1), 1, "ENERC")["ENERC"]
	assert.True(t, e.Unknown)
	assert.Equal(t, estimate.Unknown, e.State)
	assert.True(t, math.IsNaN(e.WithBounds) && math.IsNaN(e.UpTo) && math.IsNaN(e.Coverage))
	sugar, _ := assaytest.Pot(0, assaytest.Poured{Code: "crumb", Grams: 0.001, Holds: grams{"SUCS": 0.9, "MASS-other": 0.1}, Most: grams{"FAT": 0.1}})
	e = compose(t, &composition.Meter{}, sugar, estimate.Constant(1, 1), 1, "ENERC")["ENERC"]
	assert.False(t, e.Unknown, "little is not nothing")
	assert.Equal(t, estimate.Calculated, e.State)
}

// A table's own figure goes with its food: of half of it there is half, and of what a step
// took some of there is the ratio of the whole food. Who prints none and brings some is
// named, once.
func TestEnergyAsPrinted(t *testing.T) {
	printed := func(kcal float64) []food.Value {
		return []food.Value{{Constituent: "ENERC_KCAL", Amount: kcal, State: estimate.Measured}}
	}
	syrup := assaytest.Poured{Code: "syrup", Grams: 50, Holds: grams{"WATER": 0.5, "SUCS": 0.3, "ALC": 0.2}, Values: printed(270)}
	silent := assaytest.Poured{Code: "silent", Grams: 10, Holds: grams{"SUCS": 1}}
	water := assaytest.Poured{Code: "water", Grams: 100, Holds: grams{"WATER": 1}}
	zero := assaytest.Poured{Code: "zero", Grams: 100, Holds: grams{"WATER": 1}, Values: printed(0)}
	pot, _ := assaytest.Pot(3, syrup, silent, silent, water, zero)
	e := composition.PrintedEnergy(pot, constituent.EnergyKcal)
	assert.Equal(t, constituent.EnergyKcal, e.ID)
	assert.InDelta(t, 135, e.Amount, 1e-9)
	assert.Equal(t, []string{"own:silent"}, e.Missing, "a water brings none")
	kJ := composition.PrintedEnergy(pot, constituent.Energy)
	assert.InDelta(t, 135*4.184, kJ.Amount, 1e-9)
	assert.True(t, kJ.Converted && !e.Converted)
	assert.Equal(t, e.Missing, kJ.Missing)

	// By the rules a gram of the syrup has 4·0.3 kcal in its sugar and 7·0.2 in its alcohol:
	// without its alcohol the former is left.
	clear(pot.Write(0, pot.Columns.At("ALC")))
	assert.InDelta(t, 135*1.2/2.6, composition.PrintedEnergy(pot, constituent.EnergyKcal).Amount, 1e-9)

	unsaid, _ := assaytest.Pot(0, assaytest.Poured{Code: "trace", Grams: 10, Holds: grams{"SUCS": 1}, Values: printed(food.None)})
	assert.Equal(t, []string{"own:trace"}, composition.PrintedEnergy(unsaid, constituent.EnergyKcal).Missing)
}

// The column of an energy is that of its rows, in its own unit; of a constituent the grams.
func TestColumnsOfAPot(t *testing.T) {
	pot := cordial()
	for _, c := range vocabulary("ENERC", "ENERC_KCAL", "OA", "CITAC") {
		col := composition.ColumnOf(pot, c)
		assert.Equal(t, col, composition.TotalsOf(pot, vocabulary("OA", "CITAC", "ENERC", "ENERC_KCAL"))[c.ID])
		for _, d := range []int{0, 7, draws} {
			sugar, acid := pot.Total("SUCS")[d], pot.Total("OA")[d]
			want := map[constituent.ID]float64{"ENERC": 17*sugar + 13*acid, "ENERC_KCAL": 4*sugar + 3*acid, "OA": acid, "CITAC": pot.Total("CITAC")[d]}[c.ID]
			assert.InDelta(t, want, col[d], 1e-9, fmt.Sprint(c.ID, d))
		}
	}
}
