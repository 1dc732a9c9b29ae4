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
// Of a row that states a trace of a constituent, or less than could be found, and no more, nothing is known but
// its limit: it is a gap from none to that (faint.go), as nobody can tell where between it lies.
//
// What a row does not know of a constituent is a gap, at its most what package composition bounds it
// by, and one for each food and constituent, in however many pots. What the pH and the acidity are
// open to beyond their draws (package chemistry) is a gap too, so is a figure that is withheld. What no table
// bounds is bounded by the mass of its food, less what else is known to be in it (room.go): such an end decides
// what hangs on nothing less, and is not printed.
//
// Sweetness is that of package taste with what is unknown apart: sugars of which nobody has said which they are
// count as the least sweet that they may be, with a gap up to the sweetest, and sugars that nobody has measured
// as none. Its factors are drawn as the printed index draws them.
//
// A place among foods (rank.go) is of the food's own table, pure substances apart, per 100 g. Foods are entered as
// the ledger enters them and drawn as the drink draws them; only those that any draw may bring near the one asked for
// are drawn. Where nobody knows what a food holds, or all of it, it may come before: that is a gap. The verdict says
// among how many it was ranked.
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
// that closes it is that which narrows the margin most of those not taken; it may not close it wholly. Beside a
// figure of a food in the nearest world stands how many published figures lie as far off, where
// data/samples.csv keeps them one by one: those of some acids, caffeine and theobromine of the core table.
//
// Where which sugars there are hurts a claim of sweetness, no nearest world is told: no single line states it.
// Of a place among foods no nearest world is told, since no figure of a drink moves a table. What a table has not
// measured is open in all of its foods at once, each up to its own bound: a place is often unknown for want of figures
// of foods that nobody would name. Energy and what has no mass is not bounded by mass.
package claims
