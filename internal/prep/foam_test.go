package prep_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
	"sipsum/internal/unit"
)

// tapped is a kitchen whose pot holds water alone, so many grams: all of it dissolves gas as water does.
func tapped(mass float64) (bench, *ledger.Pot) {
	b, pot := benchPot()
	empty := ledger.New(pot.Columns, n)
	pure := b.foods[prep.PureWater().ID]
	empty.Pour(pure, b.drawer.PerGram(pure), grams(mass), "water")
	return b, empty
}

func foamed(t *testing.T, mass float64, params string) (prep.Outcome, *ledger.Pot, error) {
	t.Helper()
	b, pot := tapped(mass)
	out, err := foaming(t, b, pot, params)
	return out, pot, err
}

func foaming(t *testing.T, b bench, pot *ledger.Pot, params string) (prep.Outcome, error) {
	t.Helper()
	step := steps(t, "drink: x\nserves: 1\nbuild: [10 g house]\ncomponents:\n  house:\n    ingredients: [200 g own:milk]\n    steps:\n      - foam: {"+params+"}\n")["foam"]
	require.NotNil(t, step, params)
	return prep.MethodOf(step).Do(b, pot, step, factors)
}

// By hand: 8 g of 44.013 g/mol are 0.18177 mol. Sander 2023 at 4 °C: 2.4e-4 · exp(2600 · (1/277.15 − 1/298.15))
// = 4.647e-4 mol/(m³ Pa), 0.04709 mol/(l atm). In 0.45 l of water and 0.25 l above it
//
//	p = 0.18177 / (0.45 · 0.04709 + 0.25 / (0.0820574 · 277.15)) = 5.648 atm = 5.72 bar,
//
// of which 0.45 · 0.04709 · 5.648 mol, 5.27 g, are in the water.
func TestASiphonAtRestHoldsItsCharge(t *testing.T) {
	out, pot, err := foamed(t, 450, "charge: 8 g, gas: N2O, bottle: 0.7 l, at: 4 °C")
	require.NoError(t, err)
	f := out.Foamed
	require.NotNil(t, f.Rest)
	assert.InDelta(t, 5.72, f.Rest.Bar[0], 0.01)
	assert.InDelta(t, 5.27, f.Rest.Dissolved[0], 0.01)
	for d := range n {
		assert.InDelta(t, 8, f.Rest.Dissolved[d]+f.Rest.Head[d], close)
		assert.Positive(t, f.Rest.Bar[d])
	}
	assert.InDelta(t, 450, pot.Mass()[0], close, "the gas that leaves with the bubbles is no part of the drink")
	assert.Zero(t, pot.Central("CO2"))
	assert.Nil(t, f.Overrun, "nobody read it")
	assert.Contains(t, out.Notes[len(out.Notes)-1], "nobody read its overrun")
}

// What is no water dissolves less, so that the pressure is higher and spreads.
func TestWhatIsNoWaterTakesUpLessGas(t *testing.T) {
	b, pot := benchPot()
	const exactly = "charge: 8 g, gas: N2O, bottle: 1 l ± 0 l, at: 4 °C"
	out, err := foaming(t, b, pot, exactly)
	require.NoError(t, err)
	pure, _, err := foamed(t, 450, exactly)
	require.NoError(t, err)
	assert.Greater(t, out.Foamed.Rest.Bar[0], pure.Foamed.Rest.Bar[0])
	assert.InDelta(t, pure.Foamed.Rest.Bar[0], pure.Foamed.Rest.Bar[1], close)
	assert.NotEqual(t, out.Foamed.Rest.Bar[1], out.Foamed.Rest.Bar[2])
}

// A siphon of "1 l" is known to a twentieth (data/instruments.csv), and not between half a litre and one and a half.
func TestASiphonIsKnownAsWellAsAVesselIs(t *testing.T) {
	out, _, err := foamed(t, 600, "charge: 2.4 g, gas: N2, bottle: 1 l, at: 4 °C")
	require.NoError(t, err)
	bar := out.Foamed.Rest.Bar
	// Nitrogen hardly dissolves: the pressure is nearly that of the head space, 0.4 l ± 0.05 l.
	assert.InDelta(t, bar[0]*0.4/0.35, slices.Max(bar), 0.04*bar[0])
	assert.InDelta(t, bar[0]*0.4/0.45, slices.Min(bar), 0.04*bar[0])
}

