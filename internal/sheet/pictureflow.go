package sheet

import (
	"cmp"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/clean"
	"sipsum/internal/drink"
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
	Segments []Segment // of what it is put together, as long as no step took or gave any; none: it is one liquid
}

// Name says what is drawn.
func (f *Flow) Name() string { return f.Title }

// Table is the flow in words.
func (f *Flow) Table() *Grid {
	g := &Grid{Caption: f.Title, Head: []string{"", "g", ""}}
	for _, pot := range f.Pots {
		g.Rows = append(g.Rows, GridRow{Label: pot.Heading, Cells: []GridCell{{}, {}}})
		for i, s := range pot.Stages {
			g.Rows = append(g.Rows, GridRow{Label: s.Words, Indent: 1, Cells: []GridCell{{Text: s.Text}, {Text: s.Change}}})
			if i > 0 {
				continue // the parts stay as they were put in
			}
			for _, x := range s.Segments {
				g.Rows = append(g.Rows, GridRow{Label: x.Word, Indent: 2, Cells: []GridCell{{Text: wholeGrams(x.Amount)}, {}}})
			}
		}
	}
	return g
}

// flow draws the yields of a drink.
func (p *printed) flow() *Flow {
	f := &Flow{Title: say("paper.flow.of")}
	most := 0.0
	for i := range p.Assay.Yields {
		y := &p.Assay.Yields[i]
		pot := p.flowOf(y)
		for _, s := range pot.Stages {
			most = max(most, s.Grams)
		}
		f.Pots = append(f.Pots, pot)
	}
	f.Axis = axisTo(most, "g")
	return f
}

// flowOf tells one pot.
func (p *printed) flowOf(y *assay.Yield) FlowPot {
	name, hue := clean.Name(y.Component), p.pot(y.Component)
	path := "flow." + y.Component
	if y.Component == "" {
		name, hue = say("paper.flow.build"), HueMany
	}
	pot := FlowPot{Heading: name, Stages: []Stage{{
		Words: say("paper.flow.in"), Path: path + ".in", Grams: y.In, Text: wholeGrams(y.In), Hue: hue, Segments: p.weighed(y),
	}}}
	whole := y.In
	parts := pot.Stages[0].Segments
	held := func(grams float64) []Segment { return scaledTo(parts, whole, grams) }
	for _, s := range y.Steps {
		change := ""
		switch {
		case s.Lost > worthSaying:
			change = say("paper.flow.lost", wholeGrams(s.Lost))
		case s.Added > worthSaying:
			change = say("paper.flow.added", wholeGrams(s.Added))
		}
		if change != "" { // from here on nobody can draw what is of which part
			parts = nil
		}
		pot.Stages = append(pot.Stages, Stage{Words: clean.Name(s.Kind), Path: path + "." + s.Path, Grams: s.Out, Text: wholeGrams(s.Out), Change: change, Hue: hue, Segments: held(s.Out)})
	}
	serves := float64(p.Assay.Drink.Serves)
	switch left := y.Out - y.Used; {
	case y.Component == "" && serves > 1:
		each := y.Out / serves
		pot.Stages = append(pot.Stages, Stage{Words: say("paper.flow.glass"), Path: path + ".glass", Grams: each, Text: wholeGrams(each), Hue: hue, Segments: held(each)})
	case y.Component == "":
	default:
		stage := Stage{Words: say("paper.flow.used"), Path: path + ".used", Grams: y.Used, Text: wholeGrams(y.Used), Hue: hue, Segments: held(y.Used)}
		if left > worthSaying {
			stage.Change = say("paper.flow.left", wholeGrams(left))
		}
		pot.Stages = append(pot.Stages, stage)
	}
	return pot
}

// scaledTo are the parts of a pot that weighed so much in another mass of the same.
func scaledTo(parts []Segment, whole, grams float64) []Segment {
	if whole <= 0 {
		return nil
	}
	list := slices.Clone(parts)
	for i := range list {
		list[i].Amount *= grams / whole
		list[i].Share = wholeGrams(list[i].Amount)
	}
	return list
}

// weighed are the parts that a pot was put together from before its first step, in order.
func (p *printed) weighed(y *assay.Yield) []Segment {
	lines := p.Assay.Drink.Build
	if c, ok := p.Assay.Drink.Component(y.Component); ok {
		lines = c.Ingredients
	}
	words := p.words()
	var list []Segment
	for _, w := range y.Poured {
		if !slices.ContainsFunc(lines, func(l drink.Line) bool { return l.Path == w.Path }) {
			continue
		}
		s := Segment{Hue: p.pot(w.Component), Word: clean.Name(w.Component), Amount: w.Grams, Share: wholeGrams(w.Grams)}
		if w.Food != nil { // of what no serving holds any more there is no word
			s.Hue, s.Word = p.of(w.Food), clean.Name(cmp.Or(words[w.Food.ID], w.Food.Name()))
		}
		list = append(list, s)
	}
	return list
}
