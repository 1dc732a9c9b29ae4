package unit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/unit"
)

func TestParseAmount(t *testing.T) {
	cases := []struct {
		text, rest string
		base, half float64 // base unit; half-width in the measure written
		sigma      bool
	}{
		{"36 g espresso", "espresso", 36, 0, false},
		{"36 g ± 3 g espresso", "espresso", 36, 3, false},
		{"2.0 g ± 100 mg core:citric-acid", "core:citric-acid", 2, 0.1, false},
		{"36 g ± 1 g sd cherry syrup", "cherry syrup", 36, 1, true},
		{"36 g ± 1 g", "", 36, 1, false},
		{"36 g ± 1 g sd", "", 36, 1, true},
		{"36 g ± 1 g sdfood", "sdfood", 36, 1, false},
		{"1/2 tsp salt", "salt", 2.46446, 0, false}, // 4.92892 ml a US teaspoon, NIST Handbook 44
		{"0.5 l core:water", "core:water", 500, 0, false},
		{"1 fl-oz rum", "rum", 29.5735, 0, false}, // NIST Handbook 44
		{"12 %", "", 0.12, 0, false},
		{"3 g sdfood", "sdfood", 3, 0, false},
		{"1/3 g ± 1/3 g salt", "salt", 1.0 / 3, 1.0 / 3, false},
		{"0 g ± 0 g salt", "salt", 0, 0, false},
		// the same in other forms
		{"36 mL rum", "rum", 36, 0, false},
		{"36 ML rum", "rum", 36, 0, false},
		{"3 gr sugar", "sugar", 3, 0, false},
		{"3 grams sugar", "sugar", 3, 0, false},
		{"3 Gram of sugar", "sugar", 3, 0, false},
		{"0.5 Liter water", "water", 500, 0, false},
		{"0.5 litres water", "water", 500, 0, false},
		{"0.5L water", "water", 500, 0, false},
		{"2 dashes of orange bitters", "orange bitters", 1.8, 0, false},
		{"3 drops bitters", "bitters", 0.15, 0, false},
		{"1 Tbsp. rum", "rum", 14.7868, 0, false},
		{"2 tablespoons rum", "rum", 29.5736, 0, false},
		{"2 fl oz rum", "rum", 59.147, 0, false},
		{"2 fl. oz. rum", "rum", 59.147, 0, false},
		{"1 fluid ounce rum", "rum", 29.5735, 0, false},
		{"2 bar spoons rum", "rum", 10, 0, false},
		{"½ tsp ½-fat milk", "½-fat milk", 2.46446, 0, false},
		{"1½ tsp salt", "salt", 7.39338, 0, false},
		{"1 ½ tsp salt", "salt", 7.39338, 0, false},
		{"1 1/2 tsp salt", "salt", 7.39338, 0, false},
		{"1-1/2 tsp salt", "salt", 7.39338, 0, false},
		{"1⁄2 tsp salt", "salt", 2.46446, 0, false},
		{"1 cup milk", "milk", 236.588, 0, false}, // NIST Handbook 44
		{"36±2 g espresso", "espresso", 36, 2, false},
		{"36 ± 2 g espresso", "espresso", 36, 2, false},
		{"36g±2g espresso", "espresso", 36, 2, false},
		{"36 g +/- 2 g espresso", "espresso", 36, 2, false},
		{"36 g +- 2 espresso", "espresso", 36, 2, false},
		{"36 g ± 5 % espresso", "espresso", 36, 1.8, false},
		{"50 % ± 5 % milk", "milk", 0.5, 5, false},
		{"36-40 g espresso", "espresso", 38, 2, false},
		{"36–40 g espresso", "espresso", 38, 2, false},
		{"36 g to 40 g espresso", "espresso", 38, 2, false},
		{"36g-40g espresso", "espresso", 38, 2, false},
		{"36 to 40 g espresso", "espresso", 38, 2, false},
		{"0-1/2 tsp salt", "salt", 1.23223, 0.25, false},
		{"900 g to 1.1 kg ice", "ice", 1000, 100, false},
		{"20 g 7-up", "7-up", 20, 0, false},
		{"20 g tomato", "tomato", 20, 0, false},
		{"1 g ± 1 g sd salt", "salt", 1, 1, true},
	}
	for _, c := range cases {
		a, rest, err := unit.ParseAmount(c.text)
		require.NoError(t, err, c.text)
		assert.Equal(t, c.rest, rest, c.text)
		assert.InDelta(t, c.base, a.Base(), 1e-9, c.text)
		assert.InDelta(t, c.half, a.Half, 1e-12, c.text)
		assert.Equal(t, c.sigma, a.Sigma, c.text)
	}
}

