package jsonreport

import (
	"sipsum/internal/assay"
)

// yieldForm is what became of the mass of a component, or of the drink (component is empty), for all
// that is made of it, at central values: in_g and what its steps add, less what they lose, is out_g.
type yieldForm struct {
	Component string      `json:"component"`
	In        number      `json:"in_g"`
	Steps     []stepYield `json:"steps"`
	Out       number      `json:"out_g"`
	Used      number      `json:"used_g"` // by the drink and by other components
}

type stepYield struct {
	Path  string `json:"path"`
	Kind  string `json:"kind"`
	Lost  number `json:"lost_g"`
	Added number `json:"added_g"`
	Out   number `json:"out_g"`
}

func yieldsOf(a *assay.Assay) []yieldForm {
	return each(a.Yields, func(y assay.Yield) yieldForm {
		steps := each(y.Steps, func(s assay.StepYield) stepYield {
			return stepYield{s.Path, s.Kind, number(s.Lost), number(s.Added), number(s.Out)}
		})
		return yieldForm{y.Component, number(y.In), steps, number(y.Out), number(y.Used)}
	})
}
