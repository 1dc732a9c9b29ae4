// Package ladder finds the strongest sentence about who brings a constituent that holds
// whatever is unknown.
//
// # Model
//
// Whoever may speak is an ingredient, under the name by which a bar tells it from the others and
// with the pots that it comes through, or a component of the build. In a draw it is known to bring
// x of a constituent and may bring up to X, what it does not know at its most; all others are known
// to bring r and may bring up to R. Its share is at least x ÷ (x + R) and at most X ÷ (X + r). Over
// the draws,
//
//	least = min x ÷ (x + R)    most = max X ÷ (X + r)    leads = x > X of each other, in every draw
//
// so a sentence holds in every draw with every unknown part at its most against it. A rung is a row
// of data/ladder.csv, the highest first: the least share that it wants, for "about half" the most
// too, for "more than any other" that it leads, and the words. Of a constituent the highest rung that
// anybody reaches is said; of two on one rung the ingredient before the component, then who surely
// brings more.
//
// Nothing says what its words say anyway: a food that is the constituent itself (at least 95 % of it
// as it is poured, our own bound, or a pure substance) is "added pure", or "added as sugar"; who bears
// the constituent's name does not bring it; of a single food, water beside, there is nothing to say, nor
// of a component that is the whole drink but for water.
// What is worth a word at all is data/worth.csv.
//
// # Limits
//
// Amounts are not intensities. A share is of grams, and of what is drunk. Bounds are of central
// values, as in package composition. What a step made counts as an ingredient of its own or as that
// of the row which it was made in, as the ledger has it.
package ladder
