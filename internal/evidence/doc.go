// Package evidence is the assay told by sensory category: what speaks for
// sweet, acid, bitter, body, salt and sparkle, which component brings it, and
// where the figures come from.
//
// # Model
//
// A category is a list of constituents: those of data/categories.csv, or the
// drink file's own. For each constituent that the drink has, or that nobody has
// measured, the view gives the serving's figure, the part that the coffee alone
// (compare-with, one or several) brings, the parts by component, and the works behind the
// figures. The coffee alone is assay.Assay's: of one that is only used inside other
// components it is what they take, as it was made. Sentences say who brings each constituent, by
// the highest rung of the ladder (package ladder) that holds whatever is unknown, only where the figure
// rests on sources that were seen and no part that counts is from memory; the strongest stands
// first. A sentence cites the works behind the figure of whom it names. For an own food that is the source
// that the drink file states: its owner has seen it. What is worth saying at all, and from how much on, is data/worth.csv.
//
// # Limits
//
// Amounts are not intensities: no taste index, threshold or interaction is
// applied. Gas too little to sparkle is none (data/worth.csv).
package evidence
