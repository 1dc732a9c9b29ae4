package textreport

import (
	"slices"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// declared prints what must be said of allergens, and what may hurt.
type declared struct {
	*page
	notes *footnotes
}

// print prints one block for each set of rules, and the cautions once.
func (p declared) print(s *sheet.Sheet) {
	all := s.Allergens()
	for i := range all {
		p.declaration(&all[i].Declaration)
	}
	p.cautions(s.Cautions())
	if len(all) > 0 {
		p.gap()
		p.paragraph(0, 0, sheet.Declaring)
	}
}

func (p declared) declaration(d *allergen.Declaration) {
	p.heading("Allergens, " + rulesName(d.Rules))
	if statement := d.Statement(); statement != "" {
		p.strong(marginWidth, 2, Clean(statement, mostProse))
	} else {
		p.paragraph(marginWidth, 2, sheet.NoPromise)
	}
	for i := range d.Contains {
		p.entry(&d.Contains[i])
	}
	if len(d.MayContain) > 0 {
		p.paragraph(marginWidth, 2, "May contain, as the designer states: "+namesOf(d.MayContain))
	}
	if len(d.NotDeclared) > 0 {
		p.paragraph(marginWidth, 2, "Present, but no class under these rules: "+namesOf(d.NotDeclared))
	}
	for _, c := range d.Check {
		p.check(c)
	}
}

// entry says where an allergen comes from and how that is known.
func (p declared) entry(e *allergen.Entry) {
	var from []string
	for _, id := range e.From {
		from = append(from, Clean(id, mostName)+" ("+strings.Join(howKnown(e, id), ", ")+")")
	}
	text := Clean(e.Name, mostName) + p.cited(e.Source) + ": from " + join(from)
	if len(e.Via) > 0 {
		via := make([]string, len(e.Via))
		for i, v := range e.Via {
			via[i] = Clean(v, mostName)
		}
		text += ", by way of " + join(via)
	}
	if e.Note != "" {
		text += ". " + Clean(e.Note, mostProse)
	}
	p.hanging("  – ", bulletIndent, text)
}

// howKnown gives the kinds of knowledge behind one food of an entry.
func howKnown(e *allergen.Entry, id string) []string {
	var list []string
	for _, k := range e.Knowledge {
		if k.Food == id && !slices.Contains(list, string(k.How)) {
			list = append(list, string(k.How))
		}
	}
	return list
}

func namesOf(entries []allergen.Entry) string {
	names := make([]string, len(entries))
	for i, e := range entries {
		names[i] = Clean(e.Name, mostName)
	}
	return join(names)
}

// check prints what somebody has to decide.
func (p declared) check(c allergen.Check) {
	foods := make([]string, len(c.Foods))
	for i, id := range c.Foods {
		foods[i] = Clean(id, mostName)
	}
	what := "not assessed"
	if c.Leaf != "" {
		what = Clean(c.Leaf, mostName)
	}
	text := what + " in " + join(foods) + ": "
	if c.Code == allergen.CheckNotAssessed {
		text = "not assessed, " + join(foods) + ": "
	}
	p.hanging("  To check: ", bulletIndent, text+Clean(c.Text, mostProse)+p.cited(c.Source))
}

// cautions prints each caution once, the worst first under its heading; one that is not given under every set of
// rules names those that give it.
func (p declared) cautions(list []sheet.Cautioned) {
	if len(list) == 0 {
		return
	}
	p.heading("Cautions")
	for i, c := range list {
		if group := sheet.HowBad(c.Rank); group != "" && (i == 0 || list[i-1].Rank != c.Rank) {
			p.strong(marginWidth, 2, group)
		}
		text := Clean(c.Text, mostProse) + p.cited(c.Source)
		if c.Because != "" {
			text += " (" + Clean(c.Because, mostProse) + ")"
		}
		if len(c.Under) > 0 {
			text = rulesName(strings.Join(c.Under, ", ")) + ": " + text
		}
		p.hanging("  – ", bulletIndent, text)
	}
	p.paragraph(0, 0, sheet.LocalCode)
}

// cited gives the footnote of a source text, or † for one from memory, which is
// not printed as evidence.
func (p declared) cited(text string) string {
	switch {
	case text == "":
		return ""
	case source.IsFromMemory(text):
		return p.memory(true)
	}
	return signs([]int{p.notes.number(sentences(text))})
}
