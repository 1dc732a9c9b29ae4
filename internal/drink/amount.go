package drink

import (
	"fmt"
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// measures a key of an amount may use.
var (
	massOnly   = []unit.Kind{unit.Mass}
	volumeOnly = []unit.Kind{unit.Volume}
	either     = []unit.Kind{unit.Mass, unit.Volume}
	anyMeasure = []unit.Kind{unit.Mass, unit.Volume, unit.Share}
)

// amount reads a scalar that is an amount and nothing more.
func (r *values) amount(n ast.Node, what string, kinds []unit.Kind) *unit.Amount {
	text, ok := r.scalar(n, what)
	if !ok {
		return nil
	}
	a, rest, err := unit.ParseAmount(unit.PlainSpaces(text))
	if _, _, bare := unit.ParseNumber(text); bare == nil {
		forms := each(kinds, func(k unit.Kind) string { return r.before(r.nodeAt(n)) + text + " " + measureNames([]unit.Kind{k})[0] })
		r.faults.Add(r.nodeAt(n), "write: "+strings.Join(forms, ", or: "), "%s has no unit", quoted(text))
		return nil
	}
	if err != nil {
		r.misread(r.nodeAt(n), err)
		return nil
	}
	if rest != "" {
		r.faults.Add(r.inside(n, text, rest), "write the amount alone: "+r.before(r.nodeAt(n))+a.String(), "%s is followed by %s", what, quoted(rest))
		return nil
	}
	if !r.sound(n, what, a, kinds) {
		return nil
	}
	return &a
}

// exactAmount reads an amount without ±.
func (r *values) exactAmount(n ast.Node, what string, kinds []unit.Kind) *unit.Amount {
	a := r.amount(n, what, kinds)
	if a != nil && (a.Half > 0 || a.Exact) {
		a.Half, a.Exact = 0, false
		r.faults.Add(r.nodeAt(n), "write: "+r.before(r.nodeAt(n))+a.String(), "%s takes no ± and no range", what)
		return nil
	}
	return a
}

// bound reads one end of a range; unlike a line it may be zero.
func (r *values) bound(n ast.Node, what string, kinds []unit.Kind) unit.Amount {
	if text, ok := raw(n); ok {
		a, rest, err := unit.ParseAmount(unit.PlainSpaces(text))
		if err == nil && rest == "" && a.Number == 0 && a.Half == 0 && slices.Contains(kinds, a.Measure.Kind) {
			return a
		}
	}
	if a := r.exactAmount(n, what, kinds); a != nil {
		return *a
	}
	return unit.Amount{}
}

// sound reports amounts of the wrong kind or out of range.
func (r *values) sound(n ast.Node, what string, a unit.Amount, kinds []unit.Kind) bool {
	fault, do := "", ""
	switch {
	case !slices.Contains(kinds, a.Measure.Kind):
		fault, do = fmt.Sprintf("%s cannot be given in %s", what, a.Measure.Name), "use "+fail.Or(measureNames(kinds))
	case a.Number <= 0:
		fault, do = what+" is zero", "write more than zero, or leave it out"
	case a.Measure.Kind != unit.Share && a.Base() < unit.LimitOf("amount of a line", "g").Low:
		fault, do = what+" is less than a microgram", "check the number and the unit"
	case a.Measure.Kind == unit.Share && a.Base() > 1:
		fault, do = what+" is more than 100 %", "write at most 100 %"
	case a.Base() > mostBase || a.Half*a.Measure.Factor > mostBase:
		fault, do = what+" is more than ten tonnes", "check the number and the unit"
	}
	if fault != "" {
		r.faults.Add(r.nodeAt(n), do, "%s", fault)
	}
	return fault == ""
}

func measureNames(kinds []unit.Kind) []string {
	var names []string
	for _, m := range unit.Measures() {
		if slices.Contains(kinds, m.Kind) {
			names = append(names, m.Name)
		}
	}
	return names
}
