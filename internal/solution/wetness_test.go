package solution_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/solution"
)

// Shares by hand, of what is not fat; the bounds are rows of data/solution_constants.csv.
func TestWetness(t *testing.T) {
	cases := map[string]struct {
		grams map[constituent.ID]float64
		want  float64
	}{
		"honey (Crane 1980: 17.2 % water)": {map[constituent.ID]float64{"WATER": 17.2, "FRUS": 44, "GLUS": 38.8}, 17.2},
		"cream: fat does not count":        {map[constituent.ID]float64{"WATER": 60, "FASAT": 36, "LACS": 4}, 100 * 60.0 / 64},
		"spirit: alcohol wets":             {map[constituent.ID]float64{"WATER": 60, "ALC": 33, "SUCS": 7}, 93},
		"flour":                            {map[constituent.ID]float64{"WATER": 12, "STARCH": 70, "PROCNT": 16, "FAPU": 50, "ASH": 2}, 12},
		"oil":                              {map[constituent.ID]float64{"FASAT": 10, "FAPU": 90}, 0},
		"nothing":                          {nil, 0},
	}
	for name, c := range cases {
		for solid, bound := range map[bool]float64{false: 14.5, true: 40} {
			share, least := solution.Wetness(c.grams, solid)
			assert.InDelta(t, c.want, share, 1e-9, name)
			assert.Equal(t, bound, least, name)
		}
	}
}

// Ghee holds 0.2 to 0.5 % of water and butter 16 (SR28); what is not mostly fat is none
// however dry it is.
func TestIsFat(t *testing.T) {
	for name, c := range map[string]struct {
		grams map[constituent.ID]float64
		want  bool
	}{
		"ghee":                 {map[constituent.ID]float64{"WATER": 0.24, "FASAT": 62, "FAMS": 29, "FAPU": 3.7, "FAT-other": 5}, true},
		"butter":               {map[constituent.ID]float64{"WATER": 16, "FASAT": 51, "FAMS": 21, "FAPU": 3, "FAT-other": 6, "PROCNT": 1, "ASH": 2}, false},
		"chocolate of sugar":   {map[constituent.ID]float64{"WATER": 1, "FASAT": 30, "SUCS": 69}, false},
		"just as much":         {map[constituent.ID]float64{"FASAT": 50, "SUCS": 50}, false},
		"half a liqueur":       {map[constituent.ID]float64{"FASAT": 80, "ALC": 6, "SUCS": 14}, false},
		"fat with a few drops": {map[constituent.ID]float64{"FASAT": 80, "WATER": 2, "ALC": 2.9, "SUCS": 15.1}, true},
		"nothing":              {nil, false},
	} {
		assert.Equal(t, c.want, solution.IsFat(c.grams), name)
	}
}

// A twentieth of what is dissolved, by amount, is our own bound. Sucrose's constant has
// been seen in print, glucose's has not; an acid without a constant rests on none.
func TestWhatRestsOnMemory(t *testing.T) {
	of := func(glucose float64) map[constituent.ID]float64 { // mol of a mol of sugars
		return map[constituent.ID]float64{
			"WATER": 1000, "GLUS": glucose * constituent.Must("GLUS").Molar, "SUCS": (1 - glucose) * constituent.Must("SUCS").Molar,
		}
	}
	assert.False(t, solution.RestsOnMemory(of(0)))
	assert.False(t, solution.RestsOnMemory(of(0.049)))
	assert.True(t, solution.RestsOnMemory(of(0.051)))
	assert.True(t, solution.RestsOnMemory(of(1)))
	assert.False(t, solution.RestsOnMemory(map[constituent.ID]float64{"WATER": 90, "CITAC": 10}))
	assert.False(t, solution.RestsOnMemory(map[constituent.ID]float64{"WATER": 90}))
	assert.False(t, solution.RestsOnMemory(nil))
}

func TestWhatIsNoPartOfTheMassHasNoVolume(t *testing.T) {
	assert.Panics(t, func() { solution.VolumeOf(constituent.Caffeine) })
	assert.Panics(t, func() { solution.RefractionOf(constituent.Caffeine) })
}
