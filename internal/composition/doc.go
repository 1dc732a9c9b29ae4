// Package composition reads figures off a pot: how much of each constituent, with interval,
// coverage, bounds and what brings it, and its energy.
//
// # Model
//
// A figure is read off a column of draws. Coverage of a constituent is
//
//	known / (known + the most that the unknown parts could be)
//
// and is null where an unknown part has no bound. Energy is recomputed from the leaves by
// data/energy_factors.csv (energy.go); the tables' own figures are followed beside it
// (tableenergy.go) and go into nothing. Carbohydrate by difference, which some declarations
// want, goes back to what the tables print (difference.go). What is not known is followed as
// the most that it could be (upto.go): a figure's "up to" is the upper end of its interval with
// every unknown part at its most, never above that of the totals that it is part of.
//
// Who brings a figure is worked out from the rows (bringing.go): which food, through which pots,
// with its share in every draw, and the share in the worst of them with all that others do not
// know at its most. A row of a pot came of one food, whatever a step made of it.
//
// # Limits
//
// Bounds are of central values: what is unknown has no draws. A share is of what is known.
package composition
