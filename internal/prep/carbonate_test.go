package prep_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
	"sipsum/internal/solution"
)

func charge(ml, g, celsius float64) *prep.Charge {
	return &prep.Charge{Gas: solution.CarbonDioxide, Bottle: grams(ml), Grams: grams(g), Celsius: grams(celsius)}
}

// By the mass balance of a closed vessel: what is dissolved and what is in the
// head space are the charge. 1 l, 0.75 l of water, 8 g at 4 °C: 2.99 atm, 8.7 g/l.
func TestClosedBottleKeepsTheCharge(t *testing.T) {
	const litreAtm = 0.0820574 * 277.15 // R·T, CODATA R in l atm/(mol K)
	p := solution.CO2Pressure(8/44.009, 0.75, 0.25, 4)
	dissolved := solution.CO2Solubility(4) * p * 0.75
	assert.InDelta(t, 8/44.009, dissolved+p*0.25/litreAtm, 1e-6)
	assert.InDelta(t, 2.99, p, 0.03)
	assert.InDelta(t, 8.7, dissolved*44.009/0.75, 0.1)
}

func TestStatedGasIsInTheGlass(t *testing.T) {
	target, out, err := prep.Carbonate(charge(500, 8, 4), grams(0.003), grams(200), grams(0), factors)
	require.NoError(t, err)
	assert.InDelta(t, 0.6, target[0], close, "3 g/l in 200 ml")
	require.Len(t, out.Notes, 1)
	assert.Contains(t, out.Notes[0], "bar")
	_, out, err = prep.Carbonate(charge(500, 3.2, 4), grams(0.010), grams(300), grams(0), factors)
	require.NoError(t, err)
	assert.Contains(t, out.Notes[len(out.Notes)-1], "more than the charge can dissolve")
}

func TestUnstatedGasLiesBetweenOpenAndClosed(t *testing.T) {
	target, out, err := prep.Carbonate(charge(1000, 8, 4), nil, grams(750), grams(0), factors)
	require.NoError(t, err)
	// Weiss 1974: 2.927 g/l at 1 atm and 4 °C; closed 8.7 g/l.
	for _, g := range target {
		require.Greater(t, g, 0.75*2.92)
		require.Less(t, g, 0.75*8.8)
	}
	assert.InDelta(t, 0.75*(2.927+8.74)/2, target[0], 0.05)
	assert.Contains(t, out.Notes[len(out.Notes)-1], "not stated")
}

// A charge makes no more gas than it is. By the mass balance 0.001 g in 1.5 l with 0.9 l of
// water at 4 °C leave 0.00077 g/l in it.
func TestGasComesFromTheCharge(t *testing.T) {
	for _, g := range []float64{1e-6, 0.001, 0.1, 1, 4} {
		target, _, err := prep.Carbonate(charge(1500, g, 4), nil, grams(900), grams(0), factors)
		require.NoError(t, err)
		for d, x := range target {
			require.LessOrEqual(t, x, g, "draw %d of %g g", d, g)
		}
		if g == 0.001 {
			assert.InDelta(t, 0.00077, target[0]/0.9, 0.00001)
		}
	}
}

func TestWhatNoBottleStandsIsRefused(t *testing.T) {
	for says, c := range map[string]struct{ bottle, charge, left, ml float64 }{
		"overfilled":                   {500, 8, 0.003, 510},
		"no bottle stands":             {500, 8000, 0.003, 300},
		"the drink brought only 1 g":   {500, 1, 0.010, 300},
		"there is no liquid to charge": {500, 1, 0.010, 0},
	} {
		_, _, err := prep.Carbonate(charge(c.bottle, c.charge, 4), grams(c.left), grams(c.ml), grams(0), factors)
		require.Error(t, err, says)
		assert.Contains(t, err.Error(), says)
	}
	gassy := charge(500, 1, 4)
	gassy.Unmeasured = true
	_, _, err := prep.Carbonate(gassy, grams(0.010), grams(300), grams(0), factors)
	assert.NoError(t, err, "who knows what the drink brought")
}

func TestAerateReachesTheTarget(t *testing.T) {
	gas := food.Enter(prep.Gas(), nil)
	pot := sugary(juice())
	perGram := make(ledger.Cells, len(pot.Columns.List))
	perGram[pot.Columns.At("CO2")] = make([]float64, n)
	for d := range n {
		perGram[pot.Columns.At("CO2")][d] = 1
	}
	out := prep.Aerate(pot, gas, perGram, grams(0.6), "carbonate")
	assert.InDelta(t, 0.6, out.Added, close)
	assert.InDelta(t, 100.6, pot.Mass()[0], close)
	out = prep.Aerate(pot, gas, perGram, grams(0.2), "carbonate")
	assert.InDelta(t, 0.4, out.Lost.Mass(), close, "what is too much leaves")
	assert.InDelta(t, 0.2, central(pot, "CO2"), close)
}

// Mohos: 179.2 g of sucrose dissolve in 100 g of water at 0 °C, 203.9 g at 20 °C.
func TestSyrupAboveSaturationCrystallises(t *testing.T) {
	assert.InDelta(t, 1.792, prep.Saturated(0), close)
	assert.InDelta(t, 2.039, prep.Saturated(20), close)
	assert.InDelta(t, (1.792+1.905)/2, prep.Saturated(5), close)
	heavy, light := potOf(sugar(), entered("w", "water", map[constituent.ID]float64{"WATER": 100})), potOf(sugar(), juice())
	_, err := prep.Reduce(heavy, grams(152), factors)
	require.NoError(t, err)
	note, warn := prep.Crystallises(heavy, 4)
	assert.True(t, warn, "100 g of sugar to 52 g of water")
	assert.Contains(t, note, "crystallise")
	_, warn = prep.Crystallises(light, 4)
	assert.False(t, warn)

	sweet, pure := entered("sweet", "sugar", map[constituent.ID]float64{"SUCS": 100}), food.Enter(prep.PureWater(), nil)
	columns := ledger.NewColumns([]*food.Profile{sweet, pure})
	drawer := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: n}, columns)
	for over, crystals := range map[float64]bool{0: false, 0.1: true} { // just saturated at 0 °C, and beyond
		pot := ledger.New(columns, n)
		pot.Pour(sweet, drawer.PerGram(sweet), grams(179.2+over), "sugar")
		pot.Pour(pure, drawer.PerGram(pure), grams(100), "water")
		_, warn = prep.Crystallises(pot, 0)
		assert.Equal(t, crystals, warn, "%g g beyond what dissolves", over)
	}
}
