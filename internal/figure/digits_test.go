package figure_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/composition"
	"sipsum/internal/estimate"
	"sipsum/internal/figure"
)

func TestDigitsThatTheDeviationSupports(t *testing.T) {
	const all = 12 // no limit on digits but the deviation's
	for _, c := range []struct {
		x, sd  float64
		most   int
		want   string
		source string
	}{
		{0.279008, 0.0123261, all, "0.279", "drupal.star.bnl.gov, significant digits for HepData tables, example of the PDG rule"},
		{0.279008, 0.000766099, all, "0.2790", "idem"},
		{0.827, 0.119, all, "0.83", "PDG, Phys. Rev. D 98 (2018) 030001, 5.3: 119 keeps two digits"},
		{0.827, 0.367, all, "0.8", "idem: 367 keeps one"},
		{14, 9.6, all, "14", "idem: 950 to 999 round to 1000 and keep two"},
		{416.4, 57.4, figure.MostDigits, "420", "three digits at most"},
		{10.5432, 0.0001, figure.MostDigits, "10.5", "idem"},
		{225.7, 0, figure.MostDigits, "226", "without spread: three digits"},
		{0.0088, 0.0072, figure.MostDigits, "0.009", "one digit of the deviation"},
		{0.04, 3.1, figure.MostDigits, "0.04", "a deviation above the figure leaves it one digit"},
		{0, 0.5, figure.MostDigits, "0.0", "zero to the place of its deviation"},
		{0, 0, figure.MostDigits, "0.00", "zero without spread"},
		{2e-15, 0.92, figure.MostDigits, "0.0", "what arithmetic leaves of nothing, to the place of its deviation"},
	} {
		assert.Equal(t, c.want, figure.Rounded(c.x, figure.Place(c.x, c.sd, c.most)), "%v ± %v (%s)", c.x, c.sd, c.source)
	}
}

// Whatever the figure, rounding moves it by less than its deviation.
func TestRoundingStaysWithinTheDeviation(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 20000 {
		x := math.Exp(random.Float64()*20 - 10)
		sd := x * math.Exp(random.Float64()*8-6)
		text := figure.Rounded(x, figure.Place(x, sd, 30))
		back, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		require.Less(t, math.Abs(back-x), sd, "%v ± %v printed as %s", x, sd, text)
	}
}

func TestBoundsAreNeverRoundedDown(t *testing.T) {
	assert.Equal(t, "660", figure.Upward(658.1, 1))
	assert.Equal(t, "0.30", figure.Upward(0.1+0.2, 0), "binary noise is not a digit")
	assert.Equal(t, "10.6", figure.Upward(10.58, -1), "to the place of the figure beside it")
	assert.Equal(t, "3.8", figure.Upward(3.754, 0))
	assert.Equal(t, "2520", figure.Upward(2517.68, -2), "three digits at most")
	random := rand.New(rand.NewPCG(3, 4))
	for range 20000 {
		x := math.Exp(random.Float64()*20 - 10)
		back, err := strconv.ParseFloat(figure.Upward(x, random.IntN(6)-4), 64)
		require.NoError(t, err)
		require.GreaterOrEqual(t, back, x*(1-1e-9))
		require.LessOrEqual(t, back, x*1.11, "two digits at least")
	}
}

func TestSpan(t *testing.T) {
	assert.Equal(t, "330–520", figure.Span(328.7, 516.9, 1))
	assert.Equal(t, "", figure.Span(5.9996, 6.0004, -2), "an interval that prints as one figure")
	assert.Equal(t, "0–2", figure.Span(-0.2, 2, 0), "no minus zero")
}

// A rectangle of half a degree around 0 °C has a standard deviation of 0.29 (JCGM 100:2008, 4.3.7), of which the PDG rule keeps two
// digits; its lower end is below zero, and no "less than".
func TestZeroDegreesIsATemperature(t *testing.T) {
	s := figure.Of(composition.Known(estimate.Summary{SD: 0.289, Low: -0.45, High: 0.45}, "°C"))
	assert.Equal(t, figure.Shown{Number: "0.00", Unit: "°C", Low: "-0.45", High: "0.45"}, s)
}
