package svgreport_test

import (
	"bytes"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/reporttest"
	"sipsum/internal/report/svg"
	"sipsum/internal/sheet"
)

// The first page as a drawing is XML whatever the names, holds nothing that runs or is fetched, and
// says the sentences of the page.
func TestSheetsAreDrawn(t *testing.T) {
	for name, text := range reporttest.PaperDrinks(t) {
		paper := sheet.PaperOf(reporttest.Read(t, text))
		var out bytes.Buffer
		require.NoError(t, svgreport.Sheet(&out, paper), name)
		said, elements := texts(t, out.String())
		for element := range elements {
			assert.Contains(t, []string{"svg", "title", "style", "defs", "pattern", "path", "rect", "text", "line", "circle"}, element, name)
		}
		assert.NotContains(t, out.String(), "href", name)
		assert.NotContains(t, out.String(), "NaN", name)
		squeezed := strings.Join(strings.Fields(said), "")
		for _, list := range [][]sheet.Block{paper.Brief, {paper.Build}, paper.Guest} {
			for _, b := range list {
				for _, l := range b.Lines {
					for _, word := range strings.Fields(l.Lead + " " + l.Strong + " " + l.Text) {
						assert.Contains(t, squeezed, word, name)
					}
				}
			}
		}
	}
	assert.ErrorContains(t, svgreport.Sheet(full{}, sheet.PaperOf(reporttest.Read(t, reporttest.HostileDrink()))), "disk full")
}

// A bar is as long as its figure on its axis, its segments lie behind each other, and what nobody has
// measured lies behind them up to its most.
func TestBarsAreDrawnToTheirAxis(t *testing.T) {
	axis := sheet.Axis{Unit: "g", To: 20}
	b := sheet.Bar{Mean: 10, Low: 8, High: 12, Most: 16, Alone: 5, Segments: []sheet.Segment{{Hue: "a", Amount: 6, Share: "60 %"}, {Hue: "b", Amount: 4, Share: "40 %"}}}
	drawn := svgreport.Bar(axis, b)
	for _, want := range []string{
		`x="0.00%" y="0" width="30.00%" height="16" class="k-a seam"`, `x="30.00%" y="0" width="20.00%" height="16" class="k-b seam"`,
		`x="50.00%" y="0.5" width="30.00%" height="15" class="unmeasured"`, `x1="40.00%" y1="20" x2="60.00%" y2="20"`, `width="25.00%" height="5" class="alone"`,
	} {
		assert.Contains(t, drawn, want)
	}
	b.Most = math.Inf(1)
	assert.Contains(t, svgreport.Bar(axis, b), `x="50.00%" y="0.5" width="50.00%"`, "nothing bounds it: it runs off the axis")
	assert.Contains(t, svgreport.Bar(axis, b), "…")
	b.Most, b.Alone = b.Mean, math.NaN()
	assert.NotContains(t, svgreport.Bar(axis, b), "unmeasured")
	assert.NotContains(t, svgreport.Bar(axis, b), "alone")
}

// luminance is that of WCAG 2.1, "relative luminance".
func luminance(t *testing.T, colour string) float64 {
	hex := strings.TrimPrefix(colour, "#")
	if len(hex) == 3 {
		hex = string([]byte{hex[0], hex[0], hex[1], hex[1], hex[2], hex[2]})
	}
	sum := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		n, err := strconv.ParseUint(hex[2*i:2*i+2], 16, 8)
		require.NoError(t, err, colour)
		c := float64(n) / 255
		if c <= 0.03928 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += weight * c
	}
	return sum
}

// Words on a bar are read (WCAG 2.1, 1.4.3: 4.5 to 1); in print no ink is a colour.
func TestInksAreRead(t *testing.T) {
	for _, h := range sheet.Hues() {
		inks, ok := svgreport.Palette[h]
		require.True(t, ok, h)
		for _, ink := range []svgreport.Ink{inks.Light, inks.Dark, inks.Print} {
			a, b := luminance(t, ink.Fill), luminance(t, ink.Text)
			assert.GreaterOrEqual(t, (max(a, b)+0.05)/(min(a, b)+0.05), 4.5, "%s: %v", h, ink)
		}
		fill := strings.TrimPrefix(inks.Print.Fill, "#")
		assert.Equal(t, strings.Repeat(fill[:len(fill)/3], 3), fill, "%s is a colour in print", h)
	}
}
