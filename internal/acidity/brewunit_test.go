package acidity_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// bean is an invented coffee of whose brews the pH has been published.
func bean(pH float64) *food.Food {
	return assaytest.Exact("bean", "coffee bean", figures{"WATER": 3, "K": 1600, "MG": 180, "CA": 110, "pH-brewed": pH})
}

// cup pours coffee and water into a pot, as brewed.
func cup(b *assaytest.Bench, water float64, of ...*food.Food) *ledger.Pot {
	pot := b.Pot(10, of...)
	pot.Pour(b.Water, b.Drawer.PerGram(b.Water), b.Lab.Ens.Of(water), "")
	return pot
}

// Coffee brewed here has the pH of such brews in its own water; as strong as espresso it
// reads up to 0.6 above filter coffee, 0.3 at the middle (row "espresso over filter").
func TestABrewHasThePHOfSuchBrews(t *testing.T) {
	f := bean(5.0)
	b := assaytest.NewBench(60, f)
	pot := cup(b, 150, f)
	assert.Empty(t, pot.Traced(0), "grounds have no pH of their own")
	share := b.Lab.Gauge.Dissolved(pot)[0] / pot.Central(constituent.Mass)
	require.Positive(t, share)
	for _, c := range []struct {
		espresso          float64
		middle, low, high float64
	}{{2 * share, 5.0, 4.6, 5.4}, {1.001 * share, 5.0, 4.6, 5.4}, {0.999 * share, 5.3, 4.6, 6.0}} {
		pot := cup(b, 150, f)
		assert.Empty(t, b.Lab.CalibrateBrew(pot, c.espresso))
		pH := pHOf(t, b, pot)
		assert.InDelta(t, c.middle, pH[0], 1e-3)
		spans(t, pH, c.low, c.high)
		in := b.Lab.IonsOf(pot, pot.N)
		require.Len(t, in.RestsOn, 1)
		assert.True(t, in.RestsOn[0].Brewed)
		assert.False(t, in.RestsOn[0].Moved)
		assert.True(t, acidity.RestsOnPublished(pot))

		before := heldAll(b, pot)
		b.Lab.CalibrateBrew(pot, 0)
		for d, held := range heldAll(b, pot) {
			alike(t, before[d], held)
		}
	}
	exactly := cup(b, 150, f)
	b.Lab.CalibrateBrew(exactly, b.Lab.Gauge.Dissolved(exactly)[0]/exactly.Central(constituent.Mass))
	assert.InDelta(t, 5.3, pHOf(t, b, exactly)[0], 1e-3, "from that share on")

	grouped := assaytest.Exact("bean", "coffee bean", figures{"WATER": 3, "K": 1600})
	c := assaytest.NewBench(60, grouped)
	pot = cup(c, 150, grouped)
	c.Lab.CalibrateBrew(pot, 0)
	assert.LessOrEqual(t, slices.Max(pHOf(t, c, pot)), 6.1+1e-6, "of a group it holds as it stands: 4.75 to 6.1, data/groups.csv")
	assert.InDelta(t, (4.75+6.1)/2, pHOf(t, c, pot)[0], 0.1)
	assert.False(t, acidity.RestsOnPublished(pot))
}

// What laboratories read of brews decides, however well the bean's acids are known.
func TestABrewDoesNotKnowBetterThanLaboratories(t *testing.T) {
	f := assaytest.Exact("bean", "coffee bean", figures{"WATER": 3, "K": 1600, "CITAC": 700, "QUINAC": 700, "MALAC": 200, "pH-brewed": 5.5})
	b := assaytest.NewBench(30, f)
	pot := cup(b, 150, f)
	require.False(t, b.Lab.IonsOf(pot, pot.N).Open())
	b.Lab.CalibrateBrew(pot, 1)
	assert.InDelta(t, 5.5, pHOf(t, b, pot)[0], 1e-6)
	assert.True(t, b.Lab.IonsOf(pot, pot.N).Silent)
}

// Sugar in the cup is no part of the brew, the water is.
func TestABrewIsTheCoffeeAndItsWater(t *testing.T) {
	f, sugar := bean(5.0), assaytest.Exact("sugar", "other", figures{"WATER": 0, "SUCS": 100, "K": 0, "P": 0, "CLD": 0, "OA": 0, "CO2": 0})
	b := assaytest.NewBench(5, f, sugar)
	plain, sweet := cup(b, 150, f), cup(b, 150, f)
	extra := b.Pot(10, sugar)
	sweet.Join(extra)
	b.Lab.CalibrateBrew(plain, 1)
	b.Lab.CalibrateBrew(sweet, 1)
	want := heldAll(b, plain)
	for d, held := range heldAll(b, sweet) {
		alike(t, want[d], held)
	}
	thin := cup(b, 300, f)
	b.Lab.CalibrateBrew(thin, 1)
	assert.InDelta(t, 5, pHOf(t, b, thin)[0], 1e-3, "twice the water, the same brew of its kind")
}

