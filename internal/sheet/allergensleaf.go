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
	var lines []Line
	for _, c := range s.Cautions() {
		line := Line{Text: clean.Prose(c.Text), Source: cited(c.Source)}
		if len(c.Under) > 0 {
			line.Lead = rulesName(strings.Join(c.Under, ", "))
		}
		lines = append(lines, line)
	}
	l.lines("", say("cautions"), lines)
	l.lines(Small, "", []Line{{Text: Declaring}})
	l.foot(s)
	return l
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
		from = append(from, say("from", name, clean.Listed(e.HowKnown(e.From[i]))))
	}
	text := clean.Listed(from)
	if len(e.Via) > 0 {
		via := make([]string, len(e.Via))
		for i, v := range e.Via {
			via[i] = clean.Name(v)
		}
		text += ", " + say("via", clean.Listed(via))
	}
	if e.Note != "" {
		text += ". " + clean.Prose(e.Note)
	}
	return Line{Strong: clean.Name(e.Name), Text: text, Source: cited(e.Source)}
}

// checkLine says what somebody has to decide.
func (s *Sheet) checkLine(c allergen.Check) Line {
	foods, text := clean.Listed(s.foodNames(c.Foods)), clean.Prose(c.Text)
	if c.Leaf == "" {
		return Line{Lead: say("notassessed"), Strong: foods, Text: text}
	}
	return Line{Lead: say("tocheck"), Strong: clean.Name(cmp.Or(c.Name, c.Leaf)) + ", " + foods, Text: text, Source: cited(c.Source)}
}
