// Package titration puts a bench titration in the place of all that a composition says of a
// pot's acids and ions.
//
// # Model
//
// Package acid fits the buffer spectrum of the points; from then on the rows of the pot
// carry so many grams of the liquid as it was titrated, shared out by their water. Readings
// that follow one another are of one state, so one with base and one with acid are two ends
// of one curve. The sample, the strength of the titrant and the meter have the spread that
// is stated, else that of data/instruments.csv. A titration that takes more base than the
// sourest liquid is refused; one that has little to do with its recipe is noted, and its liquid
// takes what the recipe tells of in a third of the draws (check.go).
//
// # Limits
//
// A titrant counts as water but for what it titrates. Beyond the pH that was titrated
// nothing is known: there package chemistry withholds and bounds. The solvent of the liquid
// is that of its recipe.
package titration
