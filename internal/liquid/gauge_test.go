package liquid_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
)

type figures = map[constituent.ID]float64

var (
	sugar   = assaytest.Exact("sugar", "sugar", figures{"WATER": 0, "SUCS": 100})
	ethanol = assaytest.Exact("ethanol", "spirit", figures{"ALC": 100})
	salt    = assaytest.Exact("salt", "salt", figures{"WATER": 0, "ASH": 100})
	oil     = assaytest.Exact("oil", "oil", figures{"WATER": 0, "FAT": 100})
	// coffee is brewed elsewhere, and bean what water draws it from.
	coffee = assaytest.Exact("coffee", "coffee drink", figures{"WATER": 96, "CHOCDF": 2, "FAT": 1, "PROCNT": 1})
	tea    = assaytest.Exact("tea", "tea drink", figures{"WATER": 96, "CHOCDF": 2, "FAT": 1, "PROCNT": 1})
	bean   = assaytest.Exact("bean", "coffee bean", figures{"WATER": 2, "CHOCDF": 60, "FAT": 20, "PROCNT": 18})
	broth  = assaytest.Exact("broth", "other", figures{"WATER": 96, "CHOCDF": 2, "FAT": 1, "PROCNT": 1})
	hard   = assaytest.Exact("hard", "water", figures{"WATER": 99, "ASH": 1})
)

const draws = 60

func bench() *assaytest.Bench {
	return assaytest.NewBench(draws, sugar, ethanol, salt, oil, coffee, tea, bean, broth, hard)
}

// part is grams of a food; without one it is water.
type part struct {
	food  *food.Food
	grams float64
}

func pour(b *assaytest.Bench, parts ...part) *ledger.Pot {
	pot := b.Drawer.NewPot()
	for _, p := range parts {
		profile := b.Water
		if p.food != nil {
			profile = b.Profile(p.food)
		}
		pot.Pour(profile, b.Drawer.PerGram(profile), b.Lab.Ens.Of(p.grams), "")
	}
	return pot
}

// Sucrose in water at 20 °C: 20 °Bx by definition, 1.0810 g/ml (ICUMSA; NBS Circular C440).
// Ethanol: 33.30 % by mass are 40.00 % by volume and 0.9480 g/ml (OIML R 22). A gram of water
// takes up 1.0018 ml.
func TestMixturesOfOneThingAndWater(t *testing.T) {
	b := bench()
	g := b.Lab.Gauge
	syrup := pour(b, part{sugar, 20}, part{nil, 80})
	assert.InDelta(t, 20, g.Brix(syrup)[0], 1e-9)
	assert.InDelta(t, 20, g.Solids(syrup)[0], 1e-9)
	assert.InDelta(t, 20, g.Refracted(syrup)[0], 1e-9, "grams")
	assert.InDelta(t, 20, g.Dissolved(syrup)[0], 1e-9)
	assert.InDelta(t, 1.0810, g.Density(syrup)[0], 0.0005)
	assert.InDelta(t, 100/1.0810, g.Volume(syrup)[0], 0.05)
	assert.Zero(t, g.Abv(syrup)[0])
	spirit := pour(b, part{ethanol, 33.30}, part{nil, 66.70})
	assert.InDelta(t, 40, g.Abv(spirit)[0], 0.05)
	assert.InDelta(t, 0.9480, g.Density(spirit)[0], 0.0005)
	assert.Zero(t, g.Solids(spirit)[0], "it does not stay when a liquid is dried")
	assert.InDelta(t, 100.18, g.Volume(pour(b, part{nil, 100}))[0], 1e-9)
	double := pour(b, part{sugar, 40}, part{nil, 160})
	assert.InDeltaSlice(t, g.Brix(syrup), g.Brix(double), 1e-9)
	for d, ml := range g.Volume(double) {
		assert.InEpsilon(t, 2*g.Volume(syrup)[d], ml, 1e-9)
	}
}

// What a gram of a constituent adds is a constant of nature: one draw in every pot of a run,
// none where it is certain.
func TestConstantsOfNatureAreDrawnOnce(t *testing.T) {
	b := bench()
	g := b.Lab.Gauge
	one, other := g.Volume(pour(b, part{salt, 10})), g.Volume(pour(b, part{salt, 25}))
	assert.Greater(t, stat.StdDev(one[1:], nil), 0.3, "0.05 ml/g, data/specific_volumes.csv")
	assert.Less(t, stat.StdDev(one[1:], nil), 0.7)
	for d := range one {
		assert.InEpsilon(t, 2.5*one[d], other[d], 1e-9)
	}
	assert.InDelta(t, 0.32, g.Constants["specific volume of ASH"][0], 1e-12)
	certain := g.Certain()
	for _, ml := range certain.Volume(pour(b, part{salt, 10})) {
		assert.InDelta(t, 3.2, ml, 1e-9)
	}
	heavy := g.With(map[string][]float64{"specific volume of ASH": estimate.Constant(draws+1, 0.5)})
	assert.InDelta(t, 5, heavy.Volume(pour(b, part{salt, 10}))[7], 1e-9)
	assert.InDelta(t, one[7], g.Volume(pour(b, part{salt, 10}))[7], 1e-12, "the first stays as it was")
}

