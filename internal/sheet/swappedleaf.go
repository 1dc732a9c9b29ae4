package sheet

import (
	"cmp"
	"fmt"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/unit"
)

// Leaf is the page of a swap.
func (s *Swapped) Leaf() *Leaf {
	l := &Leaf{Kind: "swap", Language: English, Label: "swap", Title: clean.Name(s.Assay.Drink.Name)}
	l.Below = []string{clean.Prose(s.Line())}
	l.lines("", "In its place", s.place())
	for _, f := range s.Found {
		l.lines("", shortOf(f.Food), f.lines())
	}
	var would, out []Line
	for _, w := range s.Would {
		would = append(would, Line{Lead: shortOf(w.Food), Text: clean.Prose(w.Read)})
	}
	for _, w := range s.Out {
		out = append(out, Line{Lead: shortOf(w.Food), Text: clean.Prose(w.Why)})
	}
	l.lines("", "Would do, if it were known", would)
	l.lines("", "Near, and left out", out)
	l.lines("", "How it was looked for", s.how())
	l.lines(Small, "", []Line{{Text: Declaring}, {Text: LocalCode}})
	l.foot(s.Sheet)
	return l
}

// ServingThen leads the line of what else of a serving moves.
const ServingThen = "a serving then"

// place says what gives way, and what of the drink is held.
func (s *Swapped) place() []Line {
	lines := []Line{{Lead: "what gives way", Text: shortOf(s.Of)}, {Lead: "what is asked", Text: s.asked()}}
	if roles := s.Roles(); len(roles) > 0 {
		lines = append(lines, Line{Lead: "what it brings", Text: strings.Join(roles, ", ")})
	}
	return append(lines, Line{Lead: "what is held", Text: strings.Join(s.Holds(), ", ")})
}

// lines tell one proposal.
func (f SwappedFood) lines() []Line {
	lines := []Line{{Lead: "pour", Text: strings.Join(f.Pours(), "; ")}}
	stays := "all that is held, within what a judge notices, in " + Chance(f.Sure, f.May)
	lines = append(lines, Line{Lead: "stays", Text: stays})
	for _, t := range f.Held {
		text := moved(t.Before, t.After)
		if text == "" && ofHundred(t.Hurt) < unit.Hundred {
			text = "reads as before"
		}
		if text != "" {
			lines = append(lines, Line{Lead: t.Words, Text: text + ", within it in " + Chance(t.Hurt, t.Help)})
		}
	}
	for _, t := range f.Comes {
		lines = append(lines, Line{Lead: "new in the drink", Text: string(t.Quality) + ": " + figureSaid(t.Words, t.After)})
	}
	var moves []string
	for _, m := range f.Moves() {
		moves = append(moves, m.Words+" "+moved(m.Before, m.After))
	}
	if len(moves) > 0 {
		lines = append(lines, Line{Lead: ServingThen, Text: strings.Join(moves, ", ")})
	}
	for _, x := range f.Thick {
		lines = append(lines, Line{Lead: "may crystallise", Text: fmt.Sprintf("%s g of it stand in 100 g of the water of %s: whether so much dissolves and stays dissolved when it is cold is not calculated", three(x.Of), clean.Name(cmp.Or(x.Pot, "the drink")))})
	}
	if f.Smelled {
		lines = append(lines, Line{Lead: "smelled", Text: "most of its acid is acetic, which is smelled as vinegar; smell is not compared, so it stands last"})
	}
	lines = append(lines, f.Declares()...)
	if f.Asked {
		lines = append(lines, Line{Lead: "to be decided", Text: "nobody has looked which allergens it holds"})
	}
	if len(f.Still) > 0 {
		lines = append(lines, Line{Lead: "still there", Text: clean.Prose(strings.Join(f.Still, ", ")) + " of the drink holds, or may hold, what is to be left out"})
	}
	goes, comes := f.NewCautions()
	for _, c := range goes {
		lines = append(lines, Line{Lead: "no longer said", Text: clean.Prose(c.Text)})
	}
	for _, c := range comes {
		lines = append(lines, Line{Lead: "new caution", Text: clean.Prose(c.Text), Source: clean.Prose(c.Source)})
	}
	return lines
}

// how says what was looked at, and what was not.
func (s *Swapped) how() []Line {
	var lines []Line
	if s.Looked > 0 {
		lines = append(lines, Line{Text: howMany(s.Looked) + " of its use were compared by composition; the nearest were poured into the drink, through its steps, each with the amount at which what is held moves least."})
	}
	if len(s.Unread) > 0 {
		lines = append(lines, Line{Text: "What was read of " + clean.Listed(s.Unread) + " was read of another pot: the figures before and after are without it."})
	}
	for _, r := range s.Remarks {
		lines = append(lines, Line{Text: clean.UpperFirst(clean.Prose(r)) + "."})
	}
	lines = append(lines, Line{Text: "Smell, colour, foam and how a food behaves in a step that is not calculated are not compared: taste it before you serve it."})
	if s.Offered {
		return lines
	}
	written := "Nothing is written; --write FILE writes a copy of the drink with the first."
	if s.Written != "" {
		written = clean.Name(s.Written) + " written."
	}
	return append(lines, Line{Text: written})
}

func howMany(n int) string {
	if n == 1 {
		return "One food"
	}
	return unit.Number(float64(n)) + " foods"
}
