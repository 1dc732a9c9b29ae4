package unit_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/unit"
)

var (
	celsius = unit.Scale{What: "a temperature", Units: []string{"°C"}, Low: -40, High: 130, Example: "6 °C"}
	share   = unit.Scale{What: "a share", Units: []string{"%"}, High: 100, Example: "9.5 %"}
	gas     = unit.Scale{What: "gas", Units: []string{"g/l"}, High: 50, Example: "3 g/l"}
	clock   = unit.Scale{What: "a time", Units: []string{"min", "h", "s", "day"}, High: 1e6, Example: "20 min"}
	refract = unit.Scale{What: "a reading", Units: []string{"", "°Bx"}, High: 95, Example: "52.5 ± 0.2"}
)

func TestQuantitiesAreReadAsWritten(t *testing.T) {
	for text, want := range map[string]struct {
		of unit.Scale
		q  unit.Quantity
	}{
		"6 °C":              {celsius, unit.Quantity{Number: 6, Unit: "°C"}},
		"-18 °C":            {celsius, unit.Quantity{Number: -18, Unit: "°C"}},
		"−18.5 ºC ± 2 ºC":   {celsius, unit.Quantity{Number: -18.5, Half: 2, Unit: "°C", Decimals: 1}},
		"130 °C":            {celsius, unit.Quantity{Number: 130, Unit: "°C"}},
		"9.50 % ± 0.5 % sd": {share, unit.Quantity{Number: 9.5, Half: 0.5, Sigma: true, Unit: "%", Decimals: 2}},
		"1 % ± 1 %":         {share, unit.Quantity{Number: 1, Half: 1, Unit: "%"}},
		"12\u00a0°Bx":       {refract, unit.Quantity{Number: 12, Unit: "°Bx"}},
		"90C":               {celsius, unit.Quantity{Number: 90, Unit: "°C"}},
		"90 c":              {celsius, unit.Quantity{Number: 90, Unit: "°C"}},
		"90 deg C":          {celsius, unit.Quantity{Number: 90, Unit: "°C"}},
		"60-65 C":           {celsius, unit.Quantity{Number: 62.5, Half: 2.5, Unit: "°C"}},
		"60 °C to 65 °C":    {celsius, unit.Quantity{Number: 62.5, Half: 2.5, Unit: "°C"}},
		"-2 - 2 °C":         {celsius, unit.Quantity{Number: 0, Half: 2, Unit: "°C"}},
		"194 ± 9 °F":        {celsius, unit.Quantity{Number: 90, Half: 5, Unit: "°C"}},                          // °C = (°F − 32)/1.8: NIST SP 811, B.8
		"40 F":              {celsius, unit.Quantity{Number: 4.4, Half: 0.5 * 5 / 9, Unit: "°C"}},               // 4.44
		"2.5 vol":           {gas, unit.Quantity{Number: 4.94, Half: 0.05 * 1.97681, Unit: "g/l", Decimals: 1}}, // 44.0095 g/mol over 22.263 l/mol (Weiss 1974)
		"5 % ± 2":           {share, unit.Quantity{Number: 5, Half: 2, Unit: "%"}},
		"5+-2 percent":      {share, unit.Quantity{Number: 5, Half: 2, Unit: "%"}},
		"12 ± 1 °Bx":        {refract, unit.Quantity{Number: 12, Half: 1, Unit: "°Bx"}},
		"11.5°":             {refract, unit.Quantity{Number: 11.5, Unit: "°Bx", Decimals: 1}},
		"11.5 Brix":         {refract, unit.Quantity{Number: 11.5, Unit: "°Bx", Decimals: 1}},
		"11.5 º Brix":       {refract, unit.Quantity{Number: 11.5, Unit: "°Bx", Decimals: 1}},
		"1.5 hrs":           {clock, unit.Quantity{Number: 1.5, Unit: "h", Decimals: 1}},
		"20 Minutes":        {clock, unit.Quantity{Number: 20, Unit: "min"}},
		"20 mins":           {clock, unit.Quantity{Number: 20, Unit: "min"}},
		"30 sec":            {clock, unit.Quantity{Number: 30, Unit: "s"}},
		"2 weeks":           {clock, unit.Quantity{Number: 14, Unit: "day"}},
		"12.4":              {refract, unit.Quantity{Number: 12.4, Decimals: 1}},
	} {
		q, err := want.of.Parse(text)
		require.NoError(t, err, text)
		assert.InDelta(t, want.q.Half, q.Half, 1e-12, text)
		q.Half = want.q.Half
		assert.Equal(t, want.q, q, text)
	}
}

