package textreport_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/curdling"
	"sipsum/internal/report/text"
)

// veiled is a made-up map with every verdict and every way out.
func veiled() *curdling.Judgement {
	c := &curdling.Judgement{
		Milk: []string{"steamed milk"}, Sour: hostile, Protein: "casein of milk", Celsius: 55, PH: size(5.62, 0.08, "pH"),
		Stand: curdling.Stand{Curdling: curdling.Band{Celsius: 55, Low: 5.4, High: 6, Source: "Author 2001\x1b[2J, table 1"}, MilkShare: 0.52, Smooth: 0.34, Verdict: curdling.Doubtful},
		Map:   curdling.Map{Doses: []float64{0, 0.5, 1, 2}, Milks: []float64{0.25, 1, 4}, Shares: []float64{0.21, 0.52, 0.81}},
		Ways: []curdling.Way{
			{Kind: curdling.Buffer, Salt: curdling.Salts()[1], Grams: 0.0712, Celsius: 55, PH: 5.98, Smooth: 0.95},
			{Kind: curdling.LessSour, Grams: 3.04, Celsius: 55, PH: 5.97, Smooth: 0.96},
			{Kind: curdling.MoreMilk, Grams: 41, Celsius: 55, PH: 5.98, Smooth: 0.95},
			{Kind: curdling.Cooler, Celsius: 33.8, PH: 5.62, Smooth: 0.95},
		},
	}
	for _, row := range []string{"s?cc", "ss?c", "sss?"} {
		var cells []curdling.Cell
		for _, v := range row {
			cells = append(cells, curdling.Cell{Verdict: map[rune]curdling.Verdict{'s': curdling.Smooth, '?': curdling.Doubtful, 'c': curdling.Curdles}[v]})
		}
		c.Map.Cells = append(c.Map.Cells, cells)
	}
	return c
}

// curdleMap prints a map with its blanks folded.
func curdleMap(t *testing.T, c *curdling.Judgement, whole bool) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, textreport.CurdleMap(&out, c, whole, textreport.Style{}))
	return strings.Join(strings.Fields(out.String()), " ")
}

func TestSheetHasNoRoomForTheCurdleMap(t *testing.T) {
	assert.Contains(t, curdleMap(t, veiled(), true), "times what the drink holds")
	assert.NotContains(t, curdleMap(t, veiled(), false), "times what the drink holds")
}

func TestCurdleMapSaysWhatToRead(t *testing.T) {
	text := curdleMap(t, &curdling.Judgement{Milk: []string{"oat"}, Celsius: 6, Why: "no table says how it buffers", Do: "titrate oat"}, true)
	assert.Contains(t, text, "No estimate: no table says how it buffers.")
	assert.Contains(t, text, "Reading to take: titrate oat.")
	assert.NotContains(t, text, "pH")
}

// Amounts are rounded so that the drink stays smooth: more of a help, less heat.
func TestWaysAreRoundedToTheSafeSide(t *testing.T) {
	text := curdleMap(t, veiled(), true)
	for _, want := range []string{"0.072 g sodium bicarbonate (E 500)", "3.1 g less", "41 g more", "poured at 33 °C or cooler"} {
		assert.Contains(t, text, want)
	}
}
