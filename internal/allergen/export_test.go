package allergen

import "slices"

// Rules gives the sets of rules that a drink can be declared under, Leaves every leaf code in
// the order of data/allergens.csv: the audits walk both.
func Rules() []string  { return slices.Clone(known().rules) }
func Leaves() []string { return slices.Clone(known().order) }
