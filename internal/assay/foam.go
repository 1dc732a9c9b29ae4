package assay

import (
	"fmt"
	"math"

	"sipsum/internal/acidity"
	"sipsum/internal/composition"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/foaming"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
	"sipsum/internal/note"
	"sipsum/internal/prep"
	"sipsum/internal/unit"
)

// bubbles is the gas of the foams in what was made. It takes up room and, against what it is in,
// weighs nothing.
type bubbles struct {
	ml     []float64 // a column; nil: none
	unread []string  // foams whose overrun nobody read: they count as their liquid
	foams  []foamed  // that were made of it, in order
}

// foamed is a pot as it was foamed.
type foamed struct {
	*prep.Foamed
	pot  *ledger.Pot
	read acidity.Surely
}

// filled adds the bubbles to a volume.
func (b *bubbles) filled(volume []float64) []float64 {
	if b.ml == nil {
		return volume
	}
	all := make([]float64, len(volume))
	for d, ml := range volume {
		all[d] = ml + b.ml[d]
	}
	return all
}

// room adds them to a volume at central values; NaN: nobody read how much there is of them.
func (b *bubbles) room(volume float64) float64 {
	switch {
	case len(b.unread) > 0:
		return math.NaN()
	case b.ml == nil || volume == 0:
		return volume
	}
	return volume + b.ml[0]
}

// with adds a share of those of another pot.
func (b *bubbles) with(other bubbles, share []float64) {
	b.unread = append(b.unread, other.unread...)
	if other.ml == nil {
		return
	}
	if b.ml == nil {
		b.ml = make([]float64, len(share))
	}
	for d, s := range share {
		b.ml[d] += s * other.ml[d]
	}
}

// take leaves a share of them.
func (b *bubbles) take(share []float64) {
	for d := range b.ml {
		b.ml[d] *= share[d]
	}
}

// bubble follows the bubbles through a step: they are put in by a foam, and go with whatever stirs,
// strains or heats. What is poured beside them, and what only waits, leaves them.
func (w *walk) bubble(pot *ledger.Pot, step drink.Step, f *prep.Foamed, read acidity.Surely) {
	b := &w.making.bubbles
	if f != nil {
		b.foams = append(b.foams, foamed{f, pot.Copy(), read})
		b.ml, b.unread = nil, nil
		if f.Overrun == nil {
			b.unread = []string{f.Path}
			return
		}
		b.ml = make([]float64, len(f.Overrun))
		for d, x := range f.Overrun {
			b.ml[d] = x * f.Liquid[d]
		}
		return
	}
	switch step.(type) {
	case *drink.Add, *drink.Cool, *drink.Treat:
		return
	}
	if b.ml != nil {
		w.note(note.Note{Kind: "step", Text: fmt.Sprintf("%s: how much is left of the foam that was in it nobody knows: it counts as its liquid from here on", note.Place(step.StepPath()))})
	}
	b.ml, b.unread = nil, nil
}

// noteGlass says of a serving that overflows its glass that it does.
func (a *Assay) noteGlass() {
	glass := a.Drink.Glass
	if glass == nil || liquid.NoVolume(a.Serving) != "" {
		return
	}
	if a.Filled.Mean <= glass.Base() {
		a.noteIceIn(glass)
		return
	}
	foam := ""
	if a.Filled.Mean > a.Volume.Mean {
		foam = ", its foam as it was read,"
	}
	a.Notes = append(a.Notes, note.Note{Kind: "glass", Text: "a serving of " + note.Number(a.Filled.Mean) + " ml" + foam + " overflows a glass of " + glass.String()})
}

// noteIceIn says of a serving that overflows its glass with the ice in it that it does. What floats takes the room of as
// much of the drink as weighs what it weighs; in a drink lighter than ice it sinks, and takes more than that of water.
func (a *Assay) noteIceIn(glass *unit.Amount) {
	const water = 1.0 // g/ml, and a little more than it ever is
	s := a.Drink.Stands
	if s == nil || s.Ice == nil {
		return
	}
	filled := a.Filled.Mean + s.Ice.Base()/max(a.Density.Mean, water)
	if filled > glass.Base() {
		a.Notes = append(a.Notes, note.Note{Kind: "glass", Text: "a serving of " + note.Number(a.Filled.Mean) + " ml with " + s.Ice.String() + " of ice in it takes " + note.Number(filled) + " ml and overflows a glass of " + glass.String()})
	}
}

// Foam is what a step made a foam of: all of a component, or of the drink. A figure without a
// unit is one that nobody stated, or that cannot be calculated of what was.
type Foam struct {
	Component string // empty: the drink
	Path      string // of the step
	Gas       string // its name; empty: air

	Charge, Dissolved, Head composition.Result // g of gas: all, in the liquid, above it
	Pressure                composition.Result // bar above the air, closed and at rest
	Overrun, Fraction       composition.Result // %: gas over liquid, liquid of all
	Liquid, Volume          composition.Result // ml
	Density                 composition.Result // g/ml

	Aired      bool // more gas than the charge fills at the pressure of the air
	Conditions []foaming.Condition
}

// foamed reads the foams of a run off the pots as they were foamed.
func (a *Assay) foamed(p *Plan, list []*made) {
	if a.Want.Bare {
		return
	}
	for _, m := range list {
		for _, f := range m.bubbles.foams {
			a.Foams = append(a.Foams, f.foam(m.name))
			if last := &a.Foams[len(a.Foams)-1]; a.Want.Chemistry {
				last.Conditions = foaming.Judge(p.lab, foaming.Foam{Pot: f.pot, Read: f.read, Celsius: f.Celsius, Overrun: f.Overrun})
			}
		}
	}
}

func (f foamed) foam(of string) Foam {
	m := &composition.Meter{}
	known := func(col []float64, in string) composition.Result {
		if col == nil {
			return composition.Result{}
		}
		return composition.Known(m.Of(col), in)
	}
	out := Foam{Component: of, Path: f.Path, Gas: f.Gas.Name(), Aired: f.Aired, Charge: known(f.Charge, "g"), Liquid: known(f.Foamed.Liquid, "ml")}
	if r := f.Rest; r != nil {
		out.Pressure, out.Dissolved, out.Head = known(r.Bar, "bar"), known(r.Dissolved, "g"), known(r.Head, "g")
	}
	nowhere := liquid.NoVolume(f.pot) != ""
	if nowhere { // how much room it takes nobody knows
		out.Liquid, out.Pressure, out.Dissolved, out.Head = composition.Result{}, composition.Result{}, composition.Result{}, composition.Result{}
	}
	if f.Overrun == nil {
		return out
	}
	n := len(f.Overrun)
	overrun, fraction, volume := make([]float64, n), make([]float64, n), make([]float64, n)
	for d, x := range f.Overrun {
		overrun[d], fraction[d], volume[d] = x*unit.Hundred, unit.Hundred/(1+x), f.Foamed.Liquid[d]*(1+x)
	}
	out.Overrun, out.Fraction = known(overrun, "%"), known(fraction, "%")
	if nowhere {
		return out
	}
	out.Volume = known(volume, "ml")
	out.Density = known(estimate.Ratio(f.pot.Mass(), volume, 1), "g/ml")
	return out
}
