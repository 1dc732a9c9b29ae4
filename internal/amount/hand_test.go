package amount_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/amount"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/unit"
)

const draws = 4000

func hand() amount.Hand { return amount.Hand{Ens: estimate.Ensemble{Seed: 1, N: draws + 1}} }

// written parses an amount, or a quantity of a step.
func written(t testing.TB, text string) unit.Amount {
	t.Helper()
	a, rest, err := unit.ParseAmount(text)
	require.NoError(t, err)
	require.Empty(t, rest)
	return a
}

// shape says what a column is: its central value, its ends, and the spread of its draws.
type shape struct{ central, low, high, sd float64 }

func shapeOf(col []float64) shape {
	return shape{col[0], slices.Min(col[1:]), slices.Max(col[1:]), stat.StdDev(col[1:], nil)}
}

// near holds a column to what it should be; four thousand draws come within a hundredth of
// the ends of a rectangle, and tell a spread to a twentieth.
func near(t *testing.T, want shape, col []float64, what string) {
	t.Helper()
	got := shapeOf(col)
	width := want.high - want.low
	assert.InDelta(t, want.central, got.central, 1e-9, what)
	assert.GreaterOrEqual(t, got.low, want.low-1e-9, what)
	assert.LessOrEqual(t, got.high, want.high+1e-9, what)
	if !math.IsInf(width, 1) {
		assert.LessOrEqual(t, got.low, want.low+0.01*width, what)
		assert.GreaterOrEqual(t, got.high, want.high-0.01*width, what)
	}
	assert.InDelta(t, want.sd, got.sd, 0.05*want.sd, what)
}

// rectangle has a standard deviation of half of its width over √3 (JCGM 100:2008, 4.3.7).
func rectangle(central, half float64) shape {
	return shape{central, central - half, central + half, half / math.Sqrt(3)}
}

func TestAnAmountIsWithinWhatIsWritten(t *testing.T) {
	scale := written(t, "10 g")
	for _, c := range []struct {
		text  string
		scale *unit.Amount
		want  shape
	}{
		{"36 g ± 2 g", nil, rectangle(36, 2)},
		{"0.5 kg ± 20 g", nil, rectangle(500, 20)},
		{"36 g", nil, rectangle(36, 0.5)},
		{"36.0 g", nil, rectangle(36, 0.05)},
		{"20 ml", nil, rectangle(20, 0.5)},
		{"120 g", &scale, rectangle(120, 5)},
		{"5 g", &scale, rectangle(5, 5)},
		{"1.0 g", &scale, rectangle(1, 0.05)}, // the scale would show nothing: something finer weighed it
		{"20 ml", &scale, rectangle(20, 0.5)}, // no scale measures a volume
		{"36 g ± 2 g", &scale, rectangle(36, 2)},
		{"36 g ± 0 g", nil, shape{36, 36, 36, 0}},
		{"36 g ± 0 g", &scale, shape{36, 36, 36, 0}},
		{"36 g ± 0 g sd", nil, shape{36, 36, 36, 0}},
		{"2 barspoon ± 0 barspoon", nil, shape{written(t, "2 barspoon").Base(), written(t, "2 barspoon").Base(), written(t, "2 barspoon").Base(), 0}},
		{"36 g ± 2 g sd", nil, shape{36, 0, math.Inf(1), 2}},
	} {
		h := hand()
		h.Scale = c.scale
		near(t, c.want, h.Draw(written(t, c.text), "a"), c.text)
		assert.InDelta(t, c.want.sd, h.Spread(written(t, c.text)), 1e-9, c.text)
	}
	normal := hand().Draw(written(t, "10 g ± 9 g sd"), "a")
	assert.GreaterOrEqual(t, slices.Min(normal), 0.0, "cut at nothing")
	assert.Less(t, slices.Min(normal), 0.2, "and not before")
	assert.Greater(t, slices.Max(hand().Draw(written(t, "36 g ± 2 g sd"), "a")), 40.0, "a standard deviation is no end")
}

