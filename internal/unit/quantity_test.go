package unit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/unit"
)

var (
	celsius = unit.Scale{What: "a temperature", Units: []string{"°C"}, Low: -40, High: 130, Example: "6 °C"}
	share   = unit.Scale{What: "a share", Units: []string{"%"}, High: 100, Example: "9.5 %"}
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
		"12.4":              {refract, unit.Quantity{Number: 12.4, Decimals: 1}},
	} {
		q, err := want.of.Parse(text)
		require.NoError(t, err, text)
		assert.Equal(t, want.q, q, text)
	}
}

func TestQuantitiesThatCannotBeSayWhy(t *testing.T) {
	for text, want := range map[string]struct {
		of   unit.Scale
		says string
	}{
		"131 °C":      {celsius, `"131 °C" is out of range for a temperature (it lies between -40 and 130 °C)`},
		"-41 °C":      {celsius, `"-41 °C" is out of range for a temperature (it lies between -40 and 130 °C)`},
		"6":           {celsius, `a temperature needs a unit (use °C, such as "6 °C")`},
		"40 F":        {celsius, `a temperature is not given in "F" (take 32 off, multiply by 5/9 and write °C)`},
		"280 K":       {celsius, `a temperature is not given in "K" (take 273.15 off and write °C)`},
		"6 C":         {celsius, `a temperature is not given in "C" (write °C)`},
		"warm":        {celsius, `"warm" does not begin with a number (write a temperature like "6 °C")`},
		"5 % ± 2":     {share, `a share needs a unit (use %, such as "9.5 %")`},
		"5 % ± 101 %": {share, `"5 % ± 101 %" is not a range of a share (write the same unit on both sides of ±, such as "9.5 %")`},
		"5 % ± -1 %":  {share, `"5 % ± -1 %" is not a range of a share (write the same unit on both sides of ±, such as "9.5 %")`},
		"12 ± 1 °Bx":  {refract, `"12 ± 1 °Bx" is not a range of a reading (write the same unit on both sides of ±, such as "52.5 ± 0.2")`},
		"1 % ± 2 %":   {share, `"1 % ± 2 %" reaches below zero (half of the range is at most the figure: write 1 % ± 1 %, or less)`},
		"96":          {refract, `"96" is out of range for a reading (it lies between 0 and 95)`},
		"12,5 %":      {share, `"12,5" has a comma (write 12.5 with a decimal point)`},
	} {
		_, err := want.of.Parse(text)
		require.Error(t, err, text)
		assert.Equal(t, want.says, err.Error(), text)
	}
}
