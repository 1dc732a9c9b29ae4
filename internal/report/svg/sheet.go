package svgreport

import (
	"fmt"
	"html"
	"io"
	"math"
	"slices"
	"strings"

	"sipsum/internal/sheet"
)

// pieceStyle gives the pieces of a drawing by itself the colours that a page gives its own.
const pieceStyle = `.axis text,.bar text,.scale text{font:8px "Noto Sans","IBM Plex Sans",system-ui,sans-serif;font-variant-numeric:tabular-nums}text.tick{fill:` + soft + `}text.share{font-weight:600}` +
	`.rule{stroke:` + soft + `}.hatch{stroke:#b9ae9f;stroke-width:1.2}.ink{stroke:` + ink + `;stroke-width:1.3}.seam{stroke:` + paperIs + `;stroke-width:1.2}` +
	`.unmeasured{fill:url(#unmeasured);stroke:#b9ae9f}.alone{fill:none;stroke:` + ink + `}.dot{fill:` + ink + `}.ring{fill:` + paperIs + `;stroke:` + ink + `;stroke-width:1.3}`

// Sheet draws the first page of a sheet: the senses with their pictures, what may be said, the build
// and the guest's box.
func Sheet(w io.Writer, p *sheet.Paper) error {
	c := &canvas{y: margin - 6}
	c.write(margin, inner, titleFace, p.Title)
	c.y += 3
	below := []string{p.Beside[0]}
	for _, x := range p.Below {
		below = append(below, x.Bare())
	}
	c.write(margin, inner, softFace, strings.Join(append(below, p.Beside[1:]...), " · "))
	c.y += 8
	c.ruled(margin, wide-margin, rule)
	wrong := func(b sheet.Block) bool { return b.Role == sheet.Wrong }
	for _, b := range p.Brief {
		if wrong(b) {
			c.told(&b)
		}
	}
	for i := range p.Senses {
		c.sense(&p.Senses[i])
	}
	for _, b := range slices.Concat(slices.DeleteFunc(slices.Clone(p.Brief), wrong), []sheet.Block{p.Build}, p.Guest) {
		c.told(&b)
	}
	c.y += 12
	c.ruled(margin, wide-margin, rule)
	c.write(margin, inner, softFace, strings.Join(p.Foot, " "))
	tall := c.y + margin*0.7
	_, err := fmt.Fprintf(w, "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" lang=\"%s\" width=\"%g\" height=\"%.0f\" viewBox=\"0 0 %g %.0f\">\n<title>%s</title>\n<style>%s%s%s</style>\n%s\n<rect width=\"100%%\" height=\"100%%\" fill=\"%s\"/>\n%s</svg>\n",
		html.EscapeString(p.Language), wide, tall, wide, tall, html.EscapeString(p.Title+", "+p.Label), style, pieceStyle, Hues(func(i Inks) Ink { return i.Light }), patterns(), paperIs, c.marks.String())
	return err
}

// sense draws a sense: its figures, its pictures below them, what else there is to say.
func (c *canvas) sense(x *sheet.SensePicture) {
	c.y += 6
	from := c.y
	c.at(margin, from+captionFace.tall(), captionFace, "start", x.Name)
	for _, f := range x.Figures {
		c.write(margin+lead, inner-lead, captionFace, f.Bare())
		if in := strings.Trim(f.Also+" · "+f.Range(), " ·"); in != "" {
			c.write(margin+lead, inner-lead, softFace, in)
		}
	}
	c.y = max(c.y, from+6)
	for _, b := range x.Pictures {
		c.bars(b)
	}
	for _, f := range x.Further {
		c.write(margin+lead, inner-lead, softFace, f.Sentence())
	}
	for _, text := range append(x.Lines, x.More) {
		c.write(margin+lead, inner-lead, softFace, text)
	}
	c.y += 6
	c.ruled(margin, wide-margin, rule)
}

// bars draws a picture with its words below each bar.
func (c *canvas) bars(x *sheet.Bars) {
	for _, b := range x.Bars {
		if b.Point {
			c.y += 6
			c.set(Scale(x.Axis, b), 17)
			c.set(Axis(x.Axis), 20)
			if b.Against != "" {
				c.write(margin+lead, inner-lead, softFace, "● "+b.Figure.Bare()+" · ○ "+b.Against)
			}
			return
		}
		if !b.Figure.Leads || len(x.Bars) > 1 {
			c.write(margin+lead, inner-lead, softFace, b.Figure.Sentence())
		}
		c.y += 5
		const bar, withCoffee = 25, 34
		if math.IsNaN(b.Alone) {
			c.set(Bar(x.Axis, b), bar)
		} else {
			c.set(Bar(x.Axis, b), withCoffee)
		}
		c.key(b)
	}
	c.y += 4
	c.set(Axis(x.Axis), 20)
}

// set places a piece beside the names of the senses.
func (c *canvas) set(piece string, tall float64) {
	fmt.Fprintf(&c.marks, "<svg x=\"%g\" y=\"%.1f\" width=\"%g\" height=\"%g\" overflow=\"visible\">%s</svg>\n", margin+lead, c.y, inner-lead, tall, piece)
	c.y += tall
}

// key names the segments of a bar, each behind its patch.
func (c *canvas) key(b sheet.Bar) {
	const patch, gap = 14.0, 10.0
	x := margin + lead
	c.y += softFace.tall()
	entry := func(sign, text string) {
		for i, line := range softFace.wrap(text, inner-lead-patch) {
			room := patch + softFace.takes(line) + gap
			if x > margin+lead && (i > 0 || x+room > wide-margin) {
				x, c.y = margin+lead, c.y+softFace.tall()
			}
			if i == 0 && sign != "" {
				fmt.Fprintf(&c.marks, "<svg x=\"%.1f\" y=\"%.1f\" width=\"11\" height=\"11\">%s</svg>", x, c.y-9, Patch(sign))
			}
			c.at(x+patch, c.y, softFace, "start", line)
			x += room
		}
	}
	for _, s := range b.Segments {
		entry("k-"+string(s.Hue), s.Word+" "+s.Share)
	}
	if b.Unknown != "" {
		entry("unmeasured", b.Unknown)
	}
	switch {
	case b.Against != "" && !math.IsNaN(b.Alone):
		entry("alone", b.Against)
	case b.Against != "":
		entry("", b.Against)
	}
}

// told writes a block of the first page.
func (c *canvas) told(b *sheet.Block) {
	switch b.Role {
	case sheet.Quoted:
		c.y += 10
		c.write(margin, inner, headFace, strings.ToUpper(b.Heading))
		for _, l := range b.Lines {
			c.write(margin, inner, serifFace, l.Text)
			c.write(margin, inner, softFace, l.Source)
		}
	case sheet.Built:
		c.y += 10
		c.write(margin, inner, headFace, strings.ToUpper(b.Heading))
		for _, l := range b.Lines {
			c.beside(boldFace, l.Lead, bodyFace, l.Text)
		}
	default:
		c.block(b)
	}
}
