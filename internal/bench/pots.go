package bench

import (
	"cmp"
	"slices"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/batch"
	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/sheet"
)

// Pot is a component, the build or the garnish as somebody works at it.
type Pot struct {
	Name    string // of the component, as the file has it; "build", "garnish"
	Heading string
	Drink   bool   // it is the build: the drink itself
	Top     bool   // it is the garnish
	Shelf   string // the file that it stands in, if that is another
	Hue     sheet.Hue
	Makes   string // "152 g"; empty: not calculated
	Unused  bool   // nothing pours it
	Lines   []Line
	Steps   []Step
	Reads   []sheet.Verdict // what was read of it, in order
	Fields  []Field         // what can be read of it: none of a garnish
	Logged  bool            // the bench log has readings of it
	Meters  []string        // of the shelf, by which it may have been read

	lineDials, stepDials []turning
}

// Line is what goes into a pot.
type Line struct {
	Dial
	Words string
	Hue   sheet.Hue
	Row   int    // of the file
	Range string // "± 2 g"
	Note  string
}

// Step is what is done with a pot.
type Step struct {
	Words string
	Dials []Dial
	Row   int
}

// Field is where what an instrument read is written.
type Field struct {
	Kind  string // "mass", "brix", "ph"
	Words string
	Value string // as it is written; empty: nobody has read it
}

// fields are the readings that a bench takes most; the file takes more.
var fields = []string{"mass", "brix", "ph"}

// dials are those of a pot.
func (p *Pot) dials() []turning { return slices.Concat(p.lineDials, p.stepDials) }

// PotsOf gives the pots of a drink as its file has them, in the order of the file, the build after them.
func PotsOf(d *drink.Drink) []Pot {
	return (&potter{d: d, named: func(l drink.Line) string { return clean.Name(l.Food) }}).pots()
}

// Pots gives the pots of a drink that was calculated.
func Pots(s *sheet.Sheet) []Pot {
	p := &potter{d: s.Assay.Drink, s: s, colours: sheet.ColoursOf(s), foods: map[string]*food.Food{}, yields: map[string]*assay.Yield{}}
	for i := range s.Assay.Yields {
		y := &s.Assay.Yields[i]
		p.yields[y.Component] = y
		for _, x := range y.Poured {
			p.foods[x.Path] = x.Food
		}
	}
	for _, item := range s.Assay.Items { // what garnishes goes through no pot
		p.items = append(p.items, item.Food)
	}
	p.named = func(l drink.Line) string {
		if f := p.food(l); f != nil {
			return clean.Name(cmp.Or(f.Name(), l.Food))
		}
		return clean.Name(l.Food)
	}
	return p.pots()
}

// potter makes the pots of a drink.
type potter struct {
	d       *drink.Drink
	s       *sheet.Sheet // nil: it was not calculated
	colours sheet.Colours
	foods   map[string]*food.Food // by the path of a line
	items   []*food.Food
	yields  map[string]*assay.Yield
	named   func(drink.Line) string
}

// food gives what a line pours; nil if that is a component, or nobody knows.
func (p *potter) food(l drink.Line) *food.Food {
	if f := p.foods[l.Path]; f != nil {
		return f
	}
	if i := slices.IndexFunc(p.items, func(f *food.Food) bool { return f.ID.String() == l.Food }); i >= 0 {
		return p.items[i]
	}
	return nil
}

func (p *potter) pots() []Pot {
	var list []Pot
	for i := range p.d.Components {
		c := &p.d.Components[i]
		pot := Pot{Name: c.Name, Heading: clean.Name(c.Name), Fields: p.fieldsOf(c.Measured), Logged: logged(c.Measured), Meters: p.meters()}
		if c.Place.File != p.d.File {
			pot.Shelf, pot.Fields = clean.Name(c.Place.File), nil
		}
		p.fill(&pot, c.Ingredients, c.Steps, c.Name)
		list = append(list, pot)
	}
	var last *drink.Measured
	steps := slices.Clone(p.d.Finish)
	if n := len(steps); n > 0 {
		if m, is := steps[n-1].(*drink.Measured); is && m.Pot() != m.StepPath() {
			last, steps = m, steps[:n-1]
		}
	}
	build := Pot{Name: "build", Heading: "In the glass", Drink: true, Fields: p.fieldsOf(last), Logged: logged(last), Meters: p.meters()}
	p.fill(&build, p.d.Build, steps, "")
	if serves := float64(p.d.Serves); build.Makes != "" && serves > 1 {
		build.Makes += ", " + note.Grams(p.yields[""].Out/serves) + " g a serving"
	}
	list = append(list, build)
	if len(p.d.Garnish) > 0 {
		top := Pot{Name: "garnish", Heading: "On top", Top: true, Hue: sheet.HueRest}
		p.lines(&top, p.d.Garnish)
		list = append(list, top)
	}
	return list
}

