package label

import (
	"fmt"
	"strings"
	"sync"

	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// colour is how a scheme for the front of a pack grades a row of a drink: green up to a
// limit per 100 ml, red above another, amber between; and red by the portion.
type colour struct {
	row, unit         string
	greenTo, redAbove float64 // per 100 ml
	portionRed        float64 // in a portion of more than portionMl; 0: no limit is known
	portionMl         float64
	cited
}

var colours = sync.OnceValue(func() map[string][]colour {
	all := map[string][]colour{}
	for _, r := range embedded.Rows("colours.csv") {
		c := colour{row: r.Text("row"), unit: r.Text("unit"), greenTo: r.Number("green_to"), redAbove: r.Number("red_above"), cited: citedBy(r)}
		c.portionRed, _ = r.Optional("portion_red_above")
		c.portionMl, _ = r.Optional("portion_over_ml")
		all[r.Text("rules")] = append(all[r.Text("rules")], c)
	}
	return all
})

// Levels is the kind of the note that grades a drink.
const Levels = "levels"

// The grades, lowest first; a colour never stands without its word.
var grades = []string{"green (low)", "amber (medium)", "red (high)"}

// levels grades a drink by the scheme of its rules; ok is false where they have none, or
// where nobody knows the volume: the scheme's limits for drinks are per 100 ml.
func (r *ruleset) levels(rules string, f Facts) (note Note, ok bool) {
	scheme := colours()[rules]
	if len(scheme) == 0 || f.ServingMl <= 0 {
		return Note{}, false
	}
	var graded, byVolume []string
	for _, c := range scheme {
		if c.portionRed == 0 {
			byVolume = append(byVolume, c.row)
		}
		for _, l := range r.lines {
			if l.key == c.row {
				graded = append(graded, c.row+" "+c.grade(r.sumOf(l, c.unit, f), f.ServingMl))
			}
		}
	}
	text := "Levels for the front of a pack, by what is in 100 ml of a drink (voluntary): " + strings.Join(graded, "; ") + "."
	if len(byVolume) > 0 {
		text += " What a portion may hold of " + strings.Join(byVolume, ", ") + " is not judged: its limits were not seen in print."
	}
	return Note{Kind: Levels, Text: text, Source: scheme[0].source, Status: scheme[0].status}, true
}

// grade grades a sum of one serving, and says by which limit.
func (c colour) grade(s sum, ml float64) string {
	if !s.anything {
		return "not known"
	}
	at, why := c.of(s.known, ml)
	text := fmt.Sprintf("%.3g %s: %s, %s", unit.Shown(s.known*unit.Hundred/ml), c.unit, grades[at], why)
	if s.bounded() && !s.complete() {
		text = fmt.Sprintf("%.3g to ", unit.Shown(s.known*unit.Hundred/ml)) + fmt.Sprintf("%.3g %s: %s, %s", unit.Shown(s.bound*unit.Hundred/ml), c.unit, grades[at], why)
	}
	highest := len(grades) - 1
	if s.bounded() {
		highest, _ = c.of(s.bound, ml)
	}
	if highest > at {
		text += ", if not " + strings.Join(grades[at+1:highest+1], " or ") + ": not all of it is known"
	}
	return text
}

// of gives the grade of so much in one serving, and the limit that decides it.
func (c colour) of(amount, ml float64) (at int, why string) {
	per100 := amount * unit.Hundred / ml
	over := func(x, limit float64) bool { return band{from: limit}.covers(x) }
	switch {
	case over(per100, c.redAbove):
		return 2, fmt.Sprintf("over %g %s", c.redAbove, c.unit)
	case c.portionRed > 0 && over(ml, c.portionMl) && over(amount, c.portionRed):
		return 2, fmt.Sprintf("over %g %s in a portion of more than %g ml", c.portionRed, c.unit, c.portionMl)
	case over(per100, c.greenTo):
		return 1, fmt.Sprintf("over %g and up to %g %s", c.greenTo, c.redAbove, c.unit)
	}
	return 0, fmt.Sprintf("up to %g %s", c.greenTo, c.unit)
}
