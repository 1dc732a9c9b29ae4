package drink

import (
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// titrationKeys are the keys that only a titration needs.
var titrationKeys = []string{"base", "acid", "sample"}

// fewestPoints is what a curve takes: its own pH, and a bend.
const fewestPoints = 3

// checkTitration checks what goes together in a titration: the strength of the
// base or of the acid, and points that begin with the liquid itself and go one
// way. The size of the sample may be left out.
func (r *file) checkTitration(m *Measured, at fail.Place, present present) {
	base, acid := present.has("base"), present.has("acid")
	switch {
	case !base && !acid:
		r.faults.Add(at, "add base: 0.1 mol/l, or acid: 0.1 mol/l if it brought the pH down", "a titration needs the strength of its base")
	case base && acid:
		r.faults.Add(present["acid"], "keep one of them, with the points that belong to it", "a titration goes one way: base or acid")
	}
	// guard: a sample can be titrated
	if least := unit.LimitOf("sample of a titration", "g").Low; m.Sample != nil && m.Sample.Base() < least {
		r.faults.Add(present["sample"], "check the number and the unit", "a titration of less than %g g", least)
	}
	if m.Titration != nil && !(base && acid) {
		r.checkPoints(m.Titration, present["titration"], acid)
	}
}

// checkPoints wants the liquid itself first, then more and more, with a pH that
// rises with base and falls with acid.
func (r *file) checkPoints(points []TitrationPoint, at fail.Place, falling bool) {
	if len(points) < fewestPoints {
		r.faults.Add(at, "give at least three, [volume, pH] each", "a titration has %d points", len(points))
		return
	}
	if points[0].Volume.Base() != 0 {
		r.faults.Add(points[0].Place, "begin with the pH of the liquid itself: [0 ml, …]", "the titration does not begin at 0 ml")
	}
	most := unit.LimitOf("volume of a titration", "ml").High
	for _, p := range points {
		if p.Volume.Base() > most {
			r.faults.Add(p.Place, "check the number and the unit", "a titration with more than %g ml", most)
		}
	}
	way := "more base, higher pH"
	if falling {
		way = "more acid, lower pH"
	}
	for i := 1; i < len(points); i++ {
		before, p := points[i-1], points[i]
		if falling {
			before.PH, p.PH = p.PH, before.PH
		}
		if p.Volume.Base() <= before.Volume.Base() || p.PH <= before.PH {
			r.faults.Add(points[i].Place, "list the points as they were read: "+way, "this point does not follow the one before")
		}
	}
}
