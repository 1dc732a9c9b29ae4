package bench

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/figure"
	"sipsum/internal/food"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// Trace is where a figure of the serving comes from.
type Trace struct {
	Key    string // of a document: "SUGAR", "ph"
	Words  string
	Lead   string // stands before the number: "pH"
	Figure figure.Shown
	Pots   []TracePot
	Behind []Behind      // of a figure of the solution: what it is worked out from
	Works  []source.Work // of a pH: those that published the pH of its foods
}

// TracePot is a pot that brings some of a figure, or what is poured without one.
type TracePot struct {
	Heading string
	Hue     sheet.Hue
	Part    Part
	Foods   []TraceFood
}

// Part is what somebody brings, and its share of what is known; empty: nothing is known of it.
type Part struct {
	Number, Unit, Share string
	mean                float64
}

// TraceFood is a food in a pot, and the row of a table behind it.
type TraceFood struct {
	Name    string
	ID      string // table:code
	Through string // further pots within
	Hue     sheet.Hue
	Part    Part
	Row     string // as the table has it: "4.9 g in 100 g (n 12)"
	Note    string // how it was derived, borrowed, assumed or bounded
	Table   source.Table
	Works   []source.Work
}

// Behind is a figure that another is worked out from.
type Behind struct{ Key, Words string }

// TraceOf follows a figure of a drink that was calculated whole. Errors are *fail.Error.
func TraceOf(s *sheet.Sheet, key string) (*Trace, error) {
	f, w, ok := find(s, key)
	if !ok {
		return nil, fail.New(fail.Wrong, "this drink has no figure \""+clean.Name(key)+"\"", "pick one of the figures beside the pots")
	}
	t := &Trace{Key: key, Words: w.Words, Lead: w.Lead, Figure: w.Shown}
	x := &tracer{s, sheet.ColoursOf(s), f, t}
	if f.Constituent != nil {
		x.parts()
		return t, nil
	}
	x.behind()
	return t, nil
}

// find gives a figure of the first page, and of a constituent its parts.
func find(s *sheet.Sheet, key string) (composition.Figure, sheet.Written, bool) {
	front := sheet.FrontOf(s)
	var w sheet.Written
	for i := range front.Senses {
		x := &front.Senses[i]
		all := slices.Concat(x.Figures, x.Further)
		for _, p := range x.Pictures {
			for _, b := range p.Bars {
				all = append(all, b.Figure)
			}
		}
		for _, y := range all {
			if y.Path == "serving."+key {
				w = y
			}
		}
	}
	f, ok := s.Assay.PerServing.Find(constituent.ID(key))
	if ok && w.Path == "" {
		w = sheet.Written{Path: "serving." + key, Shown: figure.Of(f.Result), Words: sheet.WordsFor(f.Constituent)}
	}
	return f, w, w.Path != ""
}

// tracer follows one figure.
type tracer struct {
	s       *sheet.Sheet
	colours sheet.Colours
	of      composition.Figure
	trace   *Trace
}

// parts groups what brings a constituent by pot, the most first.
func (x *tracer) parts() {
	at := map[string]int{}
	t := x.trace
	for _, c := range x.of.Contributions {
		if c.Mean == 0 && !c.Unknown {
			continue
		}
		pot := ""
		if len(c.Path) > 0 {
			pot = c.Path[0]
		}
		i, ok := at[pot]
		if !ok {
			i = len(t.Pots)
			at[pot] = i
			t.Pots = append(t.Pots, TracePot{Heading: cmp.Or(clean.Name(pot), "In the glass"), Hue: x.colours.Pot(pot)})
		}
		p := &t.Pots[i]
		p.Foods = append(p.Foods, x.food(c))
		p.Part.mean += c.Mean
	}
	unit := x.of.Constituent.Unit
	for i := range t.Pots {
		p := &t.Pots[i]
		p.Part = x.part(p.Part.mean, unit)
		slices.SortStableFunc(p.Foods, func(a, b TraceFood) int { return cmp.Compare(b.Part.mean, a.Part.mean) })
	}
	slices.SortStableFunc(t.Pots, func(a, b TracePot) int { return cmp.Compare(b.Part.mean, a.Part.mean) })
}

// part writes an amount of the figure and its share.
func (x *tracer) part(mean float64, unit string) Part {
	if mean == 0 {
		return Part{}
	}
	p := x.written(mean, unit)
	if x.of.Mean > 0 {
		p.Share = figure.Percent(mean / x.of.Mean)
	}
	return p
}

