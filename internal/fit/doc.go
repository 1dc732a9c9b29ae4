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
// A miss is counted as a share of what its target is held to, so that the nearest answer does not hang on
// what is written. An answer of least movement ends where a target is only just met, and half of the draws
// miss it there: where something has to move, it is given a little more
// movement (data/limits.csv) if that makes all targets hold more surely by the draws (surer.go), and both
// chances are told. A goal is brought as far, and what stops it stands at its limit by nature. A target that divides by what the drink has none
// of has no value, and is a fault of its line.
//
// The answer is run once more with its draws. Where a reading moves the central values by what the
// draws say of it, the margins of the search are moved by as much and it is searched again, so that
// what is told as met is met in the file. Beside each target stands in how many of the draws it
// holds, with what is unknown at either end, and beside the whole in how many all do.
//
// Judge tells the same of a drink as it is written, at no other amounts.
//
// What stops a drink from coming nearer to its goal are those conditions without which the goal
// would be better, the amounts that stand at an end of their range, and steps that cannot be done at
// amounts beside them.
//
// # Ready targets
//
// A wish (ready.go) moves one quality and keeps the others. Each is a figure of 100 ml or of a litre:
//
//	sweet   the sucrose that is as sweet (package taste), with what nobody knows of the sugars at either end
//	sour    titratable acidity
//	bitter  every bitter compound that is not surely below its lowest threshold
//	salty   sodium, and whatever else is salty, likewise
//	strong  alcohol by volume
//
// It moves by a stated share, else by the most that a judge needs to notice it, and the others stay
// within the least that one does (data/taste_differences.csv: the difference moves with the mixture, and
// so has two ends); of what no difference was found for, within our own bound of data/limits.csv. So
// does the volume. Asked for is a share of what the drink has (change.go), and its limit is told of the figure that is
// printed; it is met by the share, with what is unknown of the figure at either end, each beside the same end of the drink
// as it is written, and so is the chance draw by draw: an espresso that is stronger than thought is so before and after.
// The search reads the figure as it is told, which goes in lines, and is moved by what the ends are off from it.
//
// An answer that lies on a limit is missed in half of the draws. So where all is met and does not hold surely the limits
// are drawn in (centre.go), by a tenth, a quarter, a half and three quarters of the way to what the drink has, and of what
// moves to half as much more than was asked, until all holds surely; of the answers that meet what was asked, and have no
// less of a goal, that one counts which holds in most draws. What is then not yet sure is given a little more movement as
// any answer is (surer.go), which only takes what holds more often: the one looks wider, of ready targets alone, the other
// beside what is found, of all. The chance that is told of the least movement is that of before both.
//
// # Another food
//
// Swap (swap*.go) looks for a food in the place of one that the drink pours. What the food brings of a figure is its
// part of it in the serving, after all steps; a figure of which so much would be missed is what it is for. Held is
// every taste that the drink has above its thresholds, the fat that gives it body, and the size of a serving, each
// within what a judge notices. Foods of the same use (data/swap_uses.csv) are compared by composition alone, each at
// the mass at which the most that a judge would notice is least; the nearest are poured into the drink, and their
// amount is searched on the steps of the scale by the same measure. In a pot that the food fills goes as much as before,
// and how much of the pot is poured is searched. What no judge tells from the nearest amount gives way to the
// amount that changes least. What is more than water holds (data/swap_solubility.csv), and a dose of which more would
// dissolve than coffee gives, is left out (swapbounds.go). Where no figure tells what a food is there for and an allergen
// is to go, foods of its use stand at its mass. Readings of pots in which the food was no longer hold, and are left out before and after.
//
// The draws of what stays are those of before, and so is the hand that pours. What is asked for less brings no more than
// data/limits.csv has; what is to be without an allergen neither holds it nor may hold it, and what nobody has looked at
// says so. Where the figure that decides is not known, a food of the group stands apart as what would do if it were read.
//
// # A match without a part
//
// Omit (omit.go) makes of a drink one that lacks a component, or the food that brings most of a
// constituent, for a tasting of both. The lines that pour it go, and so do readings of pots in which it
// was, and steps of which nothing is left: what was steeped, washed with, clarified by or dosed. In its
// place stand white sugar, citric acid and water (data/match_fillers.csv: another where one of them is
// what was to go), first as reckoned and then as fitted: sugars and titratable acidity of 100 ml and the
// volume of a serving within a fiftieth, else within the least that a judge notices. Of a pot they stand
// in the pot, together as heavy as what went, so that its steps find as much and the rest is as strong as
// it was; of the build in the build. No other line moves, so that nothing else differs than what the part
// brought. What is withheld or not reached is told, and so is a sweetness that equal sugars do not keep.
//
// # Limits
//
// A match is equal in sugars, acidity and volume and in nothing else: colour, smell, body and every other
// acid are what may be told.
//
// A search runs as many points as its drink allows in a second or two (data/limits.csv); of a large drink
// it may end before it is proven.
//
// Amounts of a pot that is reduced, strained or pressed to a fixed mass move its strength only as
// that step allows; an amount at which a step cannot be done is not an answer. A line written in %
// moves with its list and not by itself. Nothing is said of taste: a target is a figure, and
// acidity stands for sourness, though the field disputes that. A wish does not keep body and sparkle, and a swap
// not sparkle, colour, foam, smell and what a step does that nobody calculates. The chances are of the
// answer as it is, not of the best in each draw.
package fit