// fill puts into a pot what the file says of it, and what came of it.
func (p *potter) fill(pot *Pot, lines []drink.Line, steps []drink.Step, yield string) {
	p.lines(pot, lines)
	for _, step := range steps {
		p.step(pot, step)
	}
	pot.Hue = sheet.HueMany
	if p.s == nil {
		return
	}
	if yield != "" {
		pot.Hue = p.colours.Pot(yield)
	}
	y := p.yields[yield]
	if y == nil {
		pot.Unused = true
		return
	}
	pot.Makes = note.Grams(y.Out) + " g"
	for _, r := range p.s.Assay.Readings {
		if strings.Join(r.Path, "/") == yield || len(r.Path) > 0 && r.Path[len(r.Path)-1] == yield {
			pot.Reads = append(pot.Reads, sheet.VerdictOf(r))
		}
	}
}

func (p *potter) lines(pot *Pot, lines []drink.Line) {
	for i := range lines {
		l := &lines[i]
		t := lineDial(p.d, l, p.named(*l))
		pot.lineDials = append(pot.lineDials, t)
		line := Line{Dial: t.Dial, Words: t.Of, Row: l.Place.Line, Note: clean.Prose(l.Note), Hue: p.hue(l)}
		if l.Portion == "" && (l.Amount.Half > 0 || l.Amount.Exact) {
			_, line.Range, _ = strings.Cut(l.Amount.String(), "± ")
			line.Range = "± " + line.Range
		}
		pot.Lines = append(pot.Lines, line)
	}
}

// hue is that of what a line pours.
func (p *potter) hue(l *drink.Line) sheet.Hue {
	if p.s == nil {
		return sheet.HueRest
	}
	if f := p.food(*l); f != nil {
		return p.colours.Of(f)
	}
	if _, house := p.d.Component(l.Food); house {
		return p.colours.Pot(l.Food)
	}
	return sheet.HueRest
}

func (p *potter) step(pot *Pot, step drink.Step) {
	words := clean.UpperFirst(sheet.StepWords(step, func(l drink.Line) string { return clean.LowerFirst(p.named(l)) }))
	s := Step{Words: words, Row: step.At().Line}
	fixed := step.At().File != p.d.File
	if _, dosed := step.(*drink.Adjust); !dosed {
		lines := step.Lines()
		for i := range lines {
			t := lineDial(p.d, &lines[i], p.named(lines[i]))
			pot.stepDials = append(pot.stepDials, t)
			s.Dials = append(s.Dials, t.Dial)
		}
	}
	for _, g := range batch.Growing(step) {
		t := turning{Dial: Dial{Path: step.StepPath() + "/" + g.Name, Of: step.Kind() + ", " + g.Name, Fixed: fixed}, amount: g.Amount}.written(p.d)
		pot.stepDials = append(pot.stepDials, t)
		s.Dials = append(s.Dials, t.Dial)
	}
	pot.Steps = append(pot.Steps, s)
}

// fieldsOf are the fields of a pot of which something may have been read.
func (p *potter) fieldsOf(m *drink.Measured) []Field {
	var list []Field
	for _, kind := range fields {
		f := Field{Kind: kind, Words: sheet.ReadingWords(kind)}
		if m != nil {
			switch {
			case kind == "mass" && m.Mass != nil:
				f.Value = m.Mass.String()
			case kind == "brix" && m.Brix != nil:
				f.Value = m.Brix.String()
			case kind == "ph" && m.PH != nil:
				f.Value = m.PH.String()
			}
		}
		list = append(list, f)
	}
	return list
}
