package sheet

import (
	"math"
	"slices"
	"strconv"

	"sipsum/internal/batch"
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// exact says how exact a serving is.
func (p bench) exact() []Line {
	b := p.batch
	var lines []Line
	if r := b.Rounding; r.Figure == nil {
		lines = append(lines, Line{Text: say("batch.rounding.none")})
	} else {
		lines = append(lines, Line{Text: say("batch.rounding", upTo(unit.Hundred*r.Share), figureName(r.Figure), upTo(max(r.PH, leastPH)))})
	}
	if b.Rounding.Undone != "" {
		lines = append(lines, Line{Text: say("batch.undone", clean.Prose(b.Rounding.Undone))})
	}
	x := b.Precision
	if len(x.Bands) == 0 {
		return append(lines, Line{Text: say("batch.nobands")})
	}
	var held []string
	for _, band := range x.Bands {
		held = append(held, bandText(band))
	}
	lines = append(lines, Line{Text: say("batch.held", joinedBy(held, ", "), note.Grams(unit.Hundred*x.Share))})
	if !math.IsNaN(x.Inside) {
		text := say("batch.inside.all")
		if x.Inside < 1 {
			text = say("batch.inside", strconv.Itoa(int(math.Floor(unit.Hundred*x.Inside))))
		}
		if x.First != "" {
			text += " " + say("batch.first", clean.Prose(x.First))
		}
		lines = append(lines, Line{Text: text})
	}
	lines = append(lines, p.tooFine()...)
	if !p.Read().None() {
		lines = append(lines, Line{Text: say("batch.reread")})
	}
	return append(lines, p.strengths()...)
}

// tooFine names what the bar's scale, or any, does not weigh as finely as a serving wants.
func (p bench) tooFine() []Line {
	var coarse, none []string
	for _, w := range p.batch.Weighings() {
		name := clean.Name(w.Name)
		switch {
		case !w.House && w.Food == "": // to what a step is collected
		case w.Step.Finer && !slices.Contains(none, name):
			none = append(none, name)
		case w.Step.Coarse && !w.Step.Finer && !slices.Contains(coarse, name):
			coarse = append(coarse, name)
		}
	}
	var lines []Line
	if len(coarse) > 0 {
		lines = append(lines, Line{Text: say("batch.coarse", p.Assay.Drink.Scale.String(), clean.Listed(coarse))})
	}
	if len(none) > 0 {
		lines = append(lines, Line{Text: say("batch.stock", clean.Listed(none))})
	}
	return lines
}

// strengths says which brews are as strong as the file says, however they are weighed.
func (p bench) strengths() []Line {
	var names []string
	for _, pot := range p.batch.Pots {
		for _, m := range pot.Moves {
			if b, ok := m.Step.(*drink.Brew); ok && b.Strength != nil {
				names = append(names, clean.Name(pot.Name))
			}
		}
	}
	if len(names) == 0 {
		return nil
	}
	return []Line{{Text: say("batch.strength", clean.Listed(names))}}
}

// leastPH is the least change of a pH that is told: finer than any meter reads.
const leastPH = 0.001

// bandText says to what a serving is held.
func bandText(b batch.Band) string {
	switch {
	case b.Name == batch.Overflow:
		return say("batch.overflow")
	case b.Share > 0:
		return b.Name + " ± " + note.Grams(unit.Hundred*b.Share) + " %"
	}
	return clean.Prose(b.Name)
}

// figureName names a figure; a remainder that no table names has none.
func figureName(c *constituent.Constituent) string {
	if c.ID == constituent.MassOther {
		return say("batch.unnamed")
	}
	return WordsFor(c)
}
