package sheet

import (
	"iter"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/drink"
)

// stepsOf gives the steps of each component that is in the drink, and those of the drink itself
// under no name.
func stepsOf(a *assay.Assay) iter.Seq2[string, []drink.Step] {
	return func(yield func(string, []drink.Step) bool) {
		used := a.Used()
		for i := range a.Drink.Components {
			if c := &a.Drink.Components[i]; used[c.Name] && !yield(c.Name, c.Steps) {
				return
			}
		}
		yield("", a.Drink.Finish)
	}
}

// took reports whether anything in the drink went through a step of one of these kinds.
func took(a *assay.Assay, kinds ...string) bool {
	for _, steps := range stepsOf(a) {
		if slices.ContainsFunc(steps, func(s drink.Step) bool { return slices.Contains(kinds, s.Kind()) }) {
			return true
		}
	}
	return false
}