// A bar measure is filled within its spread (data/units.csv: common practice, ± 30 %), not
// within half of its last digit.
func TestABarMeasureHasTheSpreadOfItsFilling(t *testing.T) {
	spoons := written(t, "3 barspoon")
	require.Positive(t, spoons.Measure.Spread)
	near(t, rectangle(spoons.Base(), spoons.Base()*spoons.Measure.Spread), hand().Draw(spoons, "a"), "3 barspoon")
}

func TestOneLineOneStream(t *testing.T) {
	h := hand()
	a := written(t, "36 g ± 2 g")
	assert.Equal(t, h.Draw(a, "x"), h.Draw(a, "x"))
	assert.NotEqual(t, h.Draw(a, "x")[1:], h.Draw(a, "y")[1:])
	assert.InDelta(t, 0, stat.Correlation(h.Draw(a, "x")[1:], h.Draw(a, "y")[1:], nil), 0.06)
	other := hand()
	other.Ens.Seed = 2
	assert.NotEqual(t, h.Draw(a, "x")[1:], other.Draw(a, "x")[1:])
}

func TestAnotherAmountTakesThePlaceOfThatWritten(t *testing.T) {
	h := hand()
	h.Other, h.Asked, h.Ens.Journal = amount.Amounts{"x": written(t, "50 g ± 1 g")}, amount.Amounts{}, &estimate.Journal{}
	a := written(t, "36 g ± 2 g")
	assert.Equal(t, h.Draw(written(t, "50 g ± 1 g"), "x"), h.Column(a, "x"))
	assert.Equal(t, h.Draw(a, "y"), h.Column(a, "y"))
	assert.Equal(t, amount.Amounts{"x": a, "y": a}, h.Asked, "as they are written")
	entries := h.Ens.Journal.Entries()
	require.Len(t, entries, 2)
	for _, e := range entries {
		assert.Equal(t, estimate.Hand, e.Cause)
	}
	assert.NotPanics(t, func() { hand().Column(a, "x") }, "nobody cares what is asked for")
}

func quantity(number float64, unit string, half float64, decimals int, sigma bool) drink.Quantity {
	return drink.Quantity{Number: number, Unit: unit, Half: half, Decimals: decimals, Sigma: sigma}
}

func TestAQuantityIsWithinWhatIsWritten(t *testing.T) {
	const percent = 0.01
	for _, c := range []struct {
		what   string
		q      drink.Quantity
		factor float64
		want   shape
	}{
		{"15 %", quantity(15, "%", 0, 0, false), percent, rectangle(0.15, 0.005)},
		{"15.0 %", quantity(15, "%", 0, 1, false), percent, rectangle(0.15, 0.0005)},
		{"15 % ± 3 %", quantity(15, "%", 3, 0, false), percent, rectangle(0.15, 0.03)},
		{"20 % ± 2 % sd", quantity(20, "%", 2, 0, true), percent, shape{0.2, 0, 1, 0.02}},
		{"15 % ± 0 %", drink.Quantity{Number: 15, Unit: "%", Exact: true}, percent, shape{0.15, 0.15, 0.15, 0}},
		{"3.0 g/l", quantity(3, "g/l", 0, 1, false), 1, rectangle(3, 0.05)},
		{"0.3 of something rounded to 1", quantity(0.3, "g/l", 0, 0, false), 1, shape{0.3, 0, 0.8, 0.8 / math.Sqrt(12)}},
		{"-2 °C", quantity(-2, "°C", 0, 0, false), 1, rectangle(-2, 0.5)},
		{"-2 °C ± 3 °C", quantity(-2, "°C", 3, 0, false), 1, rectangle(-2, 3)},
		{"0 °C", quantity(0, "°C", 0, 0, false), 1, rectangle(0, 0.5)}, // zero is no end of the scale
		{"120 °C", quantity(120, "°C", 0, 0, false), 1, rectangle(120, 0.5)},
		{"98 % ± 4 %", quantity(98, "%", 4, 0, false), percent, rectangle(0.97, 0.03)}, // from 94 to all
		{"100 % ± 4 %", quantity(100, "%", 4, 0, false), percent, rectangle(0.98, 0.02)},
		{"99.8 %, rounded to 1", quantity(99.8, "%", 0, 0, false), percent, rectangle(0.9965, 0.0035)},
	} {
		if c.q.Sigma {
			got := shapeOf(hand().DrawQuantity(c.q, c.factor, "a"))
			assert.InDelta(t, c.want.central, got.central, 1e-12, c.what)
			assert.InDelta(t, c.want.sd, got.sd, 0.05*c.want.sd, c.what)
			assert.LessOrEqual(t, got.high, c.want.high, c.what)
			assert.GreaterOrEqual(t, got.low, c.want.low, c.what)
			assert.Greater(t, got.high-got.low, 5*c.want.sd, "%s: a normal has tails", c.what)
			continue
		}
		near(t, c.want, hand().DrawQuantity(c.q, c.factor, "a"), c.what)
	}
}

