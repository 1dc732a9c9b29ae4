package prep

import (
	"maps"
	"slices"
)

// Words lists the steps that have a method.
func Words() []string { return slices.Sorted(maps.Keys(methods)) }
