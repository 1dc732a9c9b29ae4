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
		{"12,5 g sugar", "comma", "12.5"},
		{"2 core:lemon", "no unit", "g core:lemon"},
		{"2 oz rum", "oz", "fl-oz"},
		{"3 gr sugar", "unknown unit", "use one of g kg mg"},
		{"g sugar", "does not begin", "36 g"},
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
