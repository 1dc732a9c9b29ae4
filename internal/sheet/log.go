package sheet

import (
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/drink"
	"sipsum/internal/unit"
)

// Batch is a house-made component as it is logged when it is made: what is asked of it, to
// be filled in by hand.
type Batch struct {
	Name    string
	Grams   float64 // as the file makes it
	Days    float64 // to be used up within, the day it is made counted; 0: nobody says
	Cold    float64 // °C at which it is kept; 0: nobody says
	Control bool    // it needs control of time and temperature, as far as anybody has read
	Cooled  bool    // it was warm, and is cooled by the clock
}

// Log is the batches of a drink, and how warm what waits hot must be.
type Log struct {
	Batches []Batch
	From    float64 // cooling: from so many °C …
	First   float64 // … to so many °C …
	Within  float64 // … within so many hours …
	Cold    float64 // … and to so many °C …
	InAll   float64 // … within so many hours in all
	Hot     []HotHolding
	Read    []string // what the bench log has of its pots
}

// HotHolding is the temperature below which a drink may not wait, °C.
type HotHolding struct {
	Rules   string
	Celsius float64
}

// warm are the steps after which a pot is warm, or may be.
var warm = []string{"heat", "reduce", "brew", "steep", "curdle", "caramelise", "invert", "hydrolyse", "convert", "clarify", "cool"}

// Log lists the components that are in the drink. What no meter has read needs control.
func (s *Sheet) Log() Log {
	c := coldChain()
	l := Log{From: c.From, First: c.First, Within: c.Within, Cold: c.Cold, InAll: c.InAll}
	if at := s.Assay.Drink.At; at != nil && at.Number > c.First { // what is served cold never waits hot
		for _, rules := range s.Rules {
			l.Hot = append(l.Hot, HotHolding{rules, c.Hot(rules)})
		}
	}
	for _, m := range s.Assay.Drink.Measurements() {
		for _, r := range m.Logged {
			l.Read = append(l.Read, PotWords(r.Pot)+", "+say("read."+r.Quantity)+": "+r.Told())
		}
	}
	used := s.Assay.Used()
	for i := range s.Assay.Drink.Components {
		d := &s.Assay.Drink.Components[i]
		if !used[d.Name] {
			continue
		}
		b := Batch{Name: d.Name, Grams: made(s.Assay, d), Control: true}
		if k := chemistryOf(s.Assay, d.Name); k != nil && k.Keeping != nil && k.Keeping.Holding != nil {
			b.Control = k.Keeping.Holding.NeedsAssessment
		}
		if d.Keeps != nil {
			b.Days = math.Ceil(d.Keeps.Days)
			if d.Keeps.At != nil {
				b.Cold = d.Keeps.At.Number
			}
		}
		for _, step := range d.Steps {
			b.Cooled = b.Cooled || slices.Contains(warm, step.Kind())
		}
		if b.Control {
			b.Days, b.Cold = least(b.Days, c.Days), least(b.Cold, c.Cold)
		}
		l.Batches = append(l.Batches, b)
	}
	return l
}

// least is the smaller of what somebody says and what the code allows.
func least(said, allowed float64) float64 {
	if said == 0 {
		return allowed
	}
	return min(said, allowed)
}

// made gives how many grams the file makes of a component. One that is for the garnish alone
// is not made with the drink: it weighs what its lines say, 0 where they do not.
func made(a *assay.Assay, d *drink.Component) float64 {
	for _, y := range a.Yields {
		if y.Component == d.Name && y.Out > 0 {
			return y.Out
		}
	}
	sum := 0.0
	for _, line := range d.Ingredients {
		if len(d.Steps) > 0 || line.Portion != "" || line.Amount.Measure.Kind != unit.Mass {
			return 0
		}
		sum += line.Amount.Base()
	}
	return sum
}
