package sheet

import (
	"strconv"
	"sync"

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
	Front
	Build Block
	Card  []Block // of the second page
	Annex []Section
	Foot  []string
}

// Front is what leads a drink on its first page, and beside the pots while it is built.
type Front struct {
	Title  string
	Below  []Written // of a serving: its mass and its volume
	Beside []string  // further pieces of the line below the title
	Senses []SensePicture
	Brief  []Block // what surely may be said first
	Guest  []Block // the guest's box, and what stands with it
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
	more  string // the word for what has no room: where it stands
}

// PaperOf sets a drink on paper.
func PaperOf(s *Sheet) *Paper {
	p := printedOf(s, "paper.more")
	out := &Paper{Language: English, Label: say("kind.sheet"), Front: p.front(), Build: p.build()}
	card, rest := p.cards()
	out.Card = card
	out.Annex = annexed{p}.annex(rest)
	out.Foot = append([]string{say("paper.range"), say("paper.hatched"), say("calculated"), clean.Name(s.Program)}, proven(s)...)
	return out
}

func printedOf(s *Sheet, more string) *printed {
	return &printed{briefing{s}, paletteOf(s.Assay), BriefOf(s), &Footnotes{}, more}
}

// FrontOf sets what leads a drink, for a page without an annex.
func FrontOf(s *Sheet) Front {
	var side sync.WaitGroup
	side.Go(func() { s.Allergens() }) // beside the brief, which is not asked for them at once
	side.Go(func() { s.Cards() })
	defer side.Wait()
	return printedOf(s, "paper.more.printed").front()
}

func (p *printed) front() Front {
	out := Front{Title: clean.Name(p.Assay.Drink.Name)}
	p.size(&out)
	for i := range p.brief.Senses {
		out.Senses = append(out.Senses, p.sense(&p.brief.Senses[i]))
	}
	out.Brief, out.Guest = p.briefly(), p.guestly()
	return out
}

// size says how large a serving is.
func (p *printed) size(out *Front) {
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
