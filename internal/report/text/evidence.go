package textreport

import (
	"io"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/evidence"
	"sipsum/internal/sheet"
)

// Evidence prints a drink by sensory category: each constituent's figure, what
// the coffee alone brings, the parts by component, sentences, sources.
func Evidence(w io.Writer, s *sheet.Sheet, st Style) error {
	p := newPage(st)
	notes := &footnotes{}
	p.head(s, "evidence")
	p.garnish(s.Assay)
	p.inside(s.Assay)
	for i := range s.Evidence.Categories {
		p.category(s, &s.Evidence.Categories[i], notes)
	}
	p.explain()
	p.sources(notes)
	p.foot(s)
	return p.write(w)
}

// inside says what stands alone where no line of the build pours what the drink is set
// against.
func (p *page) inside(a *assay.Assay) {
	if a.Alone == nil || slices.ContainsFunc(a.Components, func(c assay.Component) bool { return c.ID == a.Alone.ID }) {
		return
	}
	p.gap()
	name := a.Alone.Name
	p.paragraph(0, 2, upperFirst(Clean(name, mostName))+" is used inside other components. Alone it is what they take for a serving, "+p.sentence(a.Alone.Mass, "")+", as it was made.")
}

// category prints one category at length.
func (p *page) category(s *sheet.Sheet, c *evidence.Category, notes *footnotes) {
	p.tableHeading(upperFirst(Clean(c.Name, mostName)), "")
	var unknown []string
	for i := range c.Entries {
		e := &c.Entries[i]
		words := wordsFor(e.Constituent)
		if hollow(e.Result) {
			unknown = append(unknown, p.named(words, e.Result))
			continue
		}
		p.row(words, notes.of(e, s.Tables), p.show(e.Result), "")
		known, missing := partsOf(s.Assay, e.Constituent.ID)
		// Where one component brings all, the line that says so says this too.
		if with := s.Evidence.CompareWith; with != "" && !(len(known) == 1 && known[0].id.Component == with) {
			p.alone(with, e)
		}
		p.parts(known, missing)
	}
	if len(unknown) > 0 {
		p.paragraph(marginWidth, 2, "not known: "+join(unknown))
	}
	for _, text := range c.Sentences {
		p.hanging("  “", marginWidth+1, upperFirst(Clean(text, mostProse))+"”")
	}
}

// alone prints what the component that the drink is set against brings.
func (p *page) alone(name string, e *evidence.Entry) {
	s := shown{number: "none"}
	if e.Alone != nil {
		s = p.show(e.Alone.Result)
	}
	s.mark = ""
	p.row("  "+Clean(name, mostName)+" alone", "", s, "")
}