func TestConstantsAreWrittenToTheJournal(t *testing.T) {
	b := bench()
	ens := b.Lab.Ens
	ens.Journal = &estimate.Journal{}
	g := liquid.NewGauge(ens, b.Drawer)
	g.Volume(pour(b, part{salt, 10}))
	g.Volume(pour(b, part{salt, 20}))
	entries := ens.Journal.Entries()
	if assert.Len(t, entries, 1, "once") {
		assert.Equal(t, estimate.Constants, entries[0].Cause)
	}
}

// Of what water draws from coffee and tea all that dries counts as dissolved, fibre and fat
// too; a refractometer sees a coffee's solids as one thing, and no oil in droplets. Of
// another liquid each constituent counts as what it is: 0.7 of protein dissolves, 0.9 °Bx
// reads it (data/refraction.csv).
func TestWhatIsDrawnFromCoffeeAndTea(t *testing.T) {
	b := bench()
	g := b.Lab.Gauge
	for _, c := range []struct {
		name                string
		pot                 *ledger.Pot
		dissolved, refracts float64
	}{
		{"coffee", pour(b, part{coffee, 100}), 4, 3},
		{"tea", pour(b, part{tea, 100}), 4, 2 + 0.9},
		{"broth", pour(b, part{broth, 100}), 2 + 0.7, 2 + 0.9},
		{"grounds that nothing was drawn of", pour(b, part{bean, 100}), 60 + 0.7*18, 60 + 0.9*18},
	} {
		assert.InDelta(t, c.dissolved, g.Dissolved(c.pot)[0], 1e-9, c.name)
		assert.InDelta(t, c.refracts, g.Refracted(c.pot)[0], 1e-9, c.name)
	}
	drawn := pour(b, part{bean, 100})
	drawn.Rows[0].Modelled = true
	assert.InDelta(t, 98, g.Dissolved(drawn)[0], 1e-9)
	assert.InDelta(t, 78, g.Refracted(drawn)[0], 1e-9)
	modelled := pour(b, part{broth, 100})
	modelled.Rows[0].Modelled = true
	assert.InDelta(t, 2.7, g.Dissolved(modelled)[0], 1e-9, "a model makes no coffee of it")
	irish := pour(b, part{coffee, 100}, part{ethanol, 10})
	assert.InDelta(t, 4, g.Dissolved(irish)[0], 1e-9)
	assert.InDelta(t, 3+0.4415*10, g.Refracted(irish)[0], 0.01, "10 g of alcohol in 106 with its water, 9.43 %: CRC Handbook, 5 % read 0.414 a per cent and 10 % 0.445")
}

// The strength of a brew leaves out what its water brought, since the instrument is set to
// zero on that water; of any other liquid a water's salts count.
func TestBrewingWaterIsNoStrength(t *testing.T) {
	b := bench()
	g := b.Lab.Gauge
	assert.InDelta(t, 2, g.Solids(pour(b, part{coffee, 100}, part{hard, 100}))[0], 1e-9, "4 g in 200 g")
	assert.InDelta(t, 100*(2.7+1)/200, g.Solids(pour(b, part{broth, 100}, part{hard, 100}))[0], 1e-9)
}

// Most of the dry matter decides whether a pot is coffee or tea.
func TestSteepedIsMostlyCoffeeOrTea(t *testing.T) {
	b := bench()
	for _, c := range []struct {
		name string
		pot  *ledger.Pot
		want bool
	}{
		{"coffee", pour(b, part{coffee, 100}), true},
		{"tea", pour(b, part{tea, 10}, part{nil, 90}), true},
		{"grounds", pour(b, part{bean, 10}), true},
		{"broth", pour(b, part{broth, 100}), false},
		{"water", pour(b, part{nil, 100}), false},
		{"sweet coffee", pour(b, part{coffee, 100}, part{sugar, 3.9}), true},
		{"half and half", pour(b, part{coffee, 100}, part{broth, 100}), false},
		{"sweeter coffee", pour(b, part{coffee, 100}, part{sugar, 4.1}), false},
	} {
		assert.Equal(t, c.want, liquid.Steeped(c.pot), c.name)
	}
}

// What nobody has told apart takes up anything between what it would as sugar and as water:
// 92 g of it beside 8 g of sugar at 0.62 ml/g (CRC Handbook: 0.614 to 0.627) are 62 to 97 ml. A stated
// density settles it, in water too: no powder is what may be wet.
func TestAVolumeBetweenBounds(t *testing.T) {
	cordial := assaytest.Exact("cordial", "syrup", figures{"SUCS": 8})
	dense := stating("dense", "syrup", 1.03, 0, figures{"SUCS": 8})
	b := assaytest.NewBench(400, cordial, dense)
	pot := pour(b, part{cordial, 100})
	assert.Equal(t, "nobody has stated the water of "+cordial.ID.String(), liquid.NoVolume(pot))
	ml := estimate.Summarise(b.Lab.Gauge.Volume(pot))
	assert.Less(t, ml.Low, 72.0)
	assert.Greater(t, ml.Low, 45.0, "0.1 ml/g is what an unnamed solid may differ by")
	assert.InDelta(t, 96, ml.High, 4)
	assert.Empty(t, liquid.NoVolume(pour(b, part{dense, 103})))
	assert.InDelta(t, 100, b.Lab.Gauge.Volume(pour(b, part{dense, 103}))[0], 1e-9)
	assert.InDelta(t, 200.2, b.Lab.Gauge.Volume(pour(b, part{dense, 103}, part{nil, 100}))[0], 0.1)
}
