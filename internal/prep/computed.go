package prep

import "sipsum/internal/drink"

// Computed reports whether this version calculates a step.
func Computed(step drink.Step) bool {
	switch s := step.(type) {
	case *drink.Dilute:
		return s.Brix == nil
	case *drink.Reduce, *drink.Strain, *drink.Add, *drink.Chill, *drink.Heat, *drink.Split, *drink.Measured:
		return true
	}
	return false
}
