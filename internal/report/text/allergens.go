package textreport

import (
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/clean"
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
		p.ingredients(&all[i].Ingredients)
	}
	p.answer(all)
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
	for i := range d.Excepted {
		p.excepted(&d.Excepted[i])
	}
	if len(d.NotDeclared) > 0 {
		p.paragraph(marginWidth, 2, "Present, but no class under these rules: "+namesOf(d.NotDeclared))
	}
	for _, c := range d.Check {
		p.check(c)
	}
}

// answer shows once, by the first of them, how a question is settled.
func (p declared) answer(all []sheet.Declaration) {
	for _, d := range all {
		for _, c := range d.Check {
			if c.Question != "" && c.Answer != "" {
				p.gap()
				p.paragraph(marginWidth, 2, "To settle a question, here that of "+Clean(c.Foods[0], mostName)+": "+Clean(c.Answer, mostProse))
				return
			}
		}
	}
}

// entry says where an allergen comes from and how that is known.
func (p declared) entry(e *allergen.Entry) {
	text := Clean(e.Name, mostName) + p.cited(e.Source) + p.status(e.Status)
	if len(e.From) > 0 {
		text += ": from " + p.whence(e)
	}
	if e.Note != "" {
		text += ". " + clean.UpperFirst(Clean(e.Note, mostProse))
	}
	p.hanging("  – ", bulletIndent, text)
}

// whence names the foods of an entry, each with how it is known and its own way in.
func (p declared) whence(e *allergen.Entry) string {
	from := make([]string, len(e.Ways))
	for i, w := range e.Ways {
		from[i] = p.foodWords(w.Food) + " (" + strings.Join(e.HowKnown(w.Food), ", ") + ")"
		if !w.Straight() {
			via := make([]string, len(w.Via))
			for k, v := range w.Via {
				via[k] = Clean(v, mostName)
			}
			from[i] += " by way of " + clean.Listed(via)
		}
	}
	return strings.Join(from, "; ")
}

// excepted says what the rules take out of a class, and of what.
func (p declared) excepted(e *allergen.Entry) {
	p.hanging("  Not declared here: ", bulletIndent,
		Clean(e.Name, mostName)+" of "+p.whence(e)+", "+Clean(e.Note, mostProse)+p.cited(e.Source)+p.status(e.Status))
}

// status marks a reference that nobody has verified.
func (p declared) status(of string) string {
	if of == allergen.Unverified {
		return " (" + allergen.Unverified + ", check the official text)"
	}
	return ""
}

func namesOf(entries []allergen.Entry) string {
	names := make([]string, len(entries))
	for i, e := range entries {
		names[i] = Clean(e.Name, mostName)
	}
	return clean.Listed(names)
}

// check prints what somebody has to decide.
func (p declared) check(c allergen.Check) {
	foods := make([]string, len(c.Foods))
	for i, id := range c.Foods {
		foods[i] = p.foodWords(id)
	}
	leaves := make([]string, len(c.Leaves))
	for i, leaf := range c.Leaves {
		leaves[i] = Clean(leaf, mostName)
	}
	text := clean.Listed(leaves) + " in " + clean.Listed(foods)
	if c.Code == allergen.CheckNotAssessed {
		text = "not assessed, " + clean.Listed(foods)
	}
	if len(c.Places) > 0 {
		places := make([]string, len(c.Places))
		for i, place := range c.Places {
			places[i] = Clean(place.String(), mostName)
		}
		text += " at " + clean.Listed(places)
	}
	text += ": "
	if c.Question != "" {
		text += Clean(c.Question, mostProse) + " "
	}
	text += clean.UpperFirst(Clean(c.Text, mostProse)) + p.cited(c.Source)
	p.hanging("  To check: ", bulletIndent, text)
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
	return signs([]int{p.notes.Number(sentences(text))})
}
