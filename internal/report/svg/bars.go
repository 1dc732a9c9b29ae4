package svgreport

import (
	"fmt"
	"math"

	"sipsum/internal/sheet"
)

// The measures of a bar: its height, the whisker below it, and the bar of the coffee alone.
const (
	barTall     = 16.0
	whiskerAt   = barTall + 4
	capTall     = 3.0
	aloneAt     = whiskerAt + 5
	aloneTall   = 5.0
	leastNumber = 12.0 // per cent of the axis that a share needs for its number
)

// Bar draws a bar: a segment for each who brings some of it with its share, what nobody has
// measured hatched, the range as a whisker below, and below that the coffee alone.
func Bar(a sheet.Axis, b sheet.Bar) string {
	p := piece{axis: a}
	from, to := 0.0, b.Mean
	if len(b.Segments) == 0 {
		p.rect(from, to, 0, barTall, `class="k-many"`)
	}
	for _, s := range b.Segments {
		end := from + s.Amount
		p.rect(from, end, 0, barTall, fmt.Sprintf(`class="k-%s seam"`, s.Hue))
		if p.at(end)-p.at(from) >= leastNumber {
			p.text(from, 6, barTall-4, "t-"+string(s.Hue)+" share", "start", s.Share)
		}
		from = end
	}
	if b.Most > b.Mean {
		p.rect(b.Mean, min(b.Most, a.To), 0.5, barTall-1, `class="unmeasured"`)
		if math.IsInf(b.Most, 1) || b.Most > a.To { // it goes on
			p.text(a.To, -2, barTall-4, "goes", "end", "…")
		}
	}
	p.whisker(b.Low, b.High, whiskerAt)
	tall := whiskerAt + capTall + 1
	if !math.IsNaN(b.Alone) {
		p.rect(a.From, max(b.Alone, a.From), aloneAt, aloneTall, `class="alone"`)
		p.line(b.Alone, aloneAt, b.Alone, aloneAt+aloneTall, "ink") // of next to nothing there is a stroke at least
		tall = aloneAt + aloneTall + 2
	}
	return p.drawn("bar", tall)
}

// whisker draws a range.
func (p *piece) whisker(low, high, y float64) {
	if !(high > low) {
		return
	}
	p.line(low, y, high, y, "ink")
	for _, x := range []float64{low, high} {
		p.line(x, y-capTall, x, y+capTall, "ink")
	}
}

// Scale draws a place on a scale: a dot and its range, and a ring for the coffee alone.
func Scale(a sheet.Axis, b sheet.Bar) string {
	const y, dot, tall = 8.0, 4.5, 16.0
	p := piece{axis: a}
	p.line(a.From, y, a.To, y, "rule")
	p.whisker(b.Low, b.High, y)
	if !math.IsNaN(b.Alone) {
		p.add(`<circle cx="%.2f%%" cy="%g" r="%g" class="ring"/>`, p.at(b.Alone), y, dot)
	}
	p.add(`<circle cx="%.2f%%" cy="%g" r="%g" class="dot"/>`, p.at(b.Mean), y, dot)
	return p.drawn("scale", tall)
}

// Patch is the sign of a hue in a legend, and of what has a sign of its own: "unmeasured",
// "alone", "dot", "ring".
func Patch(kind string) string {
	inside := `<rect x="0.5" y="0.5" width="10" height="10" class="` + kind + `"/>`
	switch kind {
	case "alone":
		inside = `<rect x="0.5" y="3.5" width="10" height="5" class="alone"/>`
	case "dot", "ring":
		inside = `<circle cx="5.5" cy="5.5" r="4.5" class="` + kind + `"/>`
	}
	return `<svg class="patch" width="11" height="11" aria-hidden="true">` + inside + `</svg>`
}
