package sheet

import (
	"cmp"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/clean"
	"sipsum/internal/source"
)

// AllergensLeaf is what must be declared under each set of rules, what somebody has to
// check, and what may hurt.
func (s *Sheet) AllergensLeaf() *Leaf {
	l := s.leaf("allergens")
	all := s.Allergens()
	for i := range all {
		l.declaration(s, &all[i])
	}
	l.warn(s)
	l.add(contradictions(s, Aside))
	l.foot(s)
	return l
}

// AllergensLeafIn is the page in a language of Languages. In any but English it is for a guest: what is
// declared and what is to be asked, with the advice of a card; how each is known, and what a kitchen has to
// mind, the English page says.
func (s *Sheet) AllergensLeafIn(language string) *Leaf {
	in := tongueOf(language)
	if in == english {
		return s.AllergensLeaf()
	}
	t := teller{s, in}
	l, all := t.leaf("allergens"), s.Allergens()
	for i := range all {
		l.lines(Boxed, in.say("matrix", in.named(rulesName(all[i].Rules))), t.boxLines(all[i:i+1]))
	}
	l.add(advice(t.served()))
	l.lines(Small, "", []Line{{Text: in.say("inferred")}})
	l.add(contradictions(s, Aside))
	l.foot(s)
	return l
}

// injures is the last rank of the cautions that speak of harm to anybody; they say so.
const injures = 2

func cautionLine(c Cautioned) Line {
	var lead []string
	if c.Rank <= injures {
		lead = append(lead, HowBad(c.Rank))
	}
	if len(c.Under) > 0 {
		lead = append(lead, rulesName(strings.Join(c.Under, ", ")))
	}
	return Line{Lead: strings.Join(lead, ", "), Text: daggered(clean.Prose(c.Text), source.IsFromMemory(c.Source)), Source: cited(c.Source)}
}

func (l *Leaf) declaration(s *Sheet, d *Declaration) {
	statement := Line{Text: NoPromise}
	if len(d.Contains) > 0 {
		statement = Line{Lead: say("contains"), Strong: strings.Join(namesIn(d.Contains), " · ")}
	}
	box := []Line{statement}
	for _, c := range d.Check {
		box = append(box, s.checkLine(c))
	}
	l.lines(Boxed, say("matrix", rulesName(d.Rules)), box)
	var lines []Line
	for i := range d.Contains {
		lines = append(lines, s.whence(&d.Contains[i]))
	}
	if len(d.MayContain) > 0 {
		lines = append(lines, Line{Lead: say("may"), Strong: strings.Join(namesIn(d.MayContain), " · ")})
	}
	if len(d.NotDeclared) > 0 {
		lines = append(lines, Line{Lead: say("present"), Text: clean.Listed(namesIn(d.NotDeclared))})
	}
	l.lines("", "", lines)
}

// cited is a source as it is printed; one from memory is no evidence.
func cited(text string) string {
	if source.IsFromMemory(text) {
		return ""
	}
	return clean.Prose(text)
}

func namesIn(entries []allergen.Entry) []string {
	names := make([]string, len(entries))
	for i, e := range entries {
		names[i] = clean.Name(e.Name)
	}
	return names
}

// whence says where an allergen comes from and how that is known.
func (s *Sheet) whence(e *allergen.Entry) Line {
	var from []string
	for i, name := range s.foodNames(e.From) {
		one := say("from", name, clean.Listed(e.HowKnown(e.From[i])))
		if w := e.Ways[i]; !w.Straight() { // each food by its own way
			via := make([]string, len(w.Via))
			for k, v := range w.Via {
				via[k] = clean.Name(v)
			}
			one += ", " + say("via", clean.Listed(via))
		}
		from = append(from, one)
	}
	text := strings.Join(from, "; ")
	if e.Note != "" {
		text += ". " + clean.Prose(e.Note)
	}
	return Line{Strong: clean.Name(e.Name), Text: text, Source: cited(e.Source)}
}

// checkLine says what somebody has to decide.
func (s *Sheet) checkLine(c allergen.Check) Line {
	foods, text := clean.Listed(s.foodNames(c.Foods)), clean.UpperFirst(clean.Prose(c.Text))
	if c.Question != "" {
		text = clean.Prose(c.Question) + " " + text
	}
	if c.Leaf == "" {
		return Line{Lead: say("notassessed"), Strong: foods, Text: text}
	}
	return Line{Lead: say("tocheck"), Strong: clean.Name(cmp.Or(c.Name, c.Leaf)) + ", " + foods, Text: text, Source: cited(c.Source)}
}
