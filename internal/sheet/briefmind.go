package sheet

import (
	"fmt"
	"slices"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/chemistry"
	"sipsum/internal/clean"
)

// noteGlass is the kind of the note that a serving overflows its glass.
const noteGlass = "glass"

// mind says what goes wrong at the bar whatever the drink tastes of: a glass that overflows, and
// what is kept for longer or warmer than it may be.
func (s briefing) mind() []string {
	var list []string
	for _, n := range s.Assay.Notes {
		if n.Kind == noteGlass {
			list = append(list, clean.Prose(n.Text))
		}
	}
	for i := range s.Assay.Components {
		if text := keptWrongly(&s.Assay.Components[i]); text != "" {
			list = append(list, text)
		}
	}
	return append(list, s.keptInside()...)
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
