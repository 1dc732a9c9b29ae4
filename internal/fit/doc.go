// Package fit finds amounts of a drink at which its targets are met.
//
// # Model
//
// A target is a condition of package claim, or "least" or "most" before a figure. What may change
// are lines by their path (build/cherry syrup, cherry syrup/core:citric-acid, an amount of a step),
// each from an amount to another, in steps of the bar's scale. Every point is a run of the drink at
// its central values (package assay); which points are run package optimise decides. A condition
// is met with what nobody knows at the end that hurts. A glass that is stated is a target too: it
// does not overflow.
//
// The answer is run once more with its draws: beside each target stands in how many of them it
// holds, with what is unknown at either end.
//
// What stops a drink from coming nearer to its goal are those conditions without which the goal
// would be better, and the amounts that stand at an end of their range.
//
// # Limits
//
// Amounts of a pot that is reduced, strained or pressed to a fixed mass move its strength only as
// that step allows; an amount at which a step cannot be done is not an answer. Nothing is said of
// taste: a target is a figure. The chances are of the answer as it is, not of the best in each draw.
package fit
