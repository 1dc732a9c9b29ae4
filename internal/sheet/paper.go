package sheet

import (
	"strconv"

	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/figure"
)

// Paper is the sheet of a drink as it is printed: a page with the brief and its pictures, a page
// with the card, and the rest as an annex, the sources last. What stands on it, in which order and
// in which words is said here; a renderer gives it its form.
type Paper struct {
	Language string
	Label    string
	Title    string
	Below    []Written // of a serving: its mass and its volume
	Beside   []string  // further pieces of the line below the title
	Senses   []SensePicture
	Brief    []Block // of the first page, what surely may be said first
	Build    Block
	Guest    []Block // the guest's box of the first page, and what stands with it
	Card     []Block // of the second page
	Annex    []Section
	Foot     []string
}

// Section is a part of the annex.
type Section struct {
	ID      string
	Heading string
	Blocks  []Block
}

// SensePicture is a sense on paper: its leading figures, its pictures, and what else there is to say.
type SensePicture struct {
	Name     string
	Figures  []Written
	Pictures []*Bars
	Further  []Written // figures without a picture
	More     string    // how many stand in the annex; empty: none
	Lines    []string
}

// printed is a sheet that is being set on paper.
type printed struct {
	briefing
	palette
	brief *Brief
	notes *Footnotes
}

// PaperOf sets a drink on paper.
func PaperOf(s *Sheet) *Paper {
	p := &printed{briefing{s}, paletteOf(s.Assay), BriefOf(s), &Footnotes{}}
	out := &Paper{Language: Language, Label: say("kind.sheet"), Title: clean.Name(s.Assay.Drink.Name)}
	p.size(out)
	for i := range p.brief.Senses {
		out.Senses = append(out.Senses, p.sense(&p.brief.Senses[i]))
	}
	out.Brief, out.Build, out.Guest = p.briefly(), p.build(), p.guestly()
	card, rest := p.cards()
	out.Card = card
	out.Annex = annexed{p}.annex(rest)
	out.Foot = append([]string{say("paper.range"), say("paper.hatched"), say("calculated"), clean.Name(s.Program)}, proven(s)...)
	return out
}

// size says how large a serving is.
func (p *printed) size(out *Paper) {
	a := p.Assay
	size := say("serving")
	if a.Drink.Serves > 1 {
		size = say("serving.of", strconv.Itoa(a.Drink.Serves))
	}
	out.Beside = append(out.Beside, size)
	out.Below = append(out.Below, Written{Path: "size.mass", Shown: figure.Of(a.Mass)})
	if NoLiquid(a) == "" {
		out.Below = append(out.Below, Written{Path: "size.volume", Shown: figure.Of(a.Volume)})
	}
	if Foamy(a) {
		out.Beside = append(out.Beside, say("paper.filled", figure.Of(a.Filled).Number))
	}
	if at := a.Drink.At; at != nil {
		out.Beside = append(out.Beside, say("at", figure.Plain(at.Number)+" "+clean.Name(at.Unit)))
	}
	if g := a.Drink.Glass; g != nil {
		out.Beside = append(out.Beside, say("paper.glass", g.String()))
	}
}

// ShortUnits fit units into a column: grams in 100 g are per cent, and the words of the figure say
// per what.
var ShortUnits = map[string]string{"g/100 g": "%", "mmol/(l·pH)": "mmol", "mmol/l": "mmol"}

// shortly writes a result in a unit that fits a column.
func shortly(r composition.Result) figure.Shown {
	if unit, ok := ShortUnits[r.Unit]; ok {
		r.Unit = unit
	}
	return figure.Of(r)
}
