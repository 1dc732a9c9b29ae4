package textreport

import (
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/constituent"
)

// perVolume is the head of the right-hand column.
const perVolume = "100 ml"

// composition prints a serving by groups, with a column per 100 ml. What is
// wholly unknown and what is surely zero follow in a paragraph each.
func (p *page) composition(a *assay.Assay) {
	var unknown, zero []string
	for _, g := range groups() {
		begun := false
		for _, l := range g.lines {
			f, ok := a.PerServing.Find(l.id)
			switch {
			case !ok || l.words == "":
				continue
			case hollow(f.Result):
				unknown = append(unknown, p.named(l.words, f.Result))
				continue
			case empty(f.Result):
				if f.Constituent.Kind != constituent.Rest {
					zero = append(zero, l.words)
				}
				continue
			}
			if !begun {
				p.tableHeading(g.name, perVolume)
				begun = true
			}
			p.row(strings.Repeat("  ", g.depth(l.id, figured(a)))+l.words, "", p.show(f.Result), second(a.Per100ml, f))
		}
	}
	p.listed("Not known", unknown)
	p.listed("None, by analysis or by rule", zero)
}

// figured tells which constituents of a serving have a figure.
func figured(a *assay.Assay) func(constituent.ID) bool {
	return func(id constituent.ID) bool {
		f, ok := a.PerServing.Find(id)
		return ok && !hollow(f.Result) && !empty(f.Result)
	}
}

// further prints the lines of a short page that its evidence does not tell.
func (p *page) further(a *assay.Assay, told map[constituent.ID]bool) {
	begun := false
	for _, g := range groups() {
		for _, l := range g.lines {
			if !l.short || told[l.id] || !figured(a)(l.id) {
				continue
			}
			if !begun {
				p.tableHeading("Further composition", perVolume)
				begun = true
			}
			f, _ := a.PerServing.Find(l.id)
			p.row(l.words, "", p.show(f.Result), second(a.Per100ml, f))
		}
	}
}

// named gives a constituent of which nothing is known, with its bound.
func (p *page) named(words string, r assay.Result) string {
	if most := p.bound(r, 0); most != "" {
		return words + " (" + most + ")"
	}
	return words
}

// listed prints a list of constituents as a paragraph.
func (p *page) listed(what string, list []string) {
	if len(list) == 0 {
		return
	}
	p.gap()
	p.paragraph(0, 2, what+": "+strings.Join(list, ", ")+".")
}

// second gives the figure of the right-hand column, in the unit of that of the
// serving.
func second(c assay.Composition, serving assay.Figure) string {
	f, ok := c.Find(serving.Constituent.ID)
	if !ok || hollow(f.Result) {
		return ""
	}
	_, factor := finer(serving.Result)
	switch tiny := f.Mean > 0 && f.Mean*factor < leastPrinted; {
	case tiny && f.Partial:
		return ""
	case tiny:
		return least
	}
	return rounded(f.Mean*factor, place(f.Mean*factor, f.SD*factor, mostDigits))
}
