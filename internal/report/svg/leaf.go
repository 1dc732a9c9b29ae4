package svgreport

import (
	"fmt"
	"html"
	"io"
	"strings"

	"sipsum/internal/sheet"
)

const style = `.serif{font-family:"IBM Plex Serif",Palatino,"Book Antiqua",Georgia,serif}` +
	`.sans{font-family:"Noto Sans","IBM Plex Sans",system-ui,sans-serif;font-variant-numeric:tabular-nums}` +
	`.bold{font-weight:700}text{fill:` + ink + `}.soft{fill:` + soft + `}.accent{fill:` + accent + `}`

const hatch = `<defs><pattern id="unmeasured" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">` +
	`<path d="M0 0V5" stroke="#b9ae9f"/></pattern></defs>`

// Leaf draws a leaf.
func Leaf(w io.Writer, l *sheet.Leaf) error {
	c := &canvas{y: margin - 6}
	c.at(wide-margin, c.y+10, headFace, "end", strings.ToUpper(l.Label))
	c.write(margin, inner-headFace.takes(l.Label)-10, titleFace, l.Title)
	c.y += 3
	c.write(margin, inner, softFace, strings.Join(l.Below, " · "))
	c.y += 8
	c.ruled(margin, wide-margin, rule)
	for i := range l.Blocks {
		if l.Blocks[i].Role != sheet.Aside {
			c.block(&l.Blocks[i])
		}
	}
	c.y += 12
	c.ruled(margin, wide-margin, rule)
	c.write(margin, inner, softFace, strings.Join(l.Foot, " · "))
	tall := c.y + margin*0.7
	_, err := fmt.Fprintf(w, "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" lang=\"%s\" width=\"%g\" height=\"%.0f\" viewBox=\"0 0 %g %.0f\">\n<title>%s</title>\n<style>%s</style>\n%s\n<rect width=\"100%%\" height=\"100%%\" fill=\"%s\"/>\n%s</svg>\n",
		html.EscapeString(l.Language), wide, tall, wide, tall, html.EscapeString(l.Title+", "+l.Label), style, hatch, paperIs, c.marks.String())
	return err
}

// lead is the column in which headings stand beside what they head.
const lead = 68.0

func (c *canvas) block(b *sheet.Block) {
	c.y += 10
	switch b.Role {
	case sheet.InLine:
		c.inLine(b)
		return
	case sheet.Boxed:
		c.boxed(b)
		return
	}
	if b.Heading != "" {
		c.write(margin, inner, headFace, strings.ToUpper(b.Heading))
	}
	c.figures(b.Figures)
	if b.Grid != nil {
		c.grid(b.Grid)
	}
	for _, l := range b.Lines {
		switch b.Role {
		case sheet.Spoken:
			c.beside(softFace, l.Lead, serifFace, l.Text)
		case sheet.Small, sheet.Tabled:
			c.write(margin, inner, softFace, l.Sentence())
		default:
			c.write(margin, inner, bodyFace, l.Sentence())
		}
	}
}

// inLine sets a heading and a list beside it.
func (c *canvas) inLine(b *sheet.Block) {
	texts := make([]string, len(b.Lines))
	for i, l := range b.Lines {
		texts[i] = l.Text
	}
	c.beside(headFace, strings.ToUpper(b.Heading), serifFace, strings.Join(texts, " · "))
}

// beside sets one text in the column of headings and one beside it.
func (c *canvas) beside(f face, head string, g face, text string) {
	from := c.y
	c.write(margin+lead, inner-lead, g, text)
	c.at(margin, from+g.tall(), f, "start", head)
}

// figures stand beside each other, as many as there is room for.
func (c *canvas) figures(list []sheet.Figured) {
	if len(list) == 0 {
		return
	}
	x := margin
	c.y += softFace.tall() + bigFace.tall()
	for _, f := range list {
		room := max(bigFace.takes(f.Text), softFace.takes(f.Label)) + 20
		if x > margin && x+room > wide-margin {
			x, c.y = margin, c.y+softFace.tall()+bigFace.tall()
		}
		c.at(x, c.y-bigFace.tall(), softFace, "start", f.Label)
		c.at(x, c.y, bigFace, "start", f.Text)
		x += room
	}
}

// boxed sets lines in a box with a border of ink.
func (c *canvas) boxed(b *sheet.Block) {
	const pad = 10
	if b.Heading != "" {
		c.write(margin, inner, headFace, strings.ToUpper(b.Heading))
		c.y += 5
	}
	from := c.y
	c.y += 3
	for _, l := range b.Lines {
		f := softFace
		if l.Strong != "" {
			f = boldFace
		}
		c.write(margin+pad, inner-2*pad, f, l.Sentence())
	}
	c.y += pad - 2
	c.box(margin, from, inner, c.y-from, `fill="none" stroke="`+ink+`" stroke-width="1.5"`)
}