func TestParseAmountRefusesWithTheFix(t *testing.T) {
	cases := []struct{ text, what, do string }{
		{"12,5 g sugar", "comma", "write: 12.5 g sugar"},
		{"1.234,5 g sugar", "comma", "write: 1234.5 g sugar"},
		{"1,234.5 g sugar", "comma", "write: 1234.5 g sugar"},
		{",5 g sugar", "comma", "write: 0.5 g sugar"},
		{"0,500 g sugar", "comma", "write: 0.500 g sugar"},
		{"1,000 g sugar", "a thousand to some and decimals to others", "write: 1000 g sugar, or: 1.000 g sugar"},
		{"1,5 oz rum", "comma", "write: 1.5 fl-oz rum; that is the US fluid ounce"},
		{"12,5 gx sugar", `"12,5" has a comma; and unknown unit "gx"`, "… g gx sugar"},
		{"2 core:lemon", "no unit", "g core:lemon"},
		{"2 oz rum", "oz", "write: 2 fl-oz rum"},
		{"2 ounces of rum", "ounces", "write: 2 fl-oz of rum"},
		{"3 t sugar", "unknown unit", "the units are g kg mg"},
		{"36 g, sugar", `"g," is not read as a unit`, "write: 36 g sugar"},
		{"sugar 36 g", "does not begin", "write: 36 g sugar"},
		{"pinch of salt", "does not begin", "write: 1 pinch salt"},
		{"~ 36 g sugar", "by how much", "write: 36 g sugar"},
		{"sugar", "does not begin", "36 g sugar"},
		{"36", `"36" has no unit`, "g kg mg"},
		{"36-40 g ± 1 g sugar", "range twice", "keep the range or the ±"},
		{"40-36 g sugar", `"40-36 g" is not a range`, "smaller amount first"},
		{"36 g - 40 sugar", "not read as a range", "write: 36 g - 40 g sugar"},
		{"3 g - 4 ml sugar", "does not fit", "same kind"},
		{"36 g ± 101 % sugar", "reaches below zero", "36 g ± 36 g"},
		{"1/0 g sugar", "fraction", "1/2"},
		{"3 g ± 2 ml sugar", "does not fit", "same kind"},
		{"3 g ± some sugar", `"some sugar" does not begin with an amount`, "36 g"},
		{"3 g ± 30 g sugar", `"3 g ± 30 g" reaches below zero`, "write 3 g ± 3 g, or less"},
		{"0.5 g ± 2000 mg sugar", "reaches below zero", "0.5 g ± 0.5 g"},
		{"1 g ± 100 g sd sugar", "standard deviation", "at most 1 g"},
		{"1e400 g x", "unknown unit", ""},
		{"1.2.3 g x", "not a number", "12.5"},
	}
	for _, c := range cases {
		_, _, err := unit.ParseAmount(c.text)
		require.Error(t, err, c.text)
		assert.Contains(t, err.Error(), c.what, c.text)
		assert.Contains(t, err.Error(), c.do, c.text)
	}
}

func TestResolutionIsOneUnitOfTheLastDigit(t *testing.T) {
	a, _, err := unit.ParseAmount("2.05 cl x")
	require.NoError(t, err)
	assert.InDelta(t, 0.1, a.Resolution(), 1e-12)
}

func TestConvert(t *testing.T) {
	f, ok := unit.Convert("g", "mg")
	require.True(t, ok)
	assert.Equal(t, 1000.0, f)
	_, ok = unit.Convert("g", "kJ")
	assert.False(t, ok)
	factor, ok := unit.PerGram("IU")
	assert.False(t, ok)
	assert.Zero(t, factor, "whoever forgets to ask gets nothing, not grams")
}

func TestLimits(t *testing.T) {
	for in, most := range map[string]float64{"g/l": 850, "%": 64.3} {
		l := unit.LimitOf("titratable acidity", in)
		assert.True(t, l.Holds(most) && !l.Holds(most+0.1) && !l.Holds(-0.1), in)
		assert.NotEmpty(t, l.Source)
	}
	assert.Panics(t, func() { unit.LimitOf("titratable acidity", "lb") })
}

func TestEveryMeasureHasASource(t *testing.T) {
	for _, m := range unit.Measures() {
		assert.NotEmpty(t, m.Source, m.Name)
		assert.Positive(t, m.Factor, m.Name)
	}
}

// ± 0 is a range like any other, of no width: it is not the lack of one.
func TestAStatedZeroIsNoLackOfARange(t *testing.T) {
	for text, exact := range map[string]bool{"20 g ± 0 g": true, "20 g ± 0": true, "20 g": false, "20 g ± 0.01 g": false} {
		a, rest, err := unit.ParseAmount(text + " sugar")
		require.NoError(t, err)
		assert.Equal(t, "sugar", rest)
		assert.Equal(t, exact, a.Exact, text)
		again, _, err := unit.ParseAmount(a.String())
		require.NoError(t, err)
		assert.Equal(t, a, again, "as it is written")
		q, err := unit.Scale{What: "a mass", Units: []string{"g"}, High: 100, Example: "1 g"}.Parse(text)
		require.NoError(t, err)
		assert.Equal(t, exact, q.Exact, text)
		assert.Equal(t, exact, q.String() == "20 g ± 0 g", text)
	}
}