// "100 %" is all of it and "0" nothing: nobody rounds to either.
func TestAllAndNothingAreExact(t *testing.T) {
	for _, c := range []struct {
		q    drink.Quantity
		want float64
	}{
		{quantity(100, "%", 0, 0, false), 100},
		{quantity(0, "%", 0, 0, false), 0},
		{quantity(0, "g/l", 0, 0, false), 0},
	} {
		for _, x := range hand().DrawQuantity(c.q, 1, "a") {
			require.Equal(t, c.want, x)
		}
	}
	assert.Positive(t, slices.Max(hand().DrawQuantity(quantity(0, "%", 2, 0, false), 1, "a")), "0 % ± 2 % may be some")
}

// A share that spreads beyond all is cut there, whatever its shape.
func TestAShareIsAtMostAll(t *testing.T) {
	for _, q := range []drink.Quantity{quantity(99, "%", 2, 0, true), quantity(100, "%", 4, 0, true), quantity(99, "%", 3, 0, false)} {
		col := hand().DrawQuantity(q, 1, "a")
		assert.LessOrEqual(t, slices.Max(col), 100.0)
		assert.Greater(t, slices.Max(col), 99.9)
	}
	assert.Equal(t, 99.0, hand().DrawQuantity(quantity(99, "%", 2, 0, true), 1, "a")[0], "what is most likely stays so")
	assert.Greater(t, slices.Max(hand().DrawQuantity(quantity(99, "g/l", 3, 0, false), 1, "a")), 101.0, "only a share is one of a whole")
}

func TestAQuantityIsWrittenDownAsTheHands(t *testing.T) {
	h := hand()
	h.Ens.Journal = &estimate.Journal{}
	q := quantity(15, "%", 0, 0, false)
	assert.Equal(t, h.DrawQuantity(q, 1, "x"), h.Quantity(q, 1, "x"))
	assert.NotEqual(t, h.DrawQuantity(q, 1, "x"), h.DrawQuantity(q, 1, "y"))
	require.Len(t, h.Ens.Journal.Entries(), 1)
	assert.Equal(t, estimate.Hand, h.Ens.Journal.Entries()[0].Cause)
	assert.Equal(t, "x", h.Ens.Journal.Entries()[0].Name)
}

// JCGM 100:2008, 4.3.7: a rectangle of half-width 3 has the standard deviation √3.
func TestSpreadOfAStatedRange(t *testing.T) {
	assert.InDelta(t, math.Sqrt(3), amount.HalfSD(&drink.Quantity{Half: 3}), 1e-12)
	assert.Equal(t, 3.0, amount.HalfSD(&drink.Quantity{Half: 3, Sigma: true}))
}