// parted gives milk and sour juice, and the pH at which milk parts.
func parted(milk, sour float64, of figures) (*assaytest.Bench, *ledger.Pot, []float64) {
	f, g := assaytest.Exact("milk", "milk", of), assaytest.Exact("lemon", "citrus juice", with(juice, figures{"CITAC": 5000, "SUCS": 4, "K": 100}))
	b := assaytest.NewBench(60, f, g)
	pot := b.Pot(milk, f)
	pot.Join(b.Pot(sour, g))
	atMost := b.Lab.Ens.Of(5.5)
	for d := range atMost {
		atMost[d] += 0.01 * float64(d%7-3)
	}
	atMost[0] = 5.5
	return b, pot, atMost
}

// milk is invented, with as much protein as lets its composition tell of a pH.
var milk = figures{"WATER": 92, "LACS": 4.8, "PROCNT": 1.0, "K": 150, "NA": 40, "P": 20, "CLD": 100, "CITAC": 150, "OA": 0.15, "PH": 6.7}

// Milk that has parted was at most at the pH at which milk parts; below it its own acids say
// how sour it is.
func TestPartedMilkIsNoLessSour(t *testing.T) {
	b, pot, atMost := parted(100, 0.3, milk)
	before := pHOf(t, b, pot)
	require.Greater(t, slices.Min(before), 5.6)
	b.Lab.CalibrateParted(pot, atMost, 5.47, 5.53, "invented")
	assert.InDeltaSlice(t, atMost, pHOf(t, b, pot), 1e-3)
	in := b.Lab.IonsOf(pot, pot.N)
	i := slices.IndexFunc(in.RestsOn, func(c acidity.Calibration) bool { return c.Parted })
	if i >= 0 {
		assert.Equal(t, "invented", in.RestsOn[i].Source)
	}

	b, pot, atMost = parted(100, 40, milk)
	before = pHOf(t, b, pot)
	require.Less(t, slices.Max(before), 5.4)
	b.Lab.CalibrateParted(pot, atMost, 5.47, 5.53, "invented")
	assert.InDeltaSlice(t, before, pHOf(t, b, pot), 1e-3, "it is sour enough")
}

// At both ends of what nobody has stated parted milk is at most as milk parts, too: with the
// most of it, which would keep it from that, just so.
func TestPartedMilkIsSourAtBothEndsOfAnUnknownAcid(t *testing.T) {
	b, pot, atMost := parted(100, 1, lacking(milk, "CITAC", "OA"))
	b.Lab.CalibrateParted(pot, atMost, 5.47, 5.53, "invented")
	ends := b.Lab.IonsOf(pot, pot.N).Vouched.Ends()
	require.Len(t, ends, 2)
	s, err := acid.NewSolver(acidity.MeterCelsius)
	require.NoError(t, err)
	var pH []float64
	for _, end := range ends {
		sol := b.Held(pot, 0)
		end(sol)
		state, err := s.Solve(sol, acid.State{})
		require.NoError(t, err)
		pH = append(pH, state.PH)
	}
	assert.LessOrEqual(t, pH[0], 5.5+1e-6)
	assert.InDelta(t, 5.5, pH[1], 1e-3)
}

// Whether milk parted says nothing of a pot without milk, of one that a reading has spoken
// of, or of one whose protein hides its pH.
func TestPartingTellsNothingOfOtherPots(t *testing.T) {
	f := assaytest.Exact("juice", "fruit juice", juice)
	b := assaytest.NewBench(5, f)
	pot := b.Pot(100, f)
	b.Lab.CalibrateParted(pot, b.Lab.Ens.Of(3), 3, 3, "invented")
	assert.Empty(t, pot.Traced(0))

	for name, prepare := range map[string]func(*assaytest.Bench, *ledger.Pot){
		"read":  func(b *assaytest.Bench, pot *ledger.Pot) { b.Lab.Settle(pot) },
		"thick": func(_ *assaytest.Bench, _ *ledger.Pot) {},
	} {
		of := milk
		if name == "thick" {
			of = with(milk, figures{"PROCNT": 3.2, "WATER": 90})
		}
		b, pot, atMost := parted(100, 1, of)
		prepare(b, pot)
		before := heldAll(b, pot)
		b.Lab.CalibrateParted(pot, atMost, 5.47, 5.53, "invented")
		for d, held := range heldAll(b, pot) {
			alike(t, before[d], held)
		}
	}
}
