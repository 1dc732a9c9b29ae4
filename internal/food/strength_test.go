package food_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// Names as tables print them: a range and an estimate state no strength.
func TestStrengthOfAName(t *testing.T) {
	for name, vol := range map[string]float64{
		"Rum, 40 % vol.": 40, "Alcoholic beverage, distilled, gin, 90 proof": 45, "Sherry, 18.5 vol%": 18.5, "Rhum 37,5 % vol": 37.5, "Whisky 80-proof": 40,
		"Alcoholic beverage, spirit, approximately 40% v/v, all": 0, "Beer, full strength (alcohol 4-4.9% v/v)": 0, "Gin": 0, "Rum, 40 % vol, or 54 % vol": 0,
	} {
		got, stated := food.NamedStrength(sr("x", name, "spirit", nil))
		assert.InDelta(t, vol, got, 1e-9, name)
		assert.Equal(t, vol > 0, stated, name)
	}
}

// A label of 40 % vol may be off by 0.3 (Regulation (EU) No 1169/2011, Annex XII): 33.4 g in
// 100 g then vary by 0.3/√3/40. A figure that is not of the strength is told.
func TestANamedStrengthFixesTheAlcohol(t *testing.T) {
	rum := map[constituent.ID]float64{"WATER": 66.6, "ALC": 33.4}
	for name, sd := range map[string]float64{"Rum, 40 % vol": 33.4 * 0.3 / math.Sqrt(3) / 40, "Rum": 3, "Rum, 54 % vol": 3} {
		p := food.Enter(sr("x", name, "spirit", rum), nil)
		alcohol := p.Cell("ALC")
		if sd < 1 {
			assert.InDelta(t, sd, 100*alcohol.SD, 1e-3, name)
			assert.Less(t, 100*p.Cell("WATER").SD, 2*sd, name)
		} else {
			assert.Greater(t, 100*alcohol.SD, 1.0, name)
		}
		told := false
		for _, n := range p.Notes {
			told = told || n.Kind == "strength"
		}
		assert.Equal(t, name == "Rum, 54 % vol", told, name)
	}
}
