// Rebuildcore writes data/core/values.csv, the values of the core table, from
// the files that people keep by hand and from a copy of USDA SR28.
//
//	go run ./scripts/rebuildcore --sr PATH           writes the file
//	go run ./scripts/rebuildcore --sr PATH --check   compares, and exits 1 on a difference
//
// # Model
//
// foods.csv names the foods and how each is made:
//
//	use          values
//	(empty)      the row of SR28 with the NDB number in column sr
//	pressed      that row without its fibre, see below
//	chemical     by formula from chemicals.csv and the atomic weights
//	literature   none but those of literature.csv
//
// A row of literature.csv takes the place of the value made above for the same
// food and constituent. One whose source is "borrowed" has no figures: they are those
// of the food of this table that its column ref names.
//
// # Formulae
//
// Pressed: what is left when all of the fibre F (g/100 g) stays in the cake,
//
//	x' = x · 100 / (100 − F)      CHOCDF' = (CHOCDF − F) · 100 / (100 − F)
//
// Chemical: the share of a part is n · M(part) / M(substance); what the parts do
// not account for goes to the leaf in column rest (cations and the hydroxyl or
// hydrogen that replaces them to ASH).
//
// Standard deviation of an SR28 value: Std_Error · √n (reader of SR28).
//
// # Limits
//
// Pressing is a bound, not a process: pectin that passes the cloth and salts
// that stay in the cake are not modelled. Fat-soluble riders (carotenoids,
// vitamins A, E, K) stay with the pulp and are not taken. Substances by formula
// are taken as pure.
package main
