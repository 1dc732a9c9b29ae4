// Package fit finds amounts of a drink at which its targets are met.
//
// # Model
//
// A target is a condition of package claim, or "least" or "most" before a figure. What may change
// are lines by their path (build/cherry syrup, cherry syrup/core:citric-acid, an amount of a step),
// each from an amount to another, in steps of the bar's scale; where nobody says, every line of the
// build within data/limits.csv. Every point is a run of the drink at its central values (package
// assay); which points are run package optimise decides. A condition is met with what nobody knows
// at the end that hurts. A glass that is stated is a target too: it does not overflow. A target that
// nobody can decide at any amount is left out of the search, and stands as missed.
//
// The answer is run once more with its draws. Where a reading moves the central values by what the
// draws say of it, the margins of the search are moved by as much and it is searched again, so that
// what is told as met is met in the file. Beside each target stands in how many of the draws it
// holds, with what is unknown at either end, and beside the whole in how many all do.
//
// Judge tells the same of a drink as it is written, at no other amounts.
//
// What stops a drink from coming nearer to its goal are those conditions without which the goal
// would be better, and the amounts that stand at an end of their range.
//
// # Ready targets
//
// A wish (ready.go) moves one quality and keeps the others. Each is a figure of 100 ml or of a litre:
//
//	sweet   sugars by their total, and what else sweetens by its factor (package taste)
//	sour    titratable acidity
//	bitter  every bitter compound that is not surely below its lowest threshold
//	salty   sodium, and whatever else is salty, likewise
//	strong  alcohol by volume
//
// It moves by a stated share, else by the most that a judge needs to notice it, and the others stay
// within the least that one does (data/taste_differences.csv: the difference moves with the mixture, and
// so has two ends); of what no difference was found for, within our own bound of data/limits.csv. So
// does the volume. The figures are those of the drink as it is written, and the share is judged draw by
// draw beside it: an espresso that is stronger than thought is so before and after.
//
// # A match without a part
//
// Omit (omit.go) makes of a drink one that lacks a component, or the food that brings most of a
// constituent, for a tasting of both. The lines that pour it go, and so do readings of pots in which it
// was. In its place stand white sugar, citric acid and water (another where one of them is what was to
// go), first as reckoned and then as fitted: sugars and titratable acidity of 100 ml and the volume of a
// serving within a fiftieth, else within the least that a judge notices. No other line moves, so that
// nothing else differs than what the part brought. What is withheld or not reached is told.
//
// # Limits
//
// A match is equal in sugars, acidity and volume and in nothing else: colour, smell, body and every other
// acid are what may be told.
//
// Amounts of a pot that is reduced, strained or pressed to a fixed mass move its strength only as
// that step allows; an amount at which a step cannot be done is not an answer. A line written in %
// moves with its list and not by itself. Nothing is said of taste: a target is a figure; the total
// of sugars stands for sweetness, though lactose is less sweet than fructose, and acidity for
// sourness, though the field disputes that. Body and sparkle are not kept. The chances are of the
// answer as it is, not of the best in each draw.
package fit
