package textreport

import (
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/figure"
	"sipsum/internal/sheet"
)

// perVolume is the head of the right-hand column.
const perVolume = "100 ml"

// listing prints figures of a composition and what is not known of it.
type listing struct{ *page }

// composition prints a serving by groups, with a column per 100 ml. What is
// wholly unknown and what is surely zero follow in a paragraph each.
func (p listing) composition(s *sheet.Sheet) {
	list := s.Composition()
	for _, g := range list.Groups {
		p.tableHeading(g.Name, perVolume)
		p.rows(g.Rows, s.Assay)
	}
	var unknown []string
	for _, r := range list.Unknown {
		unknown = append(unknown, p.named(r.Words, r.Figure.Result))
	}
	p.listed("Not known", unknown)
	p.listed("None, by analysis or by rule", list.None)
}

// rows prints figures of a serving.
func (p listing) rows(rows []sheet.Row, a *assay.Assay) {
	for _, r := range rows {
		p.row(strings.Repeat("  ", r.Depth)+r.Words, "", p.show(r.Figure.Result), second(a.Per100ml, r.Figure))
	}
}

// further prints the lines of a short page that its evidence does not tell.
func (p listing) further(s *sheet.Sheet) {
	if rows := s.Further(); len(rows) > 0 {
		p.tableHeading("Further composition", perVolume)
		p.rows(rows, s.Assay)
	}
}

// named gives a constituent of which nothing is known, with its bound.
func (p *page) named(words string, r composition.Result) string {
	if most := p.bound(r, 0); most != "" {
		return words + " (" + most + ")"
	}
	return words
}

// listed prints a list of constituents as a paragraph.
func (p listing) listed(what string, list []string) {
	if len(list) == 0 {
		return
	}
	p.gap()
	p.paragraph(0, 2, what+": "+strings.Join(list, ", ")+".")
}

// second gives the figure of the right-hand column, in the unit of that of the
// serving.
func second(c composition.Composition, serving composition.Figure) string {
	f, ok := c.Find(serving.Constituent.ID)
	if !ok || sheet.Hollow(f.Result) {
		return ""
	}
	_, factor := figure.Finer(serving.Result)
	switch tiny := f.Mean > 0 && f.Mean*factor < leastPrinted; {
	case tiny && f.Partial:
		return ""
	case tiny:
		return least
	}
	return rounded(f.Mean*factor, place(f.Mean*factor, f.SD*factor, mostDigits))
}
