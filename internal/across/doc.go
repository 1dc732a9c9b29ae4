// Package across takes one drink through the tables of several agencies.
//
// # Model
//
// data/crosswalk.csv says which food of an agency's table is which food of the core table, and how
// like they are: A the same, B like it but for what its reason says, C a stand-in. A food of the drink
// that has a row of grade A or B in a table is taken from it, all its figures; nothing is lent from the
// core table, for a lent figure is no second opinion. Grams stay as the drink has them (densities,
// portions and edible shares are the core table's), every other food stays as it is and is named, and
// all runs share one ensemble: amounts and steps draw alike.
//
// A table tells a figure if its rows know of it what the core foods in their place bring. What a kin
// shares out or a rule takes as zero is ours and not the table's. If its rows leave open less than a
// share of the figure (data/limits.csv) it is told all the same; if they know none of it, it is not in
// this table; between the two it is told in part and enters no spread. Where no row that is taken brings
// any, the figure is as it was.
//
// The spread is that between the central figures of the tables that tell one. The food on which they
// disagree most is the one whose bringing lies furthest apart among the tables that both have it and
// tell it.
//
// # Limits
//
// Agencies copy from each other, and the core table from one of them: tables that agree are not
// independent, and a wide spread is as often another cultivar or another method as an error. A table
// of which a reading of the drink says otherwise is moved by the reading like any other. Chemistry is
// not compared: most tables know no acids. Allergens stay those of the drink.
package across
