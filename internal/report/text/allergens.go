package textreport

import (
	"io"
	"slices"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/caution"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// Allergens prints what must be declared under each set of rules, what somebody
// has to check, and what may hurt.
func Allergens(w io.Writer, s *sheet.Sheet, st Style) error {
	p := newPage(st)
	notes := &footnotes{}
	p.head(s, "allergens")
	p.declarations(s, notes)
	p.cardLegend()
	p.sources(notes)
	p.foot(s)
	return p.write(w)
}

// declarations prints one block for each set of rules, and the cautions once.
func (p *page) declarations(s *sheet.Sheet, notes *footnotes) {
	all := s.Allergens()
	for i := range all {
		p.declaration(&all[i].Declaration, notes)
	}
	p.cautions(all, notes)
	if len(all) > 0 {
		p.gap()
		p.paragraph(0, 0, allergen.Caution)
	}
}

func (p *page) declaration(d *allergen.Declaration, notes *footnotes) {
	p.heading("Allergens, " + rulesName(d.Rules))
	if statement := d.Statement(); statement != "" {
		p.strong(marginWidth, 2, Clean(statement, mostProse))
	} else {
		p.paragraph(marginWidth, 2, "No allergen class of these rules was found in the foods that were assessed; that is not a promise.")
	}
	for i := range d.Contains {
		p.entry(&d.Contains[i], notes)
	}
	if len(d.MayContain) > 0 {
		p.paragraph(marginWidth, 2, "May contain, as the designer states: "+namesOf(d.MayContain))
	}
	if len(d.NotDeclared) > 0 {
		p.paragraph(marginWidth, 2, "Present, but no class under these rules: "+namesOf(d.NotDeclared))
	}
	for _, c := range d.Check {
		p.check(c, notes)
	}
}

// entry says where an allergen comes from and how that is known.
func (p *page) entry(e *allergen.Entry, notes *footnotes) {
	var from []string
	for _, id := range e.From {
		from = append(from, Clean(id, mostName)+" ("+strings.Join(howKnown(e, id), ", ")+")")
	}
	text := Clean(e.Name, mostName) + p.cited(notes, e.Source) + ": from " + join(from)
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
func (p *page) check(c allergen.Check, notes *footnotes) {
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
	p.hanging("  To check: ", bulletIndent, text+Clean(c.Text, mostProse)+p.cited(notes, c.Source))
}

// cautions prints each caution once; one that is not given under every set of
// rules names those that give it.
func (p *page) cautions(all []sheet.Declaration, notes *footnotes) {
	var list []caution.Caution
	under := map[string][]string{}
	for _, d := range all {
		for _, c := range d.Cautions {
			key := c.Code + "\x00" + c.Text
			if under[key] == nil {
				list = append(list, c)
			}
			under[key] = append(under[key], d.Rules)
		}
	}
	if len(list) == 0 {
		return
	}
	p.heading("Cautions")
	for _, c := range list {
		text := Clean(c.Text, mostProse) + p.cited(notes, c.Source)
		if c.Because != "" {
			text += " (" + Clean(c.Because, mostProse) + ")"
		}
		if rules := under[c.Code+"\x00"+c.Text]; len(rules) < len(all) {
			text = rulesName(strings.Join(rules, ", ")) + ": " + text
		}
		p.hanging("  – ", bulletIndent, text)
	}
}

// cited gives the footnote of a source text, or † for one from memory, which is
// not printed as evidence.
func (p *page) cited(notes *footnotes, text string) string {
	switch {
	case text == "":
		return ""
	case source.IsFromMemory(text):
		return p.memory(true)
	}
	return signs([]int{notes.number(sentences(text))})
}
