package sheet

import (
	"math"

	"sipsum/internal/assay"
	"sipsum/internal/clean"
	"sipsum/internal/figure"
)

// Flow is what becomes of the mass: pot by pot, step by step, into the build and the glass.
type Flow struct {
	Title string
	Axis  Axis
	Pots  []FlowPot
}

// FlowPot is what became of what was made in one pot; the last is the build.
type FlowPot struct {
	Heading string
	Stages  []Stage
}

// Stage is a mass on its way: of what, how much, and what came or went since the one before.
type Stage struct {
	Words    string
	Path     string // where the documents have it
	Grams    float64
	Text     string
	Change   string // "− 220 g"; empty: none
	Hue      Hue
	Segments []Segment // of what it is put together; none: it is one liquid
}

// Name says what is drawn.
func (f *Flow) Name() string { return f.Title }

// Table is the flow in words.
func (f *Flow) Table() *Grid {
	g := &Grid{Caption: f.Title, Head: []string{"", "g", ""}}
	for _, pot := range f.Pots {
		g.Rows = append(g.Rows, GridRow{Label: pot.Heading, Cells: []GridCell{{}, {}}})
		for _, s := range pot.Stages {
			g.Rows = append(g.Rows, GridRow{Label: s.Words, Indent: 1, Cells: []GridCell{{Text: s.Text}, {Text: s.Change}}})
			for _, x := range s.Segments {
				g.Rows = append(g.Rows, GridRow{Label: x.Word, Indent: 2, Cells: []GridCell{{Text: gramsText(x.Amount)}, {}}})
			}
		}
	}
	return g
}

// gramsText writes a mass with three digits.
func gramsText(g float64) string {
	return figure.Rounded(g, figure.Place(g, 0, figure.MostDigits)) + " g"
}

// flow draws the yields of a drink.
func (p *printed) flow() *Flow {
	f := &Flow{Title: say("paper.flow.of")}
	most := 0.0
	for i := range p.Assay.Yields {
		y := &p.Assay.Yields[i]
		pot := p.pot1(y)
		for _, s := range pot.Stages {
			most = max(most, s.Grams)
		}
		f.Pots = append(f.Pots, pot)
	}
	f.Axis = axisTo(most, "g")
	return f
}

// pot1 tells one pot.
func (p *printed) pot1(y *assay.Yield) FlowPot {
	name, hue := clean.Name(y.Component), p.pot(y.Component)
	path := "flow." + y.Component
	if y.Component == "" {
		name, hue = say("paper.flow.build"), HueMany
	}
	pot := FlowPot{Heading: name, Stages: []Stage{{
		Words: say("paper.flow.in"), Path: path + ".in", Grams: y.In, Text: gramsText(y.In), Hue: hue, Segments: p.weighed(y),
	}}}
	for _, s := range y.Steps {
		change := ""
		switch {
		case s.Lost > worthSaying:
			change = say("paper.flow.lost", gramsText(s.Lost))
		case s.Added > worthSaying:
			change = say("paper.flow.added", gramsText(s.Added))
		}
		pot.Stages = append(pot.Stages, Stage{Words: clean.Name(s.Kind), Path: path + "." + s.Path, Grams: s.Out, Text: gramsText(s.Out), Change: change, Hue: hue})
	}
	serves := float64(p.Assay.Drink.Serves)
	switch left := y.Out - y.Used; {
	case y.Component == "" && serves > 1:
		each := y.Out / serves
		pot.Stages = append(pot.Stages, Stage{Words: say("paper.flow.glass"), Path: path + ".glass", Grams: each, Text: gramsText(each), Hue: hue})
	case y.Component == "":
	default:
		stage := Stage{Words: say("paper.flow.used"), Path: path + ".used", Grams: y.Used, Text: gramsText(y.Used), Hue: hue}
		if left > worthSaying {
			stage.Change = say("paper.flow.left", gramsText(left))
		}
		pot.Stages = append(pot.Stages, stage)
	}
	return pot
}

// weighed are the parts of what a pot was weighed in from, in order.
func (p *printed) weighed(y *assay.Yield) []Segment {
	words := wordsOf(p.Assay.Serving)
	var list []Segment
	for _, w := range y.Weighed {
		s := Segment{Amount: w.Grams, Hue: p.pot(w.Component), Word: clean.Name(w.Component)}
		if w.Food != nil {
			s.Hue, s.Word = p.of(w.Food), clean.Name(words[w.Food.ID])
			if s.Word == "" { // nothing of it is left in the serving
				s.Word = clean.Name(w.Food.Name())
			}
		}
		if y.In > 0 && !math.IsNaN(w.Grams) {
			s.Share = gramsText(w.Grams)
		}
		list = append(list, s)
	}
	return list
}
