package sheet

import (
	"fmt"
	"math"

	"sipsum/internal/assay"
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/unit"
)

const ofServing = "serving"

// Shrinks is what a change makes smaller: the serving, or the coffee in it.
type Shrinks struct {
	What string
	By   float64 // a share
}

// harms counts what a change breaks and what it makes smaller.
func (c *Change) harms() int { return len(c.Breaks) + len(c.Shrinks) }

// broken names what holds as the drink is written, and with a change does not.
func broken(keep []wish, after *assay.Assay) []string {
	var list []string
	for _, w := range keep {
		if !w.holds(after) {
			list = append(list, w.quote)
		}
	}
	return list
}

// shrunk tells what of a serving is smaller by more than goes without saying (data/limits.csv).
func shrunk(before, after *assay.Assay) []Shrinks {
	var list []Shrinks
	unsaid := unit.LimitOf("what a change makes smaller without a word", "").High
	for _, x := range []struct {
		what string
		of   func(*assay.Assay) float64
	}{{ofServing, func(a *assay.Assay) float64 { return a.Mass.Mean }}, {"coffee", coffeeIn}} {
		if by := 1 - x.of(after)/x.of(before); by > unsaid {
			list = append(list, Shrinks{x.what, by})
		}
	}
	return list
}

// coffeeIn is what a serving holds of coffee, in grams.
func coffeeIn(a *assay.Assay) float64 {
	grams := 0.0
	for row, r := range a.Serving.Rows {
		if r.Profile.Food.Facts().Coffee {
			grams += a.Serving.CentralOf(row, constituent.Mass)
		}
	}
	return grams
}

// harmWords say what a change breaks and makes smaller, at length and in short; empty if it does not.
func (c *Change) harmWords() (long, short string) {
	for _, s := range c.Shrinks {
		by := math.Ceil(hundred * s.By)
		if s.What == ofServing {
			long += fmt.Sprintf("; a serving %.0f %% smaller", by)
		} else {
			long += fmt.Sprintf("; %.0f %% less %s", by, s.What)
		}
		short += fmt.Sprintf("; %s −%.0f %%", s.What, by)
	}
	if len(c.Breaks) > 0 {
		long += "; but it breaks " + clean.Listed(c.Breaks)
		short += "; breaks " + clean.Listed(c.Breaks)
	}
	return long, short
}
