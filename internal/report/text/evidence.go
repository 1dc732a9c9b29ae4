package textreport

import (
	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/evidence"
	"sipsum/internal/ladder"
	"sipsum/internal/sheet"
)

// inside says what stands alone where no line of the build pours what the drink is set
// against.
func (p view) inside() {
	for _, alone := range p.s.Inside() {
		p.gap()
		p.paragraph(0, 2, sheet.UsedInside(alone.Name, p.sentence(alone.Mass, "")))
	}
}

// categories prints the evidence.
type categories struct{ view }

func (p categories) atLength() {
	for i := range p.s.Evidence.Categories {
		p.category(&p.s.Evidence.Categories[i])
	}
	if sheet.TasteOf(p.s).Why == "" {
		p.gap()
		p.paragraph(0, 0, sheet.TasteLimit)
	}
}

// category prints one category at length.
func (p categories) category(c *evidence.Category) {
	p.tableHeading(clean.UpperFirst(Clean(c.Name, mostName)), "")
	var unknown []missing
	for i := range c.Entries {
		e := &c.Entries[i]
		words := sheet.WordsFor(e.Constituent)
		if sheet.Hollow(e.Result) {
			unknown = append(unknown, missing{p.named(words, e.Result), e.Result})
			continue
		}
		p.row(words, p.notes.Of(e, p.s.Tables), p.show(e.Result), "")
		parts := sheet.BroughtTo(p.s.Assay, e.Constituent.ID)
		// Where one component brings all, the line that says so says this too.
		for _, a := range append([]evidence.Alone{{Name: p.s.Evidence.CompareWith, Figure: e.Alone}}, e.Also...) {
			if a.Name != "" && !(len(parts.Known) == 1 && parts.Known[0].ID.Component == a.Name) {
				p.alone(a.Name, a.Figure)
			}
		}
		brought{p.page}.parts(parts)
		brought{p.page}.ingredients(sheet.Ingredients(p.s, e.Constituent))
	}
	if len(unknown) > 0 {
		p.paragraph(marginWidth, 2, "not known: "+p.fewOf(unknown, seeAssay))
	}
	if line, ok := sheet.TasteLineOf(p.s, c.Name); ok {
		p.paragraph(marginWidth, 2, Clean(line.Says, mostProse)+p.notes.All(line.Sources))
	}
	for _, said := range c.Sentences {
		p.hanging("  “", marginWidth+1, clean.UpperFirst(Clean(said.Text, mostProse))+"”"+p.sourcesOf(c, said))
	}
}

// sourcesOf are the footnotes with which a sentence ends.
func (p categories) sourcesOf(c *evidence.Category, said ladder.Sentence) string {
	for i := range c.Entries {
		if c.Entries[i].Constituent == said.Constituent {
			spoken := evidence.Spoken(c.Entries[i], said)
			return p.notes.Of(&spoken, p.s.Tables)
		}
	}
	return ""
}

// alone prints what the component that the drink is set against brings.
func (p categories) alone(name string, f *composition.Figure) {
	s := shown{number: "none"}
	if f != nil {
		s = p.show(f.Result)
	}
	s.mark = ""
	p.row("  "+Clean(name, mostName)+" alone", "", s, "")
}

func (p categories) shortly() {
	p.tableHeading("Evidence", "")
	for i := range p.s.Evidence.Categories {
		p.brief(&p.s.Evidence.Categories[i])
	}
}

// brief prints one category in two lines a constituent.
func (p categories) brief(c *evidence.Category) {
	p.strong(0, 2, Clean(c.Name, mostName))
	var unknown []missing
	for i := range c.Entries {
		e := &c.Entries[i]
		words := sheet.WordsFor(e.Constituent)
		if sheet.Hollow(e.Result) {
			unknown = append(unknown, missing{words, e.Result})
			continue
		}
		p.row(words, "", p.show(e.Result), "")
		p.paragraph(partIndent, 2, brought{p.page}.inShort(sheet.BroughtTo(p.s.Assay, e.Constituent.ID))+p.notes.Of(e, p.s.Tables))
	}
	if len(unknown) > 0 {
		p.paragraph(marginWidth, 2, "not known: "+p.fewOf(unknown, seeAssay))
	}
}
