package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/chemistry"
	"sipsum/internal/clean"
	"sipsum/internal/curdling"
	"sipsum/internal/unit"
)

// noteGlass is the kind of the note that a serving overflows its glass.
const noteGlass = "glass"

// mind says what goes wrong at the bar whatever the drink tastes of: a glass that overflows, milk that
// curdles, and what is kept for longer or warmer than it may be.
func (s briefing) mind() []string {
	var list []string
	for _, n := range s.Assay.Notes {
		if n.Kind == noteGlass {
			list = append(list, clean.Prose(n.Text))
		}
	}
	if text := curdlesInShort(s.Assay.Curdling); text != "" {
		list = append(list, text)
	}
	for i := range s.Assay.Components {
		if text := keptWrongly(&s.Assay.Components[i]); text != "" {
			list = append(list, text)
		}
	}
	return append(list, s.keptInside()...)
}

// curdlesInShort says that milk may not stay smooth, or that nobody can tell; empty where it does.
func curdlesInShort(c *curdling.Judgement) string {
	switch {
	case c == nil, c.Why == "" && c.Stand.Verdict == curdling.Smooth, c.Why != "" && math.IsNaN(c.About):
		return ""
	case c.Why != "":
		return fmt.Sprintf("%s may curdle: its recipe makes about pH %.1f, and how much protein buffers no table says; try a little, or titrate the milk with an acid",
			clean.Name(clean.Listed(c.Milk)), c.About)
	}
	return fmt.Sprintf("%s: %s, smooth in %.0f of 100 draws", clean.Name(clean.Listed(c.Milk)), c.Stand.Verdict, unit.Hundred*c.Stand.Smooth)
}

// keptInside says how what is only poured into other components is kept for longer or warmer than
// what needs control of time and temperature may be: whether it does nobody judges here.
func (s briefing) keptInside() []string {
	var list []string
	cold := coldChain()
	for i := range s.Assay.Drink.Components {
		c := &s.Assay.Drink.Components[i]
		if c.Keeps == nil || slices.ContainsFunc(s.Assay.Components, func(part assay.Component) bool { return part.ID.Component == c.Name }) {
			continue
		}
		if wrong := inAClause(tooLong(cold, *c.Keeps)); wrong != "" {
			list = append(list, fmt.Sprintf("%s: %s unless its own pH and water activity allow it (%g days at %g °C or colder)", clean.Name(c.Name), wrong, cold.Days, cold.Cold))
		}
	}
	return list
}

// keptWrongly says of a component that needs control of time and temperature how it is kept
// beyond it; empty if it is not.
func keptWrongly(c *assay.Component) string {
	if c.Chemistry == nil || c.Chemistry.Keeping == nil || c.Chemistry.Keeping.Holding == nil {
		return ""
	}
	h, cold := c.Chemistry.Keeping.Holding, coldChain()
	wrong := inAClause(tooLong(cold, h.Keeps))
	if wrong == "" || !controlled(h) {
		return ""
	}
	return fmt.Sprintf("%s: %s (%g at %g °C or colder are the most)", clean.Name(c.Name), wrong, cold.Days, cold.Cold)
}

// inAClause makes one clause of sentences.
func inAClause(sentences string) string {
	return strings.ReplaceAll(strings.TrimSuffix(strings.TrimSpace(sentences), "."), ". ", " and ")
}

// controlled reports whether what is kept needs control of time and temperature.
func controlled(h *chemistry.Holding) bool { return h.Animal || h.NeedsAssessment }
