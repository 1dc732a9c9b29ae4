package svgreport

import (
	"fmt"
	"html"
	"strings"

	"sipsum/internal/sheet"
)

// Pieces are drawings for a page that says their words itself: as wide as the page lets them be,
// their type of one size whatever the width, their colours those that the page gives to classes
// (k-a, k-coffee). What nobody has measured is filled with the pattern "unmeasured" (Patterns).

// piece is a drawing whose places across are per cent of its width.
type piece struct {
	strings.Builder
	axis sheet.Axis
}

// at is where a value stands on the axis, in per cent of it; what is beyond stands at its end.
func (p *piece) at(x float64) float64 {
	const all = 100
	return min(max((x-p.axis.From)/(p.axis.To-p.axis.From)*all, 0), all)
}

func (p *piece) add(format string, a ...any) { fmt.Fprintf(&p.Builder, format, a...) }

// rect draws a rectangle between two values.
func (p *piece) rect(from, to, y, tall float64, rest string) {
	x := p.at(from)
	p.add(`<rect x="%.2f%%" y="%g" width="%.2f%%" height="%g" %s/>`, x, y, p.at(to)-x, tall, rest)
}

// line draws a line between two values.
func (p *piece) line(from, y, to, y2 float64, class string) {
	p.add(`<line x1="%.2f%%" y1="%g" x2="%.2f%%" y2="%g" class="%s"/>`, p.at(from), y, p.at(to), y2, class)
}

// text sets a text at a value, moved by so much.
func (p *piece) text(at, dx, y float64, class, anchor, text string) {
	p.add(`<text x="%.2f%%" dx="%g" y="%g" class="%s" text-anchor="%s">%s</text>`, p.at(at), dx, y, class, anchor, html.EscapeString(text))
}

// drawn closes a piece of a height. Its words stand beside it: for who hears the page it is silent.
func (p *piece) drawn(class string, tall float64) string {
	return fmt.Sprintf(`<svg class="%s" width="100%%" height="%g" aria-hidden="true">%s</svg>`, class, tall, p.String())
}

// Patterns are the fills that pieces refer to; a page has them once.
func Patterns() string {
	return `<svg class="patterns" width="0" height="0" aria-hidden="true">` + patterns() + `</svg>`
}

func patterns() string {
	return `<defs><pattern id="unmeasured" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V5" class="hatch"/></pattern></defs>`
}

// Axis draws an axis with its ticks and its unit.
func Axis(a sheet.Axis) string {
	const tick, base = 4, 15
	p := piece{axis: a}
	p.line(a.From, 1, a.To, 1, "rule")
	for i, t := range a.Ticks {
		p.line(t.At, 1, t.At, 1+tick, "rule")
		anchor, text := "middle", t.Text
		switch {
		case i == 0:
			anchor = "start"
		case i == len(a.Ticks)-1:
			anchor, text = "end", t.Text+" "+a.Unit
		}
		p.text(t.At, 0, base, "tick", anchor, text)
	}
	return p.drawn("axis", base+3)
}