// Poured open, a foam of carbon dioxide is told as what liquid holds at 1 atm, and drawn from none to what is closed:
// Weiss 1974 at 4 °C, 2.927 g/l at 1 atm; closed 8.7 g/l of 8 g in 1 l with 0.75 l (chemistry of a bottle).
func TestCarbonDioxideStaysInAFoam(t *testing.T) {
	out, pot, err := foamed(t, 750, "charge: 8 g, gas: CO2, bottle: 1 l, at: 4 °C, overrun: 100 %")
	require.NoError(t, err)
	assert.InDelta(t, 0.75*2.927, pot.Central("CO2"), 0.01)
	drawn := pot.Total("CO2")
	assert.Less(t, slices.Min(drawn), 0.3)
	assert.Greater(t, slices.Min(drawn), 0.0)
	assert.Greater(t, slices.Max(drawn), 0.75*8)
	assert.Less(t, slices.Max(drawn), 0.75*9.6, "8 g and a bottle as they are read")
	assert.Contains(t, out.Notes[len(out.Notes)-1], "write left: … g/l in foam")
	assert.InDelta(t, 750+out.Added, pot.Mass()[0], close)
	for _, note := range out.Notes {
		assert.NotContains(t, note, "more than")
	}
}

// Water freezes at 0 °C: of what is ice no pressure is told, and nothing is dissolved in it. Vodka (40 % vol,
// about 33 % by mass) begins to freeze near −24 °C (CRC Handbook), so that it takes up gas at −10 °C.
func TestNoGasIsDissolvedInIce(t *testing.T) {
	out, _, err := foamed(t, 200, "charge: 8 g, gas: N2O, bottle: 0.5 l, at: -30 °C, overrun: 80 %")
	require.NoError(t, err)
	assert.Nil(t, out.Foamed.Rest)
	assert.Contains(t, fmt.Sprint(out.Notes), "it freezes from about 0.0 °C on, and is partly ice at -30 °C: no pressure is told")
	out, _, err = foamed(t, 200, "charge: 8 g, gas: N2O, bottle: 0.5 l, at: 0 °C, overrun: 80 %")
	require.NoError(t, err)
	assert.NotNil(t, out.Foamed.Rest, "at its freezing point it is liquid")
	_, _, err = foamed(t, 200, "charge: 8 g, gas: CO2, bottle: 0.5 l, at: -5 °C")
	assert.ErrorContains(t, err, "partly ice at -5 °C")
}

// What somebody measured in the glass is what is in it, as in carbonate; more than was charged is none.
func TestWhatIsLeftOfAFoamsGasIsAsStated(t *testing.T) {
	const siphon = "charge: 8 g, gas: CO2, bottle: 1 l, at: 4 °C, overrun: 100 %, left: "
	out, pot, err := foamed(t, 750, siphon+"2.0 g/l")
	require.NoError(t, err)
	assert.InDelta(t, 0.75*2, pot.Central("CO2"), 0.01)
	assert.NotContains(t, fmt.Sprint(out.Notes), "not stated")
	_, _, err = foamed(t, 750, siphon+"12 g/l")
	assert.ErrorContains(t, err, "brought only 8 g")
}

// An overrun of 150 % is 2.5 times the volume of the liquid; it is no share of a whole.
func TestAnOverrunIsReadAsARatio(t *testing.T) {
	for text, want := range map[string]float64{"0 %": 0, "80 %": 0.8, "150 %": 1.5, "300 % ± 50 %": 3} {
		out, _, err := foamed(t, 200, "overrun: "+text)
		require.NoError(t, err)
		assert.InDelta(t, want, out.Foamed.Overrun[0], close, text)
		assert.Nil(t, out.Foamed.Rest)
		assert.Empty(t, out.Foamed.Gas)
		assert.Empty(t, out.Notes)
	}
}

func TestASiphonThatNobodyMayChargeIsRefused(t *testing.T) {
	for params, says := range map[string]string{
		"charge: 8 g, gas: N2O, bottle: 0.4 l, at: 4 °C":   "overfilled",
		"charge: 8 g, gas: N2, bottle: 0.5 l, at: 4 °C":    "no bottle stands", // nitrogen hardly dissolves
		"charge: 800 g, gas: N2O, bottle: 0.5 l, at: 4 °C": "no bottle stands",
		"charge: 800 g, gas: CO2, bottle: 0.5 l, at: 4 °C": "no bottle stands",
	} {
		_, _, err := foamed(t, 420, params)
		assert.ErrorContains(t, err, says, params)
	}
	_, _, err := foamed(t, 0, "overrun: 80 %")
	assert.ErrorContains(t, err, "no liquid to foam")
}

