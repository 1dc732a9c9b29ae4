package bench

import (
	"math"
	"strconv"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// Dial is an amount that can be turned.
type Dial struct {
	Path   string
	Amount string // as it is written: "72.0 g", "2 leaf"
	Value  string // what stands in its field: "72.0 g", "2"
	Of     string // what it is of, in words
	Least  bool   // it cannot be turned down further
	Fixed  bool   // it stands in a shelf
}

// Least of a count, and the step of one; the step of a share, in %.
const (
	onePiece = 1.0
	half     = 0.5
)

// stepOf is one step of what weighs an amount, in its own unit.
func stepOf(d *drink.Drink, a unit.Amount) float64 {
	if s := d.Scale; s != nil && a.Measure.Kind == unit.Mass && a.Base() >= s.Base()*half {
		return s.Base() / a.Measure.Factor
	}
	return math.Pow10(-a.Decimals)
}

// turned gives a number so many steps on, with the places of the step; never nothing, and never less.
func turned(number, step, by float64, decimals int) (float64, int) {
	for places := decimals; ; places++ {
		if scaled := step * math.Pow10(places); unit.AtLeast(math.Round(scaled), scaled) && unit.AtLeast(scaled, math.Round(scaled)) || places > 6 {
			decimals = places
			break
		}
	}
	next := number + by*step
	if !(next >= step) {
		next = min(step, number)
	}
	return unit.Clean(next), decimals
}

// Turn gives what is to be written at a path so many steps on: "72.1 g", "3".
func Turn(d *drink.Drink, path string, by float64) (string, error) {
	for _, pot := range PotsOf(d) {
		for _, x := range pot.dials() {
			if x.Path != path {
				continue
			}
			if x.count > 0 {
				n, _ := turned(x.count, onePiece, by, 0)
				return unit.Number(n), nil
			}
			n, places := turned(x.amount.Number, stepOf(d, *x.amount), by, x.amount.Decimals)
			return strconv.FormatFloat(n, 'f', places, 64) + " " + x.amount.Measure.Name, nil
		}
	}
	return "", fail.New(fail.Wrong, "there is no amount \""+path+"\" in the file", "open the drink again: the file may have changed")
}

// lineDial is the dial of a line.
func lineDial(d *drink.Drink, l *drink.Line, words string) turning {
	t := turning{Dial: Dial{Path: l.Path, Of: words, Fixed: l.Place.File != d.File}, amount: &l.Amount}
	if l.Portion != "" {
		t.amount, t.count = nil, l.Count
		t.Value = unit.Number(l.Count)
		t.Amount = t.Value + " " + l.Portion
		t.Least = l.Count <= onePiece
		return t
	}
	return t.written(d)
}

// turning is a dial with the amount behind it.
type turning struct {
	Dial
	amount *unit.Amount // nil: it is counted
	count  float64
}

// written fills in how the amount is written.
func (t turning) written(d *drink.Drink) turning {
	a := *t.amount
	places := a.Decimals
	if a.Number != math.Trunc(a.Number) && places == 0 { // a fraction, as 1/2 tsp
		t.Value = unit.Number(a.Number) + " " + a.Measure.Name
	} else {
		t.Value = strconv.FormatFloat(a.Number, 'f', places, 64) + " " + a.Measure.Name
	}
	t.Amount = t.Value
	t.Least = a.Number <= stepOf(d, a)
	return t
}