func TestQuantitiesThatCannotBeSayWhy(t *testing.T) {
	for text, want := range map[string]struct {
		of   unit.Scale
		says string
	}{
		"131 °C":       {celsius, `"131 °C" is out of range for a temperature (it lies between -40 and 130 °C)`},
		"-41 °C":       {celsius, `"-41 °C" is out of range for a temperature (it lies between -40 and 130 °C)`},
		"6":            {celsius, `a temperature needs a unit (write: 6 °C)`},
		"300 F":        {celsius, `"300 F" is out of range for a temperature (it lies between -40 and 130 °C)`},
		"about 6 C":    {celsius, `"about 6 C" does not say by how much it may be off (write: 6 C; if you know by how much, add ± and that)`},
		"6-8 °C, cold": {celsius, `a temperature is not given in "°C, cold" (write: 6-8 °C; the rest belongs into a note:)`},
		"2:45":         {clock, `a time is not given in ":45" (write: 165 s, or: 2.75 h)`},
		"4":            {clock, `a time needs a unit (write: 4 min, or: 4 h, or: 4 s)`},
		"60-65 ± 1 %":  {share, `"60-65 ± 1 %" states its range twice (keep the range or the ±)`},
		"65-60 %":      {share, `"65-60 %" is not a range (write the smaller figure first)`},
		"280 K":        {celsius, `a temperature is not given in "K" (take 273.15 off and write °C)`},
		"warm":         {celsius, `"warm" does not begin with a number (write a temperature like "6 °C")`},
		"5 % ± 101 %":  {share, `"5 % ± 101 %" is not a range of a share (write the same unit on both sides of ±, such as "9.5 %")`},
		"5 % ± -1 %":   {share, `"5 % ± -1 %" is not a range of a share (write the same unit on both sides of ±, such as "9.5 %")`},
		"1 ± 1 h":      {refract, `a reading is not given in "h" (use °Bx, such as "52.5 ± 0.2")`},
		"1 % ± 2 %":    {share, `"1 % ± 2 %" reaches below zero (half of the range is at most the figure: write 1 % ± 1 %, or less)`},
		"96":           {refract, `"96" is out of range for a reading (it lies between 0 and 95)`},
		"12,5 %":       {share, `"12,5" has a comma (write: 12.5 %)`},
	} {
		_, err := want.of.Parse(text)
		require.Error(t, err, text)
		assert.Equal(t, want.says, err.Error(), text)
	}
}

// The range of a scale is its own, or that of its unit in data/limits.csv.
func TestSpanOfAScale(t *testing.T) {
	low, high := unit.Scale{Low: 1, High: 3}.Span("g")
	assert.Equal(t, [2]float64{1, 3}, [2]float64{low, high})
	low, high = unit.Scale{Low: 1, High: 3, Limit: "energy"}.Span("kJ/100 g")
	l := unit.LimitOf("energy", "kJ/100 g")
	assert.Equal(t, [2]float64{l.Low, l.High}, [2]float64{low, high})
	assert.True(t, l.Holds(l.Low) && l.Holds(l.High) && l.Holds((l.Low+l.High)/2))
	assert.False(t, l.Holds(l.High*1.01) || l.Holds(l.Low-1))
	assert.Panics(t, func() { unit.LimitOf("energy", "stone") })
}

// 1 g is 10³ mg and 10⁶ µg (SI); what is no mass has no factor.
func TestUnitsOfMass(t *testing.T) {
	for _, c := range []struct {
		from, to string
		factor   float64
		ok       bool
	}{
		{"g", "g", 1, true}, {"IU", "IU", 1, true}, {"g", "µg", 1e6, true}, {"µg", "mg", 1e-3, true},
		{"mg", "IU", 0, false}, {"kJ", "mg", 0, false},
	} {
		factor, ok := unit.Convert(c.from, c.to)
		assert.Equal(t, c.ok, ok, c)
		assert.InDelta(t, c.factor, factor, 1e-12, c)
	}
}

// Whatever the file holds, an error is short: of a long text it shows the beginning.
func TestLongTextsAreClippedInErrors(t *testing.T) {
	for n, whole := range map[int]bool{40: true, 41: false} {
		_, _, err := unit.ParseAmount("3 " + strings.Repeat("x", n) + " sugar")
		assert.Equal(t, whole, strings.Contains(err.Error(), `"`+strings.Repeat("x", n)+`"`), n)
		assert.Contains(t, err.Error(), strings.Repeat("x", 40))
	}
}
