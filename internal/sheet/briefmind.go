package sheet

import (
	"fmt"
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
	return list
}

// keptWrongly says of a component that needs control of time and temperature how it is kept
// beyond it; empty if it is not.
func keptWrongly(c *assay.Component) string {
	if c.Chemistry == nil || c.Chemistry.Keeping == nil || c.Chemistry.Keeping.Holding == nil {
		return ""
	}
	h, cold := c.Chemistry.Keeping.Holding, coldChain()
	wrong := strings.TrimSuffix(strings.TrimSpace(tooLong(cold, h)), ".")
	if wrong == "" || !controlled(h) {
		return ""
	}
	return fmt.Sprintf("%s: %s (%g at %g °C or colder are the most)", clean.Name(c.Name), strings.ReplaceAll(wrong, ". ", " and "), cold.Days, cold.Cold)
}

// controlled reports whether what is kept needs control of time and temperature.
func controlled(h *chemistry.Holding) bool { return h.Animal || h.NeedsAssessment }
