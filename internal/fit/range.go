package fit

import (
	"maps"
	"math"
	"slices"
	"strings"

	"sipsum/internal/amount"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/note"
	"sipsum/internal/spelling"
	"sipsum/internal/unit"
)

// Range is an amount that may change.
type Range struct {
	Path     string
	Of       string // what is poured
	Written  unit.Amount
	From, To float64 // in the measure in which it is written
	Step     float64
	Usual    bool // nobody wrote the range
}

// Ranges gives what may change of a drink: what vary names, else every line of the build between
// half and twice of what is written. What it names and no amount follows joins the faults.
func Ranges(d *drink.Drink, written amount.Amounts, faults *fail.List) []Range {
	if len(d.Vary) == 0 {
		return usual(d, written)
	}
	var list []Range
	for _, v := range d.Vary {
		path, of, ok := find(d, written, v.Of)
		if !ok {
			faults.Add(v.Place, where(d, written, v.Of), "vary names %s, which %s", note.Quote(v.Of), missing(d, written, v.Of))
			continue
		}
		w := written[path]
		if w.Measure.Kind == unit.Share {
			faults.Add(v.Place, "write its line in g, and its ends too", "%s is written as %s of others, which moves with them and not by itself", note.Quote(v.Of), w)
			continue
		}
		if w.Measure.Kind != v.From.Measure.Kind {
			faults.Add(v.Place, "give both ends in "+w.Measure.Name, "%s is written as %s, and its ends are not of that kind", note.Quote(v.Of), w)
			continue
		}
		r := Range{Path: path, Of: of, Written: w, From: v.From.Base() / w.Measure.Factor, To: v.To.Base() / w.Measure.Factor}
		r.Step = step(d, w, v.From, v.To)
		if slices.ContainsFunc(list, func(o Range) bool { return o.Path == path }) {
			faults.Add(v.Place, "keep one of the two", "vary names %s twice", note.Quote(v.Of))
			continue
		}
		list = append(list, r)
	}
	return list
}

// usual lets the build vary.
func usual(d *drink.Drink, written amount.Amounts) []Range {
	within := unit.LimitOf("amount that nobody lets vary", "share")
	var list []Range
	for _, line := range d.Build {
		w, ok := written[line.Path]
		if !ok || w.Measure.Kind == unit.Share {
			continue
		}
		list = append(list, Range{
			Path: line.Path, Of: line.Food, Written: w, Usual: true,
			From: within.Low * w.Number, To: within.High * w.Number, Step: step(d, w),
		})
	}
	return list
}

// step is what the bar's scale shows of an amount; of what no scale weighs, and of what is written
// more finely than it shows, the last digit written.
func step(d *drink.Drink, w unit.Amount, ends ...unit.Amount) float64 {
	finest := w.Resolution()
	for _, e := range ends {
		finest = min(finest, e.Resolution())
	}
	if d.Scale != nil && w.Measure.Kind == unit.Mass && weighed(w.Base(), d.Scale.Base()) {
		finest = d.Scale.Base()
	}
	return finest / w.Measure.Factor
}

// weighed reports whether a scale shows an amount: all of it, and no less.
func weighed(grams, step float64) bool {
	steps := grams / step
	return steps >= 1 && math.Abs(steps-math.Round(steps)) <= unit.Closeness*steps
}

// find tells which amount a name means: a path, or what exactly one line pours.
func find(d *drink.Drink, written amount.Amounts, name string) (path, of string, ok bool) {
	if _, ok := written[name]; ok {
		return name, name[strings.LastIndexByte(name, '/')+1:], true
	}
	lines := pouring(d, written, name)
	if len(lines) != 1 {
		return "", "", false
	}
	return lines[0], name, true
}

// pouring lists the paths of the lines that pour something.
func pouring(d *drink.Drink, written amount.Amounts, name string) []string {
	var paths []string
	add := func(lines []drink.Line) {
		for _, line := range lines {
			if _, ok := written[line.Path]; ok && line.Food == name {
				paths = append(paths, line.Path)
			}
		}
	}
	add(d.Build)
	for i := range d.Components {
		add(d.Components[i].Ingredients)
	}
	return paths
}

func missing(d *drink.Drink, written amount.Amounts, name string) string {
	if len(pouring(d, written, name)) > 1 {
		return "several lines pour"
	}
	return "no amount of the drink follows"
}

// where says what to write in the place of a name.
func where(d *drink.Drink, written amount.Amounts, name string) string {
	if paths := pouring(d, written, name); len(paths) > 1 {
		return "say which: " + fail.Or(paths)
	}
	paths := slices.Sorted(maps.Keys(written))
	if near := spelling.Nearest(name, paths); len(near) > 0 {
		return "did you mean " + note.Quote(near[0]) + "?"
	}
	return "there are: " + strings.Join(paths, ", ")
}

// holds reports whether an amount lies within the range.
func (r Range) holds(x float64) bool {
	return x >= r.From-unit.Closeness*r.From && x <= r.To+unit.Closeness*r.To
}

// leaves reports whether a point of the grid is another amount than what is written: the point that is
// nearest to it stands for it.
func (r Range) leaves(x float64) bool { return math.Abs(x-r.Written.Number) > r.Step/2 }

// at gives an amount of a range as a line would write it.
func (r Range) at(x float64) unit.Amount {
	a := r.Written
	a.Number, a.Decimals = x, decimals(r.Step)
	tens := math.Pow10(a.Decimals)
	if y := math.Round(x*tens) / tens; math.Abs(y-x) <= unit.Closeness*math.Abs(x) { // sums of steps leave dust
		a.Number = y
	}
	return a
}

// decimals is how many a step has.
func decimals(step float64) int {
	n := 0
	for x := step; n < mostDecimals && x-float64(int(x)) > unit.Closeness && 1-(x-float64(int(x))) > unit.Closeness; n++ {
		x *= 10
	}
	return n
}

// Decimals is how many digits after the point the steps of an amount have.
func (r Range) Decimals() int { return decimals(r.Step) }

// mostDecimals is finer than any scale.
const mostDecimals = 6
