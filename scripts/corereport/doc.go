// Corereport prints what the embedded core table knows and what it does not:
//
//	go run ./scripts/corereport
//
// # Model
//
// A constituent of a food counts as known where the table states an amount, a
// trace or a value below a limit; an assumed zero counts, an unknown with a bound
// does not. The foods that miss are printed by name, with the bound where there
// is one.
//
// # Limits
//
// It reads the values as kept, before zeros and bounds by food group
// (data/bounds.csv) are applied.
package main