// Above what soda siphons were charged with at most the step says so; without a volume it tells no pressure.
func TestAHighPressureIsSaid(t *testing.T) {
	out, _, err := foamed(t, 400, "charge: 8 g, gas: N2O, bottle: 0.5 l, at: 20 °C, overrun: 80 %")
	require.NoError(t, err)
	require.Greater(t, out.Foamed.Rest.Bar[0], unit.LimitOf("pressure of a siphon", "bar").High)
	require.Len(t, out.Notes, 1)
	assert.Contains(t, out.Notes[0], "What its maker allows comes first")
	out, _, err = foamed(t, 400, "charge: 8 g, gas: N2O, bottle: 1 l, at: 60 °C, overrun: 80 %")
	require.NoError(t, err)
	assert.Contains(t, out.Notes[len(out.Notes)-1], "carried on along its curve")
	out, _, err = foamed(t, 400, "charge: 8 g, gas: N2O, at: 20 °C, overrun: 80 %")
	require.NoError(t, err)
	assert.Nil(t, out.Foamed.Rest)
	require.Len(t, out.Notes, 1)
	assert.Contains(t, out.Notes[0], "no pressure is told")
}

// foam does one foam with figures that may or may not be possible, in the property test.
func (k kitchen) foam(r *rand.Rand, pot *ledger.Pot, f prep.Factors) (prep.Outcome, error) {
	gas := k.profiles[len(k.profiles)-1]
	b := bubbling{bench{drawer: k.drawer, foods: map[food.ID]*food.Profile{gas.Food.ID: gas}}}
	charge, bottle := 12*r.Float64(), 2*pot.Mass()[0]*r.Float64()
	parse := func(text string) *unit.Amount {
		a, _, err := unit.ParseAmount(text)
		if err != nil {
			panic(err)
		}
		return &a
	}
	step := &drink.Foam{
		Head: drink.Head{Word: "foam"}, Gas: []string{drink.CO2, drink.NitrousOxide, drink.Nitrogen}[r.IntN(3)],
		Charge: parse(fmt.Sprintf("%.3f g", charge+0.001)), Bottle: parse(fmt.Sprintf("%.3f ml", bottle+0.001)),
		Temperature: &drink.Quantity{Number: 40 * r.Float64()}, Overrun: &drink.Quantity{Number: 300 * r.Float64()},
	}
	return prep.MethodOf(step).Do(b, pot, step, f)
}

// bubbling is the bench with columns as short as those of the property test.
type bubbling struct{ bench }

func (b bubbling) Amount(a unit.Amount, _ string) []float64 { return even(a.Base()) }
func (b bubbling) Quantity(q drink.Quantity, factor float64, _ string) []float64 {
	return even(q.Number * factor)
}

// 0.1 g of nitrous oxide are 2.27 mmol, at 20 °C and 1 atm 54.7 ml (8.314 J/(mol K) · 293.15 K / 101,325 Pa · 2.27 mmol): no foam of six
// times 190 g of water is made of that alone.
func TestAFoamOfMoreGasThanItsChargeIsSaid(t *testing.T) {
	out, _, err := foamed(t, 190, "charge: 0.1 g, gas: N2O, bottle: 0.5 l, at: 20 °C, overrun: 500 % ± 1 %")
	require.NoError(t, err)
	require.NotEmpty(t, out.Notes)
	assert.Contains(t, fmt.Sprint(out.Notes), "the foam holds 950 ml of gas, and the charge gives at most 55 ml")
	assert.True(t, out.Foamed.Aired)
	unknown, _, err := foamed(t, 190, "charge: 0.1 g, gas: N2O, overrun: 500 % ± 1 %")
	require.NoError(t, err)
	assert.Contains(t, fmt.Sprint(unknown.Notes), "at most 59 ml", "of 40 °C: 54.7 ml · 313.15/293.15, 58.4 ml")
	fine, _, err := foamed(t, 190, "charge: 8 g, gas: N2O, bottle: 0.5 l, at: 20 °C, overrun: 500 % ± 1 %")
	require.NoError(t, err)
	assert.NotContains(t, fmt.Sprint(fine.Notes), "the charge gives")
	assert.False(t, fine.Foamed.Aired)
	whisked, _, err := foamed(t, 190, "overrun: 500 % ± 1 %")
	require.NoError(t, err)
	assert.False(t, whisked.Foamed.Aired, "of air there is enough")
}
