// Package claims answers what claims ask of an assay: it is their drink (claim.Env), judges
// the claims of a drink file, and looks for the world in which each is false.
//
// # Model
//
// A part of a serving is the rows that a name means (part.go). A name alone is a component, else an
// ingredient (its code, its name, or its name before the comma), else a kind (the groups of foods
// that have all its words: "juice", "citrus"). A component that bears the name of what is grown
// (data/groups.csv) is not taken by its name: a claim on "lime juice" counts the lime in the drink,
// whatever pot it is in, and nothing of a pot so called that is made of lemon; component "lime juice"
// counts the pot.
//
// What a row does not know of a constituent is a gap, at its most what package composition bounds it
// by, and one for each food and constituent, in however many pots. What the pH and the acidity are
// open to beyond their draws (package chemistry) is a gap too, so is a figure that is withheld.
//
// The nearest world of a claim that holds is looked for among the inputs that a drink file can
// state: the figures of foods, of tables and of its own, and written amounts, those few with which the margin goes
// most in the draws (world.go). The drink is calculated anew at central values wherever the search
// asks, with each food as own food that borrows from the one it stands for, so that what is told is
// what a file with these lines gives.
//
// # Limits
//
// A food in a step's own list, one weighed by portions, one that borrows already and one with
// coffee facts keep their figures in the nearest world; so do a published pH, factors of steps and
// readings. A food used in several pots moves in all of
// them. Where no setting within the range of the draws breaks a claim none is told, nor where it
// would take more runs than data/limits.csv allows. The reading
// that closes it is that which narrows the margin most of those not taken; it may not close it wholly.
package claims
