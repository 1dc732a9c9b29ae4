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
// Of the acids of what is drunk it tells more (acids.go): each of a food as it enters the
// ledger is known, an estimate by the shares of its kin, bounded below 50 mg/100 g by a
// published work (a limit of its own or of its total, or a sourced rule for foods of its
// name or group), or open. What the balance of a row or the most of its group leaves is
// no answer. A food stands as its worst acid.
//
// # Limits
//
// The lines of constituents read the values as kept, before zeros and bounds by food
// group (data/bounds.csv) are applied.
package main
