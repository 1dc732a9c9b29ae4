package recipe

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
		if prep.MethodOf(step) == nil {
			r.faults.Add(step.At(), do, "%s is understood but not computed yet", step.Kind())
		}
	}
	for i := range r.drink.Components {
		c := &r.drink.Components[i]
		for _, step := range c.Steps {
			refuse(step)
		}
	}
	for _, step := range r.drink.Finish {
		refuse(step)
	}
}
