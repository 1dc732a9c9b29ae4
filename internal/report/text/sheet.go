package textreport

import (
	"io"

	"sipsum/internal/constituent"
	"sipsum/internal/evidence"
	"sipsum/internal/sheet"
)

// Sheet prints everything about a drink on one page.
func Sheet(w io.Writer, s *sheet.Sheet, st Style) error {
	p := newPage(st)
	notes := &footnotes{}
	p.head(s, "sheet")
	p.readings(s.Assay)
	p.gap()
	p.paragraph(0, 0, p.summary(s))
	p.garnish(s.Assay)
	p.tableHeading("Evidence", "")
	for i := range s.Evidence.Categories {
		p.brief(s, &s.Evidence.Categories[i], notes)
	}
	told := map[constituent.ID]bool{}
	for _, c := range s.Evidence.Categories {
		for _, e := range c.Entries {
			told[e.Constituent.ID] = true
		}
	}
	p.further(s.Assay, told)
	p.chemistry(s.Assay, false, s.PHWorks, notes)
	p.curdling(s.Assay.Curdling, false)
	p.cards(s, true)
	p.declarations(s, notes)
	p.notes(s.Assay)
	p.explain()
	p.sources(notes)
	p.foot(s)
	return p.write(w)
}

// brief prints one category in two lines a constituent.
func (p *page) brief(s *sheet.Sheet, c *evidence.Category, notes *footnotes) {
	p.strong(0, 2, Clean(c.Name, mostName))
	var unknown []string
	for i := range c.Entries {
		e := &c.Entries[i]
		words := wordsFor(e.Constituent)
		if hollow(e.Result) {
			unknown = append(unknown, words)
			continue
		}
		p.row(words, notes.of(e, s.Tables), p.show(e.Result), "")
		known, missing := partsOf(s.Assay, e.Constituent.ID)
		p.paragraph(partIndent, 2, p.inShort(known, missing))
	}
	if len(unknown) > 0 {
		p.paragraph(marginWidth, 2, "not known: "+join(unknown))
	}
}

// inShort names the parts of a constituent in one sentence.
func (p *page) inShort(known, unknown []part) string {
	p.shares = true
	text := ""
	switch {
	case len(known) == 1:
		text = allFrom(known[0], unknown)
	default:
		var list []string
		for i, k := range known {
			if hasShare(k.Share) && (k.Share.Mean*percentOf >= tiny || i == 0) {
				list = append(list, k.name+" "+percent(k.Share))
			}
		}
		text = join(list)
	}
	if len(unknown) == 0 {
		return text
	}
	names := make([]string, len(unknown))
	for i, u := range unknown {
		names[i] = u.name
	}
	if text != "" {
		text += "; "
	}
	return text + "not known in " + join(names)
}
