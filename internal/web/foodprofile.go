package web

import (
	"math"

	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/figure"
	"sipsum/internal/food"
	"sipsum/internal/sheet"
)

// sample is a figure of a food as its table has it, in 100 g.
type sample struct {
	Words, Unit string
	Text        string   // the figure, "trace", "below 0.1"; empty: nobody has said
	Known       string   // how it is known
	Bar         float64  // of 100: beside the most of its column, or of 100 g; NaN: no bar
	Path        string   // where the document of the food has it; empty: it is no number
	Coarser     string   // the unit that it is told in, where the document has a smaller one
	Parts       []sample // what it is most of, or what there is most of besides
}

// Drawn tells whether the figure has a bar.
func (x sample) Drawn() bool { return !math.IsNaN(x.Bar) }

// previewed are the columns of a profile, and how many parts of each are told at most: our own bound, of what a
// column has room for.
var previewed = []struct {
	of    constituent.ID
	parts int
}{{constituent.Sugar, 1}, {constituent.OrganicAcids, 2}, {constituent.Caffeine, 0}}

// profiles set foods side by side: sugars, acids and caffeine, each bar beside the most of its column.
func profiles(foods []*food.Food) [][]sample {
	list := make([][]sample, len(foods))
	for i, f := range foods {
		for _, of := range previewed {
			list[i] = append(list[i], foremost(f, of.of, of.parts))
		}
	}
	for column := range previewed {
		most := map[string]float64{} // by what is measured: all acids are no citric acid
		for i := range list {
			if x := list[i][column]; x.Drawn() {
				most[x.Words] = max(most[x.Words], x.Bar)
			}
		}
		for i := range list {
			if x := &list[i][column]; x.Drawn() {
				x.Bar = share(x.Bar, most[x.Words])
			}
		}
	}
	return list
}

const whole = 100.0

func share(x, of float64) float64 {
	if of <= 0 {
		return 0
	}
	return whole * x / of
}

// foremost is the total of a whole or, where nobody has stated it, the part that there is most of; parts of it follow.
func foremost(f *food.Food, whole constituent.ID, parts int) sample {
	values := f.Foremost(whole, parts)
	if len(values) == 0 {
		return sample{Words: sheet.WordsFor(constituent.Must(whole)), Bar: math.NaN()}
	}
	var all []sample
	for _, v := range values {
		all = append(all, sampleOf(f, v, constituent.Must(v.Constituent)))
	}
	all[0].Parts = all[1:]
	return all[0]
}

// sampleOf writes a value of a table; its bar is its amount.
func sampleOf(f *food.Food, v food.Value, c *constituent.Constituent) sample {
	x := written(f, v, sheet.WordsFor(c), c.Unit)
	if x.Unit == x.Words || c.Unit == "pH" {
		x.Unit = ""
	}
	return x
}

// written writes a value under a name and a unit. A trace is not zero, and what is below a limit neither.
func written(f *food.Food, v food.Value, words, unit string) sample {
	x := sample{Words: clean.Name(words), Unit: clean.Name(unit), Known: knownAs(f, v), Bar: math.NaN()}
	switch {
	case v.State < estimate.Trace && food.Stated(v.Amount):
		x.Text, x.Bar, x.Path = figure.Plain(v.Amount), v.Amount, "constituents."+string(v.Constituent)+".mean"
		if coarse := coarser[unit]; coarse != "" && v.Amount >= tenThousand {
			x.Text, x.Unit, x.Coarser = figure.Plain(v.Amount/figure.Thousand), coarse, coarse
		}
	case food.Stated(v.Limit) && v.State == estimate.Unknown:
		x.Text, x.Path = "at most "+figure.Plain(v.Limit), "constituents."+string(v.Constituent)+".limit"
	case food.Stated(v.Limit):
		x.Text, x.Path = "below "+figure.Plain(v.Limit), "constituents."+string(v.Constituent)+".limit"
	case v.State == estimate.Trace:
		x.Text, x.Unit = "trace", ""
	case v.State == estimate.Below:
		x.Text, x.Unit = "below its limit", ""
	default:
		x.Unit = ""
	}
	return x
}

// coarser are the units in which a figure is told that would be a row of digits: from ten thousand on, our own bound.
var coarser = map[string]string{"mg": "g", "µg": "mg"}

const tenThousand = 10 * figure.Thousand

// knownAs says how a value is known, and whose it is where nobody measured the food's own.
func knownAs(f *food.Food, v food.Value) string {
	switch by := food.ByOf(f.ID, v); by {
	case food.ByKin:
		return v.State.String() + ", by " + food.ByKin
	case food.Borrowed:
		return food.Borrowed
	}
	if v.State == estimate.Below { // its figure says so
		return ""
	}
	return v.State.String()
}
