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
// A curve of eight points or more also tells which acids are there (package burette): the named
// acids of the rows move to its posterior draw by draw (acids.go), within their own range, each row
// by its part in the spread of their sum, and water makes room (share.go). What nobody has
// measured stays unknown, with a lower bound. A curve that no mixture of the recipe's acids gives
// leaves each of them between the two: in a third of the draws as the recipe has it, in a third as the
// curve does, the central value within its range; what was read, expected and used is told, and
// waits for a decision. What the curve tells (told.go), what it cannot tell apart and what is wrong
// with the meter are notes (said.go). A meter that is found to be off is taken out of the spectrum too, and so
// is what sample and base are found to be off by (meter.go): whatever is poured together later has
// the pH of what was titrated.
//
// Of a pot that nobody has titrated outlook.go tells what a kit would, and of one that was begun
// which points come next.
//
// # Limits
//
// The pH of the liquid is that of its spectrum and not of the named acids: where the acids
// contradict the recipe they span both and the pH is the curve's; it spans both where the pH at which
// the curve begins is not the recipe's (check.go). Such a pH, and one of a meter that was found off,
// lifts no control of time and temperature. What an adjusted meter is off by stays in the pH. Nothing is asked of
// what protein buffers, nor of what was titrated before. No next point is proposed of a titration with acid. The strong ions and the strength that the curve tells stay in it.
// A titrant counts as water but for what it titrates. Beyond the pH that was titrated
// nothing is known: there package chemistry withholds and bounds. The solvent of the liquid
// is that of its recipe.
package titration
