package sheet_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acidity"
	"sipsum/internal/chemistry"
	"sipsum/internal/composition"
	"sipsum/internal/estimate"
	"sipsum/internal/sheet"
)

func about(mean float64, unit string) chemistry.Estimate {
	return chemistry.Estimate{Result: composition.Result{Summary: estimate.Summary{Mean: mean, Low: mean, High: mean}, Unit: unit}}
}

func kept(why string, low, high float64) chemistry.Estimate {
	return chemistry.Estimate{Result: composition.Result{Summary: estimate.Summary{Mean: math.NaN(), Low: low, High: high}}, Why: why}
}

func sour() *chemistry.Chemistry {
	return &chemistry.Chemistry{
		Celsius: 6, PH: about(3.1, "pH"), PHMeter: about(3, "pH"), Density: about(1.05, "g/ml").Result, Brix: about(12, "°Bx").Result,
		BrixCorrected: about(12.05, "°Bx"), BrixAcid: about(20, ""), Capacity: about(9, "mmol/(l·pH)"), StrongIons: about(3, "mmol/l"),
		Acidity: []chemistry.Acidity{{EndPoint: 8.1, Per100g: about(0.6, "g/100 g")}, {EndPoint: 7, Per100g: about(0.5, "g/100 g")}},
	}
}

func rowNames(rows []sheet.LiquidRow) []string {
	out := []string{}
	for _, r := range rows {
		out = append(out, r.Name)
	}
	return out
}

func TestRowsOfALiquid(t *testing.T) {
	short := sheet.LiquidOf(sour(), false)
	assert.Equal(t, []string{"pH at 25 °C", "titratable acidity", "refractometer", "density at 20 °C", "°Brix ÷ titratable acidity"}, rowNames(short.Rows))
	assert.Empty(t, short.More)
	assert.Empty(t, short.Withheld)
	whole := sheet.LiquidOf(sour(), true)
	assert.Equal(t, []string{
		"pH at 6 °C", "pH at 25 °C", "titratable acidity", "  to pH 7.0", "refractometer", "with its acid, °Bx", "density at 20 °C", "°Brix ÷ titratable acidity",
	}, rowNames(whole.Rows))
	assert.Equal(t, []string{"buffer, a litre by one pH", "acid that minerals hold, /l"}, rowNames(whole.More))
	for _, r := range whole.Rows {
		assert.False(t, r.FromMemory, r.Name)
	}

	c := sour()
	c.Celsius, c.BrixCorrected, c.CO2, c.Unseen = acidity.MeterCelsius, about(12.04, "°Bx"), about(3, "g/l").Result, []string{"an acid"}
	c.Degassed, c.Capacity = about(3.2, "pH"), kept("none", math.NaN(), math.NaN())
	whole = sheet.LiquidOf(c, true)
	assert.Equal(t, []string{
		"pH at 25 °C", "pH at 25 °C, gas gone", "titratable acidity", "  to pH 7.0", "refractometer", "density at 20 °C", "°Brix ÷ titratable acidity", "carbon dioxide",
	}, rowNames(whole.Rows))
	assert.Empty(t, whole.More, "strong ions without a buffer are half a story")
	assert.True(t, whole.Rows[0].FromMemory)
	assert.False(t, whole.Rows[4].FromMemory, "a refractometer asks no acid")

	c.Water = &chemistry.Water{}
	watery := rowNames(sheet.LiquidOf(c, false).Rows)
	assert.Equal(t, []string{"carbon dioxide, bound too", "hardness, as CaCO₃", "alkalinity, as CaCO₃"}, watery[len(watery)-3:])
}

// Less acid than a burette reads is said to be hardly there, not printed as a figure.
func TestHardlySourIsNoFigure(t *testing.T) {
	for acid, form := range map[float64]sheet.Form{0.0029: sheet.HardlyThere, chemistry.HardlySour: sheet.Estimated} {
		c := sour()
		c.Acidity[0].Per100g = about(acid, "g/100 g")
		assert.Equal(t, form, sheet.LiquidOf(c, false).Rows[1].Form, acid)
	}
}

// What is withheld says why, what bounds it, and which reading would tell: none of what has
// been titrated, or holds no water.
func TestWithheld(t *testing.T) {
	nan := math.NaN()
	c := sour()
	c.PHMeter, c.TooDry, c.Density.Mean = kept("nobody knows its acids", 3, nan), "too little water", nan
	c.Acidity[0].Per100g = kept("nobody has titrated it", nan, nan)
	l := sheet.LiquidOf(c, false)
	assert.NotContains(t, rowNames(l.Rows), "pH at 25 °C")
	assert.NotContains(t, rowNames(l.Rows), "refractometer")
	assert.Equal(t, []sheet.Withheld{
		{What: "no °Brix and no density", Why: "too little water"},
		{"no pH", "nobody knows its acids", "; it is above 3.00", "ph", "A meter tells"},
		{"no titratable acidity", "nobody has titrated it", "", "ta", "A burette tells"},
	}, l.Withheld)

	for _, e := range []struct {
		why, bounds, reading string
		low, high            float64
	}{
		{"so", "; it is between 3.0 and 4.5 by what they say", "ph", 3, 4.5}, {"so", "; it is below 4.50", "ph", nan, 4.5}, {"so", "", "ph", nan, nan},
		{"it was titrated and read", "", "", nan, nan}, {"there is no water in it", "", "", nan, nan},
	} {
		c := sour()
		c.PHMeter = kept(e.why, e.low, e.high)
		c.Acidity[0].Per100g = kept(e.why, nan, nan)
		got := sheet.LiquidOf(c, true).Withheld
		require.Len(t, got, 1, "the same reason is said once")
		assert.Equal(t, e.bounds, got[0].Bounds, e.why)
		assert.Equal(t, e.reading, got[0].Reading, e.why)
		assert.Equal(t, e.reading == "", got[0].Who == "", e.why)
	}
	c = sour()
	c.Acidity = nil
	assert.Empty(t, sheet.LiquidOf(c, true).Withheld)
}

func TestSentences(t *testing.T) {
	c := sour()
	assert.Contains(t, sheet.GasGone(c), "no carbon dioxide to lose")
	c.CO2 = about(3, "g/l").Result
	assert.Contains(t, sheet.GasGone(c), "closed bottle")
	c.Degassed.Why = "nobody knows"
	assert.Empty(t, sheet.GasGone(c))

	assert.False(t, sheet.PHStands(c), "it rests on nothing")
	c.RestsOn = []acidity.Calibration{{}}
	assert.True(t, sheet.PHStands(c))
	c.PHMeter.Why = "withheld"
	assert.False(t, sheet.PHStands(c))
	assert.Equal(t, " as a juice", sheet.RestsAs(acidity.Calibration{Group: "juice"}))
	assert.Equal(t, " as brewed", sheet.RestsAs(acidity.Calibration{Brewed: true}))
	assert.Equal(t, " where it parts", sheet.RestsAs(acidity.Calibration{Parted: true}))
	assert.Empty(t, sheet.RestsAs(acidity.Calibration{}))

	assert.True(t, sheet.Freezes(&chemistry.Keeping{Freezing: about(-0.2, "°C")}))
	assert.False(t, sheet.Freezes(&chemistry.Keeping{Freezing: about(-0.1, "°C")}))
	assert.False(t, sheet.Freezes(&chemistry.Keeping{Freezing: chemistry.Estimate{Result: about(-3, "°C").Result, Why: "so"}}))
	assert.Contains(t, sheet.Doses(), sheet.Acids())
	assert.Contains(t, sheet.Doses(), "comes first")
}