// food is what a food brings through a pot.
func (x *tracer) food(c composition.Contribution) TraceFood {
	f := TraceFood{Name: c.Food, ID: clean.Name(c.Food), Note: clean.UpperFirst(clean.Prose(c.SourceNote)), Hue: sheet.HueRest, Part: x.part(c.Mean, x.of.Constituent.Unit)}
	if len(c.Path) > 1 {
		inner := make([]string, len(c.Path)-1)
		for i, name := range c.Path[1:] {
			inner[i] = clean.Name(name)
		}
		f.Through = strings.Join(inner, ", ")
	}
	for _, item := range x.s.Assay.Items {
		if item.Food.ID.String() == c.Food {
			f.Name, f.Hue, f.Row = item.Food.Name(), x.colours.Of(item.Food), x.row(item.Food)
			break
		}
	}
	f.Name = clean.Name(f.Name)
	for _, t := range x.s.Tables {
		if t.ID == c.Table {
			f.Table = t
		}
	}
	f.Works = sheet.WorksBehind(x.s, c)
	return f
}

// row is what the table of a food says of the constituent.
func (x *tracer) row(f *food.Food) string {
	i := slices.IndexFunc(f.Values, func(v food.Value) bool { return v.Constituent == x.of.Constituent.ID })
	if i < 0 {
		return ""
	}
	v := f.Values[i]
	text := ""
	switch {
	case v.State == estimate.Trace:
		text = "trace"
	case v.State == estimate.Below && !math.IsNaN(v.Limit):
		text = "less than " + figure.Plain(v.Limit) + " " + x.of.Constituent.Unit
	case math.IsNaN(v.Amount):
		return "no figure"
	default:
		text = figure.Plain(v.Amount) + " " + x.of.Constituent.Unit
		if !math.IsNaN(v.SD) && v.SD > 0 {
			text += " (sd " + figure.PlainSpread(v.SD) + ")"
		}
	}
	text += " in 100 g"
	if v.N > 0 {
		text += ", " + strconv.Itoa(v.N) + " samples"
	}
	return text
}

// behind names what a figure of the solution is worked out from, and the works that published a pH.
func (x *tracer) behind() {
	front := sheet.BriefOf(x.s)
	want := map[string]string{"ph": "sour", "titratable_acidity": "sour", "brix": "sweet", "co2": "sparkle", "solids": "body"}[x.trace.Key]
	for i := range front.Senses {
		sense := &front.Senses[i]
		if sense.Name != want {
			continue
		}
		for _, f := range sense.Figures {
			if _, ok := x.s.Assay.PerServing.Find(constituent.ID(f.Key)); ok {
				x.trace.Behind = append(x.trace.Behind, Behind{f.Key, f.Words})
			}
			if f.Key == x.trace.Key {
				for _, by := range f.By {
					x.trace.Pots = append(x.trace.Pots, TracePot{Heading: clean.Name(by.Word), Hue: x.colours.Of(by.Food), Part: x.share(f.Result, by.Share.Mean)})
				}
			}
		}
	}
	if x.trace.Key != "ph" || x.s.Assay.Chemistry == nil {
		return
	}
	for _, c := range x.s.Assay.Chemistry.RestsOn {
		for _, w := range x.s.PHWorks[c.Food] {
			if !slices.Contains(x.trace.Works, w) {
				x.trace.Works = append(x.trace.Works, w)
			}
		}
	}
}

// share is a part of a figure that is no constituent.
func (x *tracer) share(of composition.Result, share float64) Part {
	if !(share > 0) {
		return Part{}
	}
	x.of.Result = of
	p := x.written(of.Mean*share, of.Unit)
	p.Share = figure.Percent(share)
	return p
}

// written writes a part to the place of the whole, and with two digits at least.
func (x *tracer) written(mean float64, unit string) Part {
	part, factor := figure.Finer(composition.Known(estimate.Summary{Mean: mean, Low: mean, High: mean}, unit))
	if mean < figure.LeastPrinted/figure.Thousand {
		return Part{Number: figure.Least, Unit: part.Unit, mean: mean}
	}
	last := figure.Place(x.of.Mean*factor, x.of.SD*factor, figure.MostDigits)
	return Part{Number: figure.Rounded(part.Mean, min(last, figure.FirstPlace(part.Mean)-1)), Unit: part.Unit, mean: mean}
}
