package sheet

import (
	"cmp"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/ladder"
	"sipsum/internal/speech"
)

// opening says what the drink is, and what it is poured of.
func (s *speaker) opening() {
	drink := clean.Name(s.Assay.Drink.Name)
	parts, steps := clean.Listed(s.poured()), stepsAloud(s.Assay.Drink.Finish)
	if steps == "" {
		s.tell("open.parts", "", 0, s.file(), "drink", drink, "parts", parts)
	} else {
		s.tell("open.finished", "", 0, s.file(), "drink", drink, "parts", parts, "steps", steps)
	}
}

// poured names the parts of the build: not the water of ice, which a step melts.
func (s *speaker) poured() []string {
	var list []string
	for _, c := range s.Assay.Components {
		line := func(l drink.Line) bool { return slices.Contains(c.Lines, l.Path) }
		switch {
		case c.House:
			list = append(list, the(clean.Name(c.Name)))
		case slices.ContainsFunc(s.Assay.Drink.Build, line):
			list = append(list, s.wordOf(c.ID.Food))
		}
	}
	return list
}

// made says of each component that is in the drink what it is made from, and how. Of one that is
// nothing but the food whose name it has there is only what was done.
func (s *speaker) made() {
	used, rank := s.Assay.Used(), 0
	for i := range s.Assay.Drink.Components {
		c := &s.Assay.Drink.Components[i]
		if !used[c.Name] {
			continue
		}
		name, from, steps := clean.Name(c.Name), s.ingredientsAloud(c), stepsAloud(c.Steps)
		gaps := []string{"name", bare(name), "ingredients", clean.Listed(from), "steps", steps, "make", "make", "made", "made"}
		same := len(from) == 0 || len(from) == 1 && within(from[0], name)
		if rest, brewed := brewedFirst(c); brewed && !same { // "I brew the filter from coffee"
			steps = rest
			gaps = []string{"name", bare(name), "ingredients", clean.Listed(from), "steps", steps, "make", "brew", "made", "brewed"}
		}
		switch {
		case same && steps == "":
			continue
		case same:
			s.tell("made.same", "", rank, s.file(), gaps...)
		case steps == "":
			s.tell("made", "", rank, s.file(), gaps...)
		default:
			s.tell("made.steps", "", rank, s.file(), gaps...)
		}
		rank++
	}
}

// brewedFirst reports whether a component is brewed before all else, and gives its further steps.
func brewedFirst(c *drink.Component) (rest string, ok bool) {
	if len(c.Steps) == 0 || c.Steps[0].Kind() != "brew" || len(c.Ingredients) == 0 {
		return "", false
	}
	return stepsAloud(c.Steps[1:]), true
}

// bare is a name without the article that a sentence puts before it.
func bare(name string) string { return strings.TrimPrefix(the(name), "the ") }

// within reports whether a name has every word of a food.
func within(word, name string) bool {
	words := strings.Fields(strings.ToLower(name))
	for w := range strings.FieldsSeq(strings.ToLower(word)) {
		if !slices.Contains(words, w) {
			return false
		}
	}
	return true
}

// ingredientsAloud names what goes into a component: other components first, then its foods.
func (s *speaker) ingredientsAloud(c *drink.Component) []string {
	var list []string
	add := func(name string) {
		if name != "" && !slices.Contains(list, name) {
			list = append(list, name)
		}
	}
	for _, l := range c.Lines() {
		if inner, ok := s.Assay.Drink.Component(l.Food); ok {
			add(the(clean.Name(inner.Name)))
		}
	}
	var waters []string // which nobody names beside anything else
	for _, it := range s.Assay.Items {
		switch n := len(it.Path); {
		case n == 0 || it.Path[n-1] != c.Name:
		case it.Food.Facts().Water:
			waters = append(waters, s.wordOf(it.Food.ID))
		default:
			add(s.wordOf(it.Food.ID))
		}
	}
	if len(list) == 0 {
		return waters
	}
	return list
}

// aside is what a name says in brackets: nobody speaks it.
var aside = regexp.MustCompile(`\s*\([^()]*\)`)

// wordOf is a food as a bar calls it.
func (s *speaker) wordOf(id food.ID) string {
	if w, ok := s.words[id]; ok {
		return cmp.Or(aside.ReplaceAllString(w, ""), w)
	}
	for _, it := range s.Assay.Items {
		if it.Food.ID == id {
			return clean.LowerFirst(ladder.Head(it.Food.Name()))
		}
	}
	return ""
}

// stepsAloud puts steps into words, each once: "reduced, strained through cloth and chilled with ice".
func stepsAloud(steps []drink.Step) string {
	var list []string
	for _, step := range steps {
		text := speech.Step(step.Kind(), optionOf(step), map[string]string{"technique": techniqueOf(step)})
		if text != "" && !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	return clean.Listed(list)
}

// optionOf is the way in which a step is done.
func optionOf(step drink.Step) string {
	switch x := step.(type) {
	case *drink.Strain:
		return x.Through
	case *drink.Curdle:
		return x.By
	case *drink.Clarify:
		return x.By
	case *drink.Concentrate:
		return x.By
	case *drink.Adjust:
		switch {
		case x.PH != nil:
			return "ph"
		case x.TA != nil:
			return "ta"
		}
		return "brix"
	}
	return ""
}

// techniqueOf is a technique in the designer's words, as far as they hold no figure.
func techniqueOf(step drink.Step) string {
	x, ok := step.(*drink.Treat)
	if !ok {
		return ""
	}
	text := clean.LowerFirst(clean.Name(x.Technique))
	if i := strings.IndexFunc(text, unicode.IsDigit); i >= 0 {
		text = text[:i]
	}
	return strings.TrimRight(text, " ,;:-–(")
}
