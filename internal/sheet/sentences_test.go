package sheet_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/chemistry"
	"sipsum/internal/drink"
	"sipsum/internal/sheet"
)

func TestHoldingDefersToLocalCodes(t *testing.T) {
	keeps := drink.Keeps{Days: 5, At: &drink.Quantity{Number: 4}}
	const source = "FDA Food Code, 1-201.10, table B"
	for name, c := range map[string]struct {
		holding chemistry.Holding
		says    string
	}{
		"sour syrup":     {chemistry.Holding{Keeps: keeps, PH: 3.41, WaterActivity: 0.894, Source: source}, "Kept 5 days at 4 °C: with a pH up to 3.41 and a water activity up to 0.89 it needs no control"},
		"infusion":       {chemistry.Holding{Keeps: keeps, PH: math.NaN(), WaterActivity: 1, NeedsAssessment: true, Source: source}, "with a pH that nobody has read and a water activity up to 1.00 it needs control of time and temperature (FDA Food Code, 1-201.10, table B): keep it cold. An estimate lifts nothing"},
		"sweet and mild": {chemistry.Holding{Keeps: keeps, PH: 5.6, WaterActivity: 0.97, NeedsAssessment: true, Source: source}, "with a pH up to 5.60 and a water activity up to 0.97 it needs control of time and temperature, unless a product assessment"},
		"milk punch":     {chemistry.Holding{Keeps: keeps, PH: 4, WaterActivity: 0.99, NeedsAssessment: true, Animal: true, Source: source}, "it holds milk or egg, so it needs control of time and temperature"},
		"long":           {chemistry.Holding{Keeps: drink.Keeps{Days: 8, At: &drink.Quantity{Number: 6}}, PH: 5, WaterActivity: 0.99, NeedsAssessment: true, Source: source}, "the day it is made counted. 8 days are too long. 6 °C is too warm."},
		"not too long":   {chemistry.Holding{Keeps: drink.Keeps{Days: 7, At: &drink.Quantity{Number: 5}}, PH: 5, WaterActivity: 0.99, NeedsAssessment: true, Source: source}, "the day it is made counted. What was warm"},
		"no stated °":    {chemistry.Holding{Keeps: drink.Keeps{Days: 1}, PH: 3, WaterActivity: 0.9, Source: source}, "Kept 1 day: "},
	} {
		text := sheet.Holding(&c.holding)
		assert.Contains(t, text, c.says, name)
		assert.Contains(t, text, "Your local code comes first.", name)
		assert.NotContains(t, text, "NaN", name)
		assert.Equal(t, c.holding.NeedsAssessment, strings.Contains(text, "use it up within 7 days at 5 °C or colder"), name)
		assert.Equal(t, c.holding.NeedsAssessment, strings.Contains(text, "from 57 to 21 °C within 2 h and to 5 °C within 6 h in all"), name)
	}
}
