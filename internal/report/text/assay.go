package textreport

import (
	"io"
	"slices"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/sheet"
)

// noteUnknown is the kind of the notes that say which foods leave a constituent
// unknown.
const noteUnknown = "unknown"

// Assay prints a drink's composition, what brings it, and what is not known.
func Assay(w io.Writer, s *sheet.Sheet, st Style) error {
	p := newPage(st)
	notes := &footnotes{}
	p.head(s, "assay")
	p.readings(s.Assay)
	p.composition(s.Assay)
	p.garnish(s.Assay)
	p.tableEnergy(s.Assay)
	p.chemistry(s.Assay, true, s.PHWorks, notes)
	p.curdling(s.Assay.Curdling, true)
	p.contributions(s, notes)
	p.gaps(s.Assay)
	p.notes(s.Assay)
	p.explain()
	p.sources(notes)
	p.foot(s)
	return p.write(w)
}

// contributions prints the parts of energy, of fat, and of every constituent
// that speaks for a sensory category.
func (p *page) contributions(s *sheet.Sheet, notes *footnotes) {
	p.heading("What brings it")
	done := map[constituent.ID]bool{}
	show := func(id constituent.ID, signs string) {
		f, ok := s.Assay.PerServing.Find(id)
		if !ok || done[id] || hollow(f.Result) || empty(f.Result) {
			return
		}
		done[id] = true
		known, unknown := partsOf(s.Assay, id)
		if len(known) == 0 {
			return
		}
		p.line("  ", p.bold(wordsFor(f.Constituent)), signs)
		p.parts(known, unknown)
	}
	show(constituent.Energy, "")
	for _, c := range s.Evidence.Categories {
		for i := range c.Entries {
			e := &c.Entries[i]
			signs := ""
			if !hollow(e.Result) {
				signs = notes.of(e, s.Tables)
			}
			show(e.Constituent.ID, signs)
		}
	}
	show(constituent.Fat, "")
}

// gaps says, food by food, what is not known of it.
func (p *page) gaps(a *assay.Assay) {
	var foods []string
	missing := map[string][]string{}
	for _, n := range a.Notes {
		if n.Kind != noteUnknown {
			continue
		}
		c, ok := constituent.Find(string(n.Constituent))
		if !ok {
			continue
		}
		for _, f := range n.Foods {
			if !slices.Contains(foods, f) {
				foods = append(foods, f)
			}
			missing[f] = append(missing[f], wordsFor(c))
		}
	}
	if len(foods) == 0 {
		return
	}
	p.heading("What the foods do not say")
	for _, f := range foods {
		p.paragraph(2, 2, Clean(f, mostName)+": "+strings.Join(missing[f], ", "))
	}
}

// notes prints what else should be known.
func (p *page) notes(a *assay.Assay) {
	begun := false
	for _, n := range a.Notes {
		if n.Kind == noteUnknown || n.Kind == noteDisagrees {
			continue
		}
		if !begun {
			p.heading("Notes")
			begun = true
		}
		p.hanging("  – ", bulletIndent, Clean(n.Text, mostProse))
	}
}

// tableEnergy prints the energy that the tables themselves state, beside that
// by the rules in force.
func (p *page) tableEnergy(a *assay.Assay) {
	var figures, missing []string
	for _, e := range a.TableEnergy {
		if e.Amount <= 0 {
			continue
		}
		amount := least
		if e.Amount >= leastPrinted {
			amount = rounded(e.Amount, place(e.Amount, 0, mostDigits))
		}
		figures = append(figures, amount+glue+constituent.Must(e.ID).Unit)
		for _, food := range e.Missing {
			if !slices.Contains(missing, food) {
				missing = append(missing, food)
			}
		}
	}
	if len(figures) == 0 {
		return
	}
	text := "Energy of a serving as the tables print it, for comparison: " + strings.Join(figures, ", ")
	if len(missing) > 0 {
		text += "; not printed of " + Clean(strings.Join(missing, ", "), mostProse)
	}
	p.gap()
	p.paragraph(0, 2, text+".")
}
