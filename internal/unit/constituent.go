package unit

// PerGram tells how many of a constituent's unit make one gram, for units of
// mass ("g", "mg", "µg"); ok is false for units that are not masses (kJ, IU).
func PerGram(name string) (perGram float64, ok bool) {
	switch name {
	case "g":
		return 1, true
	case "mg":
		return 1e3, true
	case "µg":
		return 1e6, true
	}
	return 0, false
}

// Convert gives the factor from one mass unit to another; ok is false unless
// both are masses or the units are the same.
func Convert(from, to string) (factor float64, ok bool) {
	if from == to {
		return 1, true
	}
	a, okA := PerGram(from)
	b, okB := PerGram(to)
	if !okA || !okB {
		return 0, false
	}
	return b / a, true
}
