package assay

import (
	"sipsum/internal/drink"
	"sipsum/internal/prep"
)

// refuseNotComputed reports, with its place, everything that the drink file can
// say and this version does not calculate. Ignoring it would give wrong figures
// that look right.
func (r *resolver) refuseNotComputed() {
	const do = "take it out, or write what it does with split:"
	refuse := func(step drink.Step) {
		if !prep.Computed(step) {
			r.faults.Add(step.At(), do, "%s is understood but not computed yet", step.Kind())
		}
	}
	for i := range r.drink.Components {
		c := &r.drink.Components[i]
		for _, step := range c.Steps {
			refuse(step)
			if m, ok := step.(*drink.Measured); ok {
				r.refuseReadings(m)
			}
		}
		if c.Measured != nil {
			r.refuseReadings(c.Measured)
		}
	}
	for _, step := range r.drink.Finish {
		refuse(step)
		if m, ok := step.(*drink.Measured); ok {
			r.refuseReadings(m)
		}
	}
	for _, claim := range r.drink.Claims {
		r.faults.Add(claim.Place, "take the claim out for now", "claims are understood but not computed yet")
	}
	for _, target := range r.drink.Targets {
		r.faults.Add(target.Place, "take the target out for now", "targets are understood but not computed yet")
	}
}

// refuseReadings reports the readings that do not yet condition the assay.
func (r *resolver) refuseReadings(m *drink.Measured) {
	refuse := func(given bool, name string) {
		if given {
			r.faults.Add(m.At(), "take the reading out for now", "a reading of %s is understood but not computed yet", name)
		}
	}
	refuse(m.PH != nil, "ph")
	refuse(m.TA != nil, "ta")
	refuse(m.Titration != nil, "titration")
}
