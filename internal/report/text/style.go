package textreport

import (
	"cmp"
	"io"
	"strings"
)

// Style says how a page is to look.
type Style struct {
	Colour bool // bold and the accent colour, for a terminal
	Width  int  // columns of a page; 0 = 80
}

// The width of a page, in columns: what nobody states, what a telephone shows, and what the
// eye follows from a name to its figure. Our own bounds.
const (
	usualWidth = 80
	leastWidth = 40
	mostWidth  = 120
)

// bulletIndent is how far the text after "  – " is set in.
const bulletIndent = 4

// The terminal's own codes (ECMA-48): bold, the one accent colour, back to
// normal. The accent is number 131 of the 256 colours, #af5f5f: its contrast is
// 4.5 : 1 or more both on white and on black (WCAG 2.1, 1.4.3).
const (
	boldOn   = "\x1b[1m"
	accentOn = "\x1b[38;5;131m"
	plainOn  = "\x1b[0m"
)

// page is a page being composed: plain lines, written in one go.
type page struct {
	text  strings.Builder
	style Style
	width int
	whole bool              // it lists all that others count
	names map[string]string // of foods by their id, where the id says nothing
	legend
}

func newPage(st Style) *page {
	return &page{style: st, width: min(max(cmp.Or(st.Width, usualWidth), leastWidth), mostWidth)}
}

// write ends the page.
func (p *page) write(w io.Writer) error {
	_, err := io.WriteString(w, p.text.String())
	return err
}

func (p *page) bold(text string) string   { return p.dressed(boldOn, text) }
func (p *page) accent(text string) string { return p.dressed(accentOn, text) }

func (p *page) dressed(code, text string) string {
	if !p.style.Colour || strings.TrimSpace(text) == "" {
		return text
	}
	return code + text + plainOn
}

// glue joins words that must not be parted at the end of a line; it is printed
// as a space. No text of a file holds it: Clean makes every blank a space.
const glue = "\u00a0"

// line prints one line, without blanks at its end.
func (p *page) line(parts ...string) {
	text := strings.ReplaceAll(strings.Join(parts, ""), glue, " ")
	p.text.WriteString(strings.TrimRight(text, " ") + "\n")
}

// gap leaves an empty line, never two.
func (p *page) gap() {
	if s := p.text.String(); s != "" && !strings.HasSuffix(s, "\n\n") {
		p.text.WriteByte('\n')
	}
}

// title prints the head of a page: what it is about on the left, what kind of
// page it is on the right, a rule below.
func (p *page) title(name, kind string) {
	name = fit(name, p.width-width(kind)-1)
	p.line(p.bold(left(name, p.width-width(kind))), p.accent(kind))
	p.line(p.accent(strings.Repeat("─", p.width)))
}

// heading begins a section.
func (p *page) heading(name string) {
	p.gap()
	p.line(p.bold(p.accent(name)))
}

// paragraph prints a text between the margins; lines after the first are set in
// by hang more.
func (p *page) paragraph(indent, hang int, text string) {
	p.hanging(strings.Repeat(" ", indent), indent+hang, text)
}

// strong prints a paragraph in bold.
func (p *page) strong(indent, hang int, text string) {
	for i, l := range wrap(text, p.width-indent-hang) {
		if i == 1 {
			indent += hang
		}
		p.line(strings.Repeat(" ", indent), p.bold(l))
	}
}

// hanging prints a text whose first line begins with a lead and whose others
// are set in.
func (p *page) hanging(lead string, indent int, text string) {
	if p.width-indent < leastNames { // a deep indent leaves too little room on a narrow page
		indent = bulletIndent
	}
	first := p.width - width(lead)
	if first < p.width/4 { // a long lead has lines of its own
		for _, l := range wrap(lead, p.width) {
			p.line(l)
		}
		lead, first = strings.Repeat(" ", indent), p.width-indent
	}
	// What the lead takes of the first line stands for a word.
	taken := strings.Repeat(glue, max(width(lead)-indent, 0))
	if word, _, _ := strings.Cut(text, " "); width(word) > first {
		taken = ""
		p.line(lead)
		lead = strings.Repeat(" ", indent)
	}
	lines := wrap(taken+text, p.width-max(indent, width(lead)-width(taken)))
	if len(lines) == 0 {
		lines = []string{""}
	}
	lines[0] = strings.TrimPrefix(lines[0], taken)
	p.line(lead, lines[0])
	for _, l := range lines[1:] {
		p.line(strings.Repeat(" ", indent), l)
	}
}
