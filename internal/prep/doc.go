// Package prep is what each preparation step does to a pot: one file a step,
// pure functions of the pot and of columns of draws.
//
// # Model
//
// A separating step decides which share of each constituent of each row stays
// (ledger.Model):
//
//	reduce    water leaves until the mass is reached; alcohol leaves with it by
//	          the published range of retention after simmering
//	strain    suspended solids, fat and protein pass by data/phases.csv (share
//	press     passed by phase, food group and medium, wide); the liquor that
//	          passes is collected in part: all of it keeps one composition
//	heat      published retention factors of one code (USDA release 6), each
//	          rounded to 5 %, so rectangular ± 2.5 %
//	split     shares stated by the designer; what is not named stays with the
//	          water
//	chill     melted ice is water; dilute adds water up to a mass
//
// Adding ingredients is the ledger's Pour and Mix.
//
// # Limits
//
// Strain and press differ only in the word: no source separates what a press
// passes from what a cloth passes. Minerals and vitamins bound to pulp are
// treated as dissolved. Aroma is not modelled. Steps that change mass into other
// mass (curdle, brew, invert, ferment, caramelise, carbonate …) are in the
// grammar of the drink file and refused by name (NotComputed).
package prep
