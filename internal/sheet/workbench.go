package sheet

import (
	"math"
	"strings"

	"sipsum/internal/batch"
	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/drink"
	"sipsum/internal/evidence"
	"sipsum/internal/figure"
	"sipsum/internal/food"
	"sipsum/internal/reading"
	"sipsum/internal/source"
)

// Colours tells the foods and the pots of a drink apart, as its pictures do.
type Colours struct{ palette }

// ColoursOf gives those of a drink.
func ColoursOf(s *Sheet) Colours { return Colours{paletteOf(s.Assay)} }

// Pot gives the hue of a component.
func (c Colours) Pot(name string) Hue { return c.pot(name) }

// Of gives the hue of a food.
func (c Colours) Of(f *food.Food) Hue { return c.of(f) }

// StepWords tells a step as the drink file has it, with the amounts that are written there. Named gives
// the words for the food of a line.
func StepWords(step drink.Step, named func(drink.Line) string) string {
	m := batch.Move{Step: step}
	_, dosed := step.(*drink.Adjust) // whose amount the file does not state
	for _, l := range step.Lines() {
		if dosed {
			m.Lines = append(m.Lines, batch.Weighed{Name: named(l), Home: &batch.Spooned{}})
			continue
		}
		m.Lines = append(m.Lines, batch.Weighed{Path: l.Path, Name: named(l), Amount: l.Amount, Rounded: l.Amount, Count: l.Count, Portion: l.Portion})
	}
	for _, p := range batch.Growing(step) {
		m.Amounts = append(m.Amounts, batch.Weighed{Path: step.StepPath() + "/" + p.Name, Name: p.Name, Amount: *p.Amount, Rounded: *p.Amount})
	}
	return StepOf(m)
}

// AmountWords is the amount of a line as the file has it.
func AmountWords(l drink.Line) string { return writtenAmount(l) }

// Verdict is a reading beside what its recipe expects.
type Verdict struct {
	Kind                 string
	Words                string // "°Brix"
	Read, Expected, Used string // with their unit; Expected is empty where the recipe does not tell
	By                   string // which instrument of the shelf took it, and what that shows too much
	Believed             bool
	Advice               string // of one that is not believed
}

// Says is believed or contradicts, in the words of the sheet.
func (v Verdict) Says() string {
	if v.Believed {
		return say("paper.agrees")
	}
	return say("paper.contradicts")
}

// VerdictOf tells a reading.
func VerdictOf(r reading.Reading) Verdict {
	shown := func(x float64) string {
		if math.IsNaN(x) {
			return ""
		}
		return strings.TrimSpace(readingNumber(r, x) + glue + unitBeside(r))
	}
	v := Verdict{Kind: r.Kind, Words: readingName(r), Read: strings.TrimSpace(figure.Plain(r.Read) + glue + unitBeside(r)), Expected: shown(r.Expected), Used: shown(r.Used), By: strings.TrimSpace(takenBy(r)), Believed: r.Agrees && !r.Doubted && !r.Decide}
	if !v.Believed {
		v.Advice = clean.UpperFirst(clean.Prose(r.Advice))
	}
	return v
}

// WorksBehind gives the works that a part of a figure names.
func WorksBehind(s *Sheet, c composition.Contribution) []source.Work {
	return evidence.WorksBehind(s.Assay.Drink, s.works, c)
}
