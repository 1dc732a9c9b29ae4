package textreport

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
	"sipsum/internal/sheet"
)

// part is what one component, or one food poured directly, brings, by a clean name.
type part struct {
	id   recipe.PartID
	name string
	by   string
	composition.Figure
}

func partsOf(list []sheet.Bringer) []part {
	parts := make([]part, len(list))
	for i, b := range list {
		parts[i] = part{b.ID, cleanPart(b.ID, b.Name), b.By, b.Figure}
	}
	return parts
}

// The columns of a row of parts.
const (
	partIndent = 4
	barWidth   = 20
	barAt      = 16 // columns behind the figure
	percentOf  = 100
	tiny       = 0.5 // per cent: a smaller share is not written as 0
)

// brought prints what the components bring.
type brought struct{ *page }

// print prints the parts of energy, of fat, and of every constituent that speaks for a
// sensory category.
func (p brought) print(s *sheet.Sheet, notes *footnotes) {
	p.heading("What brings it")
	for _, told := range s.Contributions() {
		signs := ""
		if told.Entry != nil {
			signs = notes.Of(told.Entry, s.Tables)
		}
		p.line("  ", p.bold(sheet.WordsFor(told.Figure.Constituent)), signs)
		p.parts(told.Parts)
	}
}

// parts prints what the components bring to a constituent.
func (p brought) parts(b sheet.Brought) {
	p.shares = true
	if len(b.Known) == 1 {
		p.paragraph(partIndent, 2, allFrom(b)+p.copied(b.Known[0].By))
		p.notKnownIn(partsOf(b.Unknown))
		return
	}
	list, more := b.Listed()
	room, _ := p.beside(figureWidth, intervalWidth, upToWidth, perWidth)
	names := fitParts(partsOf(b.Known), room-partIndent+marginWidth)
	next := 0
	for i, k := range b.Known {
		if next < len(list) && k.ID == list[next].ID {
			p.part(k.Figure, names[i], k.By)
			next++
		}
	}
	if more > 0 {
		p.line(strings.Repeat(" ", partIndent), fmt.Sprintf("and %d more under 1 %%", more))
	}
	p.notKnownIn(partsOf(b.Unknown))
}

// inShort names the parts of a constituent in one sentence.
func (p brought) inShort(b sheet.Brought) string {
	p.shares = true
	text := ""
	if len(b.Known) == 1 {
		text = allFrom(b) + p.copied(b.Known[0].By)
	} else {
		var list []string
		for _, k := range partsOf(b.Named()) {
			list = append(list, k.name+p.copied(k.by)+" "+percent(k.Share))
		}
		text = clean.Listed(list)
	}
	if len(b.Unknown) == 0 {
		return text
	}
	var names []missing
	for _, u := range partsOf(b.Unknown) {
		names = append(names, missing{u.name, u.Result})
	}
	if text != "" {
		text += "; "
	}
	return text + "not known in " + p.fewOf(names, "")
}

// copied gives the sign of a part that rests on another food's figure.
func (p brought) copied(by string) string {
	if by != food.Borrowed {
		return ""
	}
	p.borrowed = true
	return borrowedSign
}

// allFrom says that one component brings all there is, or all that is known.
func allFrom(b sheet.Brought) string {
	from := partsOf(b.Known)[0].name
	if !b.AllKnown() {
		return "all that is known is from " + from
	}
	return "all from " + from
}

// part prints one component's part: amount, share with interval, bar.
func (p brought) part(k composition.Figure, name, by string) {
	s := p.show(k.Result)
	columns := figureColumns()
	if sheet.HasShare(k.Share) {
		columns[0].text = percent(k.Share)
		if _, n := p.beside(figureWidth, intervalWidth, upToWidth, perWidth); n == len(columns) {
			at := max(width(columns[0].text)+1, intervalWidth) // a share may be longer than an interval
			columns[1].text = strings.Repeat(" ", max(barAt-at, 0)) + p.bar(k.Share)
		}
	}
	p.tabled(tableLine{
		margin: left("", marginWidth), name: left(p.copied(by), partIndent-marginWidth) + name,
		number: right(s.number, numberWidth), unit: left(" "+s.unit, unitWidth), columns: columns,
	})
}

// notKnownIn names the parts of which nothing is known.
func (p brought) notKnownIn(unknown []part) {
	if len(unknown) == 0 {
		return
	}
	list := make([]missing, len(unknown))
	for i, u := range unknown {
		list[i] = missing{u.name, u.Result}
		if most := p.bound(u.Result, 0); most != "" {
			list[i].words += " (" + most + ")"
		}
	}
	p.paragraph(partIndent, 2, "not known in "+p.fewOf(list, ""))
}

// percent writes a share with its interval: "74 % (68–80)".
func percent(s composition.Share) string {
	mean := s.Mean * percentOf
	text := rounded(mean, 0) + glue + "%"
	switch {
	case mean < tiny:
		text = "<" + glue + "1" + glue + "%"
	case mean > percentOf-tiny && mean < percentOf:
		text = ">" + glue + "99" + glue + "%"
	}
	if in := span(s.Low*percentOf, s.High*percentOf, 0); in != "" {
		text += glue + "(" + in + ")"
	}
	return text
}

// bar draws a share: solid up to the low end of its interval, shaded to the
// high end.
func (p brought) bar(s composition.Share) string {
	p.bars = true
	solid := cells(s.Low)
	return strings.Repeat("█", solid) + strings.Repeat("▒", max(cells(s.High)-solid, 0))
}

func cells(share float64) int {
	return int(math.Round(min(max(share, 0), 1) * barWidth))
}
