package liquid_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/liquid"
)

// What no instrument reads, and why: data/refraction.csv has the limits. A pot is judged by
// all of its rows.
func TestWhyAPotIsNoLiquid(t *testing.T) {
	crystal := assaytest.Exact("crystal", "salt", figures{"WATER": 51})
	crystal.Chemical = true
	liquor := assaytest.Exact("liquor", "water", figures{"WATER": 100})
	liquor.Chemical = true
	unstated := assaytest.Exact("unstated", "", figures{"NA": 4})
	fruit := assaytest.Exact("fruit", "fruit", figures{"WATER": 60, "SUCS": 40})
	syrup := assaytest.Exact("syrup", "syrup", figures{"WATER": 60, "SUCS": 40})
	b := assaytest.NewBench(3, crystal, liquor, unstated, fruit, syrup, sugar, oil)
	for _, c := range []struct {
		name  string
		parts []part
		want  string
	}{
		{"a crystal with its water", []part{{crystal, 10}}, "it is a pure substance and no solution: the water of a crystal does not run"},
		{"a pure liquid", []part{{liquor, 10}}, ""},
		{"a crystal in a pure liquid", []part{{crystal, 10}, {liquor, 10}}, ""},
		{"a crystal in a syrup", []part{{crystal, 10}, {syrup, 10}}, ""},
		{"oil", []part{{oil, 10}}, "it is fat and next to no water: instruments for sugar and salt do not read it"},
		{"oil on water", []part{{oil, 10}, {nil, 10}}, ""},
		{"sugar", []part{{sugar, 10}}, "it is no liquid: 0 % of what is not fat is water or alcohol, a liquid holds 11 % or more"},
		{"a tin", []part{{unstated, 10}}, "nobody has stated the water of own:unstated"},
		{"a syrup", []part{{syrup, 10}}, ""},
	} {
		got := liquid.TooDry(pour(b, c.parts...))
		if c.name == "sugar" {
			assert.Regexp(t, `^it is no liquid: 0 % of what is not fat is water or alcohol, a liquid holds \d+ % or more$`, got)
			continue
		}
		assert.Equal(t, c.want, got, c.name)
	}
}

// A solid food holds its water: it has to be juicier than what runs, as it grew. Juice that
// was pressed, or fruit with water, is a liquid as any other.
func TestASolidFoodHoldsItsWater(t *testing.T) {
	flesh := assaytest.Exact("flesh", "fruit", figures{"WATER": 25, "SUCS": 75})
	same := assaytest.Exact("same", "syrup", figures{"WATER": 25, "SUCS": 75})
	b := assaytest.NewBench(3, flesh, same)
	assert.NotEmpty(t, liquid.TooDry(pour(b, part{flesh, 100})))
	assert.Empty(t, liquid.TooDry(pour(b, part{same, 100})))
	assert.Empty(t, liquid.TooDry(pour(b, part{flesh, 100}, part{same, 100})))
	assert.Empty(t, liquid.TooDry(pour(b, part{flesh, 100}, part{nil, 5})), "with water it is soaked")
	for share, dry := range map[float64]bool{0.999: true, 0.9: false} {
		pot := pour(b, part{flesh, 100})
		water := pot.Write(0, pot.Columns.At("WATER"))
		for d := range water {
			water[d] *= share
		}
		assert.Equal(t, dry, liquid.TooDry(pot) != "", "%g of its water", share)
	}
}

// stating gives a food of the drink file with a density.
func stating(code, group string, density, sd float64, of figures) *food.Food {
	f := assaytest.Exact(code, group, of)
	f.ID.Table, f.Density = food.Own, food.Density{GramsPerMl: density, SD: sd}
	return f
}

