package allergen

// Rules gives the sets of rules that a drink can be declared under, Leaves every leaf code in
// the order of data/allergens.csv: the audits walk both.
func Rules() []string  { return known().rules }
func Leaves() []string { return known().order }
