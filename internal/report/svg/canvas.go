package svgreport

import (
	"fmt"
	"html"
	"strings"
	"unicode/utf8"
)

// The drawing is as wide as an A5 page in points, and has its colours.
const (
	wide   = 420.0
	margin = 28.0
	inner  = wide - 2*margin

	paperIs = "#fcfaf6"
	ink     = "#221e1a"
	soft    = "#5f574f"
	rule    = "#d9d1c6"
	accent  = "#8a2f2a"
)

// face is a way to set text: its size, its class, and how wide a letter is on average beside
// the size.
type face struct {
	size   float64
	class  string
	letter float64
}

var (
	titleFace   = face{26, "serif", 0.54}
	serifFace   = face{12, "serif", 0.52}
	captionFace = face{13, "serif", 0.54}
	bodyFace    = face{10.5, "sans", 0.55}
	boldFace    = face{10.5, "sans bold", 0.6}
	bigFace     = face{17, "sans", 0.56}
	softFace    = face{9, "sans soft", 0.55}
	headFace    = face{8.5, "sans bold accent", 0.72}
)

func (f face) tall() float64 { return f.size * 1.4 }

// takes is how wide a text is, about.
func (f face) takes(text string) float64 {
	return float64(utf8.RuneCountInString(text)) * f.size * f.letter
}

// wrap breaks a text into lines of a width.
func (f face) wrap(text string, room float64) []string {
	var lines []string
	line := ""
	for _, w := range strings.Fields(text) {
		for f.takes(w) > room && utf8.RuneCountInString(w) > 1 { // a word that no line holds
			if line != "" {
				lines, line = append(lines, line), ""
			}
			cut := max(int(room/(f.size*f.letter)), 1)
			letters := []rune(w)
			lines, w = append(lines, string(letters[:cut])), string(letters[cut:])
		}
		switch {
		case line == "":
			line = w
		case f.takes(line+" "+w) <= room:
			line += " " + w
		default:
			lines, line = append(lines, line), w
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// canvas is a drawing that grows downwards.
type canvas struct {
	marks strings.Builder
	y     float64
}

// at sets a text with its baseline at y; anchor is start, middle or end.
func (c *canvas) at(x, y float64, f face, anchor, text string) {
	fmt.Fprintf(&c.marks, "<text x=\"%.1f\" y=\"%.1f\" font-size=\"%g\" class=\"%s\" text-anchor=\"%s\">%s</text>\n", x, y, f.size, f.class, anchor, html.EscapeString(text))
}

// write sets lines below each other and moves down.
func (c *canvas) write(x, room float64, f face, text string) {
	for _, line := range f.wrap(text, room) {
		c.y += f.tall()
		c.at(x, c.y, f, "start", line)
	}
}

func (c *canvas) ruled(x, to float64, colour string) {
	fmt.Fprintf(&c.marks, "<path d=\"M%.1f %.1fH%.1f\" stroke=\"%s\"/>\n", x, c.y, to, colour)
}

func (c *canvas) box(x, y, w, h float64, style string) {
	fmt.Fprintf(&c.marks, "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" %s/>\n", x, y, w, h, style)
}