// What a food of the drink file states of its density is its density, as sure as that is; a
// table's is a household measure.
func TestAStatedDensityHasItsSpread(t *testing.T) {
	sure := stating("sure", "", 1.2, food.None, figures{"WATER": 90, "SUCS": 10})
	vague := stating("vague", "", 1.2, 0.06, figures{"WATER": 90, "SUCS": 10})
	table := stating("table", "", 1.2, 0, figures{"WATER": 90, "SUCS": 10})
	table.ID.Table = "test"
	b := assaytest.NewBench(200, sure, vague, table)
	for _, density := range b.Lab.Gauge.Density(pour(b, part{sure, 60})) {
		assert.InDelta(t, 1.2, density, 1e-9)
	}
	spread := estimate.Summarise(b.Lab.Gauge.Density(pour(b, part{vague, 60})))
	assert.InDelta(t, 1.2, spread.Mean, 1e-9)
	assert.InDelta(t, 0.06, spread.SD, 0.015)
	one, other := b.Lab.Gauge.Density(pour(b, part{vague, 60})), b.Lab.Gauge.Density(pour(b, part{vague, 20}, part{vague, 1}))
	assert.InDeltaSlice(t, one, other, 1e-9, "it has one, whoever pours it")
	assert.InDelta(t, 1.04, b.Lab.Gauge.Density(pour(b, part{table, 60}))[0], 0.01, "10 °Bx, ICUMSA")
}

// A powder brings its air into a vessel of its own and into nothing else; what is moist, an
// oil, and what is heavier than it looks bring theirs everywhere.
func TestWhatBringsItsAir(t *testing.T) {
	dust := stating("dust", "", 0.4, 0, figures{"WATER": 4, "STARCH": 96})
	foam := stating("foam", "", 0.4, 0, figures{"WATER": 40, "STARCH": 60})
	fat := stating("fat", "", 0.4, 0, figures{"WATER": 1, "FAT": 99})
	spirit := stating("spirit", "", 0.4, 0, figures{"WATER": 2, "ALC": 40, "STARCH": 58})
	stone := stating("stone", "", 3, 0, figures{"WATER": 4, "STARCH": 96})
	b := assaytest.NewBench(3, dust, foam, fat, spirit, stone)
	g := b.Lab.Gauge
	water := g.Volume(pour(b, part{nil, 100}))[0]
	for _, c := range []struct {
		food  *food.Food
		loose bool
		own   float64
	}{{dust, true, 25}, {foam, false, 25}, {fat, false, 25}, {spirit, false, 25}, {stone, false, 10. / 3}} {
		assert.InDelta(t, c.own, g.Volume(pour(b, part{c.food, 10}))[0], 1e-9, c.food.ID.Code)
		assert.InDelta(t, c.own, g.Volume(pour(b, part{c.food, 4}, part{c.food, 6}))[0], 1e-9, "two spoons of %s are one heap", c.food.ID.Code)
		assert.InDelta(t, c.own, g.Volume(pour(b, part{c.food, 10}, part{nil, 0}))[0], 1e-9, "nothing is mixed with %s", c.food.ID.Code)
		mixed := g.Volume(pour(b, part{c.food, 10}, part{nil, 100}))[0] - water
		if c.loose {
			assert.InDelta(t, 6.3, mixed, 0.3, "starch at 0.62 ml/g, data/specific_volumes.csv")
		} else {
			assert.InDelta(t, c.own, mixed, 0.9, c.food.ID.Code)
		}
	}
}

// As water leaves a food its stated density fades, evenly, and no more comes of water that
// was added: at half of the water content half of it is left.
func TestAStatedDensityFadesEvenly(t *testing.T) {
	heavy := stating("heavy", "", 1.2, 0, figures{"WATER": 80, "PROCNT": 20})
	plain := assaytest.Exact("plain", "", figures{"WATER": 80, "PROCNT": 20})
	b := assaytest.NewBench(3, heavy, plain)
	g := b.Lab.Gauge
	more := func(water float64) float64 { // of its volume, over what its composition takes up
		var ml [2]float64
		for i, f := range []*food.Food{heavy, plain} {
			pot := pour(b, part{f, 100})
			col := pot.Write(0, pot.Columns.At("WATER"))
			for d := range col {
				col[d] = water
			}
			ml[i] = g.Volume(pot)[0]
		}
		return ml[0]/ml[1] - 1
	}
	full := more(80)
	assert.Less(t, full, -0.1)
	assert.InEpsilon(t, full/2, more(20.0/1.5), 1e-6, "40 %, half of 80 %")
	assert.InEpsilon(t, full*0.8/(180./200), more(180), 1e-6, "90 %: as unlike as 80 to 90")
	assert.Zero(t, more(0))
}
