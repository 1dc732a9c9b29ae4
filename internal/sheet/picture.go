package sheet

import (
	"math"
	"strings"

	"sipsum/internal/figure"
)

// Picture is what is drawn of a drink: what stands on its one axis, and what each mark says in
// words. Where a mark is drawn, and how, is a renderer's. One that draws nothing prints the table.
type Picture interface {
	Name() string // what is drawn, for who does not see it
	Table() *Grid
}

// Axis is the axis of a picture, with its unit.
type Axis struct {
	Unit     string
	From, To float64
	Ticks    []Tick
}

// Tick is a mark of an axis.
type Tick struct {
	At   float64
	Text string
}

// ticks of an axis are few enough for a phone: our own bounds.
const (
	fewestTicks = 3
	mostTicks   = 6
)

// axisTo makes an axis from nothing to where at least so much has room, in steps that the eye divides.
func axisTo(most float64, unit string) Axis {
	if !(most > 0) || math.IsInf(most, 0) {
		most = 1
	}
	step := stepOf(most)
	a := Axis{Unit: unit, To: math.Ceil(most/step-1e-9) * step}
	a.mark(step)
	return a
}

// axisBetween makes an axis that holds both ends, in whole steps.
func axisBetween(low, high, step float64, unit string) Axis {
	a := Axis{Unit: unit, From: math.Floor(low/step) * step, To: math.Ceil(high/step) * step}
	a.mark(step)
	return a
}

func (a *Axis) mark(step float64) {
	last := figure.FirstPlace(step)
	if scaled := step / math.Pow10(last); scaled != math.Trunc(scaled) { // 2.5
		last--
	}
	for i := 0; a.From+float64(i)*step <= a.To+step/10; i++ {
		at := a.From + float64(i)*step
		a.Ticks = append(a.Ticks, Tick{at, strings.Replace(figure.Rounded(at, min(last, 0)), "-", "−", 1)})
	}
}

// stepOf is the step of an axis of such a length.
func stepOf(most float64) float64 {
	decade := math.Pow10(figure.FirstPlace(most) - 1)
	for _, x := range []float64{1, 2, 2.5, 5, 10, 20, 25, 50} {
		if n := most / (x * decade); n <= mostTicks-1 && n > fewestTicks-2 {
			return x * decade
		}
	}
	return most
}

// Written is a figure as it is printed, and where the documents have it.
type Written struct {
	Path  string // "serving.SUGAR": its mean, low, high and up_to stand under it
	Leads bool   // it leads its sense
	Lead  string // stands before it: "pH"
	figure.Shown
	Words string // stand after it
	Also  string // the same in another measure
}

// Sentence is a figure in a line: "≥ 10.5 g sugars (9.9 to 11.0; up to 11.2)".
func (w Written) Sentence() string {
	text := w.Bare()
	if in := w.Range(); in != "" {
		text += " (" + in + ")"
	}
	return text
}

// Bare is a figure without its range.
func (w Written) Bare() string {
	text := w.Number
	if w.AtLeast {
		text = "≥ " + text
	}
	return joined(w.Lead, text, w.Unit, w.Words)
}

// Range says between which ends a figure lies, and how far it may go.
func (w Written) Range() string {
	text, most := "", ""
	if w.Low != "" {
		text = w.Low + " to " + w.High
	}
	if w.UpTo != "" {
		most = "up to " + w.UpTo
		if w.Unknown {
			most += " " + w.UpToUnit
		}
	}
	switch {
	case text == "":
		return most
	case most == "":
		return text
	}
	return text + "; " + most
}
