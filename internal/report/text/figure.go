package textreport

import (
	"math"
	"strings"

	"sipsum/internal/composition"
	"sipsum/internal/sheet"
)

// shown is a figure in words: the columns of a row.
type shown struct {
	mark     string // in the margin
	number   string
	unit     string
	interval string
	upTo     string
}

// minute reports whether all of a known interval would print as zero to the last place that
// is worth printing in the finest unit: what arithmetic leaves, or less than anybody weighs.
func minute(r composition.Result) bool {
	return !r.Unknown && max(math.Abs(r.Mean), math.Abs(r.Low), math.Abs(r.High)) < leastPrinted
}

const leastPrinted = 0.0005 // our own bound

// least stands for what is minute: a trace is not zero.
const least = "< 0.001"

// smaller are the units that a figure too small for its own is printed in.
var smaller = map[string]string{"g": "mg", "mg": "µg"}

const thousand = 1000 // of a smaller unit in one

// finer gives a result in the largest smaller unit, and how many of them make one
// of its own, in which not all of its interval is less than two thousandths.
func finer(r composition.Result) (composition.Result, float64) {
	const tooSmall, tooLarge = 0.002, 100
	factor := 1.0
	for {
		unit, ok := smaller[r.Unit]
		if !ok || sheet.Hollow(r) || r.High <= 0 || max(r.Mean, r.High) >= tooSmall {
			return r, factor
		}
		if factor > 1 && r.Partial && r.UpTo >= tooLarge { // what is beside it would be a row of digits
			return r, factor
		}
		r.Unit = unit
		for _, x := range []*float64{&r.Mean, &r.SD, &r.Low, &r.High, &r.WithBounds, &r.UpTo} {
			*x *= thousand
		}
		factor *= thousand
	}
}

// show puts a result into words and notes the signs it needs.
func (p *page) show(r composition.Result) shown {
	stated := r
	r, _ = finer(r)
	last := place(r.Mean, r.SD, mostDigits)
	if sheet.Hollow(r) || r.Partial && minute(r) {
		return shown{number: "unknown", upTo: p.bound(stated, last)}
	}
	if minute(r) && !sheet.None(r) {
		return shown{mark: p.markOf(r), number: least, unit: r.Unit}
	}
	if smaller[r.Unit] == "" && math.Abs(r.Mean) < leastPrinted && !sheet.None(r) { // its interval would begin at a row of zeros
		if r.Partial {
			return shown{number: "unknown", upTo: p.bound(stated, last)}
		}
		number := least
		if r.High >= 2*leastPrinted {
			number = "< " + upward(r.High, firstPlace(leastPrinted))
		}
		return shown{mark: p.markOf(r), number: number, unit: r.Unit}
	}
	s := shown{mark: p.markOf(r), number: rounded(r.Mean, last), unit: r.Unit, interval: span(r.Low, r.High, last)}
	if r.Partial {
		p.atLeast = true
		s.number = "≥ " + s.number
		s.upTo = p.bound(r, last)
	}
	return s
}

// bound gives "up to" the most that a result could be (assay.Result.UpTo); empty if
// nothing bounds it. Where no figure stands beside it the unit is said.
func (p *page) bound(r composition.Result, last int) string {
	if math.IsNaN(r.UpTo) {
		return ""
	}
	p.upTo = true
	if sheet.Hollow(r) || minute(r) {
		most, unit := r.UpTo, r.Unit
		for smaller[unit] != "" && most < leastPrinted {
			most, unit = most*thousand, smaller[unit]
		}
		most = max(most, leastPrinted)
		return "up" + glue + "to" + glue + upward(most, firstPlace(most)) + glue + unit
	}
	return "up to " + upward(max(r.UpTo, mustParse(rounded(r.High, last))), last) // not below the end as it is printed
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
