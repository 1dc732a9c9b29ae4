package textreport

import (
	"strings"

	"sipsum/internal/composition"
	"sipsum/internal/figure"
)

// shown is a figure in words: the columns of a row.
type shown struct {
	mark     string // in the margin
	number   string
	unit     string
	interval string
	upTo     string
}

// What is too little to print, and its sign.
const (
	leastPrinted = figure.LeastPrinted
	least        = figure.Least
	thousand     = figure.Thousand
)

// smaller are the units that a figure too small for its own is printed in.
var smaller = figure.Smaller

// show puts a result into words and notes the signs it needs.
func (p *page) show(r composition.Result) shown {
	f := figure.Of(r)
	s := shown{number: f.Number, unit: f.Unit}
	if f.UpTo != "" {
		p.upTo = true
		s.upTo = "up to " + f.UpTo
	}
	if f.Unknown {
		if figure.Alone(r) {
			s.upTo = p.bound(r, 0)
		}
		return s
	}
	s.mark = p.markOf(r)
	if f.Low != "" {
		s.interval = f.Low + "–" + f.High
	}
	if f.AtLeast {
		p.atLeast = true
		s.number = "≥ " + s.number
	}
	return s
}

// bound gives "up to" the most that a result could be (assay.Result.UpTo); empty if
// nothing bounds it. Where no figure stands beside it the unit is said.
func (p *page) bound(r composition.Result, last int) string {
	most, unit := figure.Bound(r, last)
	switch {
	case most == "":
		return ""
	case figure.Alone(r):
		p.upTo = true
		return "up" + glue + "to" + glue + most + glue + unit
	}
	p.upTo = true
	return "up to " + most
}

// sentence gives a result within running text: "118 g (115–121)", or with words
// "226 kJ energy (219–232)".
func (p *page) sentence(r composition.Result, words string) string {
	s := p.show(r)
	text := strings.ReplaceAll(s.number, " ", glue)
	if s.unit != "" {
		text += glue + s.unit
	}
	if words != "" {
		text += " " + words
	}
	switch {
	case s.interval != "" && s.upTo != "":
		return text + " (" + s.interval + "; " + s.upTo + ")"
	case s.interval != "":
		return text + " (" + s.interval + ")"
	case s.upTo != "":
		return text + " (" + s.upTo + ")"
	}
	return text
}

// The columns of a row of figures.
const (
	marginWidth   = 2
	numberWidth   = 9
	unitWidth     = 6
	intervalWidth = 14
	upToWidth     = 14
	perWidth      = 8
)

// figureWidth is what a row has besides its name and the columns behind its figure.
const figureWidth = marginWidth + numberWidth + unitWidth

// figureColumns are those behind a figure: its interval, its bound, and a second figure at
// the right edge. What a part brings stands in the same.
func figureColumns() []column {
	return []column{{width: intervalWidth}, {width: upToWidth}, {width: perWidth, right: true}}
}

// row prints a figure: the name and its footnotes with a dotted line to the number, the interval,
// the bound, and a second figure.
func (p *page) row(name, signs string, s shown, second string) {
	columns := figureColumns()
	columns[0].text, columns[1].text, columns[2].text = s.interval, s.upTo, second
	if second != "" {
		columns[2].below = second + " in " + perVolume
	}
	p.tabled(tableLine{
		margin: left(s.mark, marginWidth), name: name, signs: signs,
		number: right(s.number, numberWidth), unit: left(" "+s.unit, unitWidth), columns: columns,
	})
}

// tableHeading begins a section of rows and says what their columns are.
func (p *page) tableHeading(name, second string) {
	const ahead = 2 // "a serving" ends over the last digit's unit
	columns := figureColumns()
	columns[0].text, columns[2].text = "interval", second
	names, n := p.beside(figureWidth, intervalWidth, upToWidth, perWidth)
	p.gap()
	if width(name) > names-ahead { // a long name has lines of its own
		p.strong(0, 2, name)
		name = ""
	}
	cells, _ := fold(columns[:n], n)
	p.line(p.bold(p.accent(left(name, marginWidth+names-ahead))), right("a serving", numberWidth+ahead), left("", unitWidth), cells)
}
