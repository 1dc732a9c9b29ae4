package sheet

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/figure"
	"sipsum/internal/meter"
)

// Instrument is an instrument of the shelf of meters as it is told.
type Instrument struct {
	*meter.State
	Name    string
	Offs    []Off
	Age     int  // days since its check; below zero: it is said to come
	Dated   bool // somebody said when it was checked
	In      int  // days until the next check; below zero: it is overdue
	Overdue bool
}

// Off is what an instrument shows too much at a standard, today.
type Off struct {
	At   string
	X    float64
	Off  float64
	U    float64
	Most float64 // within tolerance; NaN: nothing is published
	N    int     // how often it was read; 0: nobody checked there
}

// InstrumentsOf tells a shelf of meters as it is on a day.
func InstrumentsOf(states []*meter.State, today int) []Instrument {
	var list []Instrument
	for _, s := range states {
		x := Instrument{State: s, Name: clean.Name(s.Meter.Name), Dated: s.Meter.Checked > 0}
		if x.Dated {
			x.Age, x.In = today-s.Meter.Checked, s.Due-today
			x.Overdue = x.In < 0
		}
		for _, p := range s.Points {
			off, u := s.At(p.Shown, today)
			x.Offs = append(x.Offs, Off{clean.Name(p.Text), p.Known, off, u, p.Most, p.N})
		}
		if len(s.Points) == 0 {
			at := s.Middle()
			off, u := s.At(at, today)
			x.Offs = append(x.Offs, Off{figure.Plain(at), at, off, u, math.NaN(), 0})
		}
		list = append(list, x)
	}
	return list
}

// Words say what an instrument shows too much at a standard.
func (o Off) Words(unit string) string {
	place := min(figure.FirstPlace(o.U)-1, 0)
	more := "too much"
	if o.Off < 0 {
		more = "too little"
	}
	text := fmt.Sprintf("%s%s±%s%s%s%s %s", figure.Rounded(math.Abs(o.Off), place), glue, glue, figure.Rounded(o.U, place), glue, unit, more)
	if !math.IsNaN(o.Most) {
		text += fmt.Sprintf(" (at most ±%s%s)", glue, figure.Plain(o.Most))
	}
	return text
}

// Scatter says what one reading scatters by, and from how many.
func (x Instrument) Scatter() string {
	text := "±" + glue + figure.Rounded(x.Noise, min(figure.FirstPlace(x.Noise)-1, 0)) + glue + x.Unit
	if x.Free > 0 {
		return text + fmt.Sprintf(", %d readings of standards (ν = %g)", x.Shown, x.Free)
	}
	return text + ", that of its kind"
}

// Electrode says how the electrode of a pH meter is; empty: there is none, or nobody knows.
func (x Instrument) Electrode() string {
	var parts []string
	if !math.IsNaN(x.Zero) {
		parts = append(parts, "zero "+figure.Rounded(x.Zero, 0)+glue+"mV")
	}
	if !math.IsNaN(x.Slope) {
		parts = append(parts, "slope "+figure.Rounded(x.Slope, 0)+glue+"% of Nernst")
	}
	return strings.Join(parts, ", ")
}

// Check says when it was checked, and when it is due.
func (x Instrument) Check() string {
	days := func(n int) string {
		if n == 1 {
			return "1 day"
		}
		return fmt.Sprintf("%d days", n)
	}
	switch {
	case !x.Checked():
		return "never: it is taken for any of its kind"
	case !x.Dated:
		return "nobody says when: add checked: with the day"
	case x.Age < 0:
		return "in " + days(-x.Age) + ", says the shelf: correct the day"
	case x.Overdue:
		return days(x.Age) + " ago, " + days(-x.In) + " overdue"
	case x.Age == 0:
		return "today, due in " + days(x.In)
	}
	return days(x.Age) + " ago, due in " + days(x.In)
}

// Warnings are what is to be done before it is believed, then what is to be done soon.
func (x Instrument) Warnings() (out, soon []string) {
	for _, f := range x.Faults {
		out = append(out, "out of tolerance: "+f.String()+" ("+f.Source+")")
	}
	for _, f := range x.Advices {
		soon = append(soon, f.String()+" ("+f.Source+")")
	}
	return out, soon
}

// AboutInstruments explains the figures of a shelf of meters.
const AboutInstruments = "What an instrument shows too much, give or take one standard deviation (JCGM 100:2008), as it is today: by its check, its standards, its display and the days since. Nine in ten lie within 1.64 of them. Readings of a drink are corrected by it, all those of one instrument alike."
