package markdownreport

import (
	"io"
	"strings"

	"sipsum/internal/sheet"
)

// Leaf prints a leaf.
func Leaf(w io.Writer, l *sheet.Leaf) error {
	var p page
	p.line("# ", escape(l.Title))
	p.paragraph("*" + escape(l.Label) + "* · " + joined(l.Below, " · "))
	for i := range l.Blocks {
		p.block(&l.Blocks[i])
	}
	p.paragraph("---")
	p.paragraph(joined(l.Foot, " · "))
	_, err := io.WriteString(w, p.text.String())
	return err
}

// page is a text being composed.
type page struct{ text strings.Builder }

func (p *page) line(parts ...string) { p.text.WriteString(strings.Join(parts, "") + "\n") }

func (p *page) paragraph(text string) { p.line("\n", text) }

func (p *page) block(b *sheet.Block) {
	if b.Heading != "" {
		p.paragraph("## " + escape(b.Heading))
	}
	p.line()
	for _, f := range b.Figures {
		p.line("- ", escape(f.Label), ": **", escape(f.Text), "**")
	}
	if b.Grid != nil {
		p.grid(b.Grid)
		p.line()
	}
	lead := "- "
	if b.Role == sheet.Boxed {
		lead = "> - "
	}
	for _, l := range b.Lines {
		if b.Role == sheet.Built && l.Lead != "" { // an amount and what is poured
			p.line(lead, "**", escape(l.Lead), "** ", escape(l.Text))
			continue
		}
		p.line(lead, sentence(l))
	}
}

func sentence(l sheet.Line) string {
	var parts []string
	if l.Lead != "" {
		parts = append(parts, escape(l.Lead)+":")
	}
	switch {
	case l.Strong != "" && l.Text != "":
		parts = append(parts, "**"+escape(l.Strong)+"**: "+escape(l.Text))
	case l.Strong != "":
		parts = append(parts, "**"+escape(l.Strong)+"**")
	case l.Text != "":
		parts = append(parts, escape(l.Text))
	}
	if l.Source != "" {
		parts = append(parts, "*"+escape(l.Source)+"*")
	}
	return strings.Join(parts, " ")
}

func (p *page) grid(g *sheet.Grid) {
	p.line("**", escape(g.Caption), "**")
	for _, above := range g.Lead {
		p.paragraph(escape(above))
	}
	p.line()
	heads := make([]string, len(g.Head))
	rule := "|"
	for i, h := range g.Head {
		heads[i] = escape(h)
		if i == 0 {
			rule += " --- |"
		} else {
			rule += " ---: |"
		}
	}
	p.line("| ", strings.Join(heads, " | "), " |")
	p.line(rule)
	for _, r := range g.Rows {
		cells := []string{strings.Repeat("\u00a0\u00a0", r.Indent) + escape(r.Label)}
		for range len(g.Head) - 1 - len(r.Cells) { // the whole line stands before them
			cells = append(cells, "")
		}
		for _, c := range r.Cells {
			text := escape(c.Text)
			if c.Sign != "" {
				text = escape(c.Sign) + " " + text
			}
			if c.Mark == "contains" {
				text = "**" + text + "**"
			}
			cells = append(cells, text)
		}
		p.line("| ", strings.Join(cells, " | "), " |")
	}
}

func joined(pieces []string, with string) string {
	out := make([]string, len(pieces))
	for i, s := range pieces {
		out[i] = escape(s)
	}
	return strings.Join(out, with)
}

// signs are what Markdown and HTML within it read as theirs anywhere in a line.
const signs = "\\`*_{}[]()#+!|~$@=^:"

// htmlSigns are written as HTML writes them: of a tag with a backslash before it some
// programs keep the tag.
var htmlSigns = map[rune]string{'<': "&lt;", '>': "&gt;", '&': "&amp;"}

// escape writes a text so that it is read as it stands.
func escape(text string) string {
	var b strings.Builder
	for i, r := range text {
		if sign, ok := htmlSigns[r]; ok {
			b.WriteString(sign)
			continue
		}
		// A dash or a number with a full stop begins a list only at the begin of a line.
		if strings.ContainsRune(signs, r) && !spared(text, i) || i == 0 && r == '-' || r == '.' && listLike(text[:i]) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}

// spared reports whether a sign cannot be one where it stands: a colon that no address
// follows, brackets that no link precedes.
func spared(text string, i int) bool {
	switch text[i] {
	case ':':
		return !strings.HasPrefix(text[i:], "://")
	case '(', ')', '+', '=', '{', '}':
		return i > 0
	}
	return false
}

// listLike reports whether a text is a number at the begin of a line.
func listLike(text string) bool {
	return text != "" && strings.Trim(text, "0123456789") == ""
}
