// Package across takes one drink through the tables of several agencies.
//
// # Model
//
// data/crosswalk.csv says which food of an agency's table is which food of the core table, and how
// like they are: A the same, B like it but for what its reason says, C a stand-in. A food of the drink
// that has a row of grade A or B in a table is taken from it, all its figures; nothing is lent from the
// core table, for a lent figure is no second opinion. Grams stay as the drink has them (densities,
// portions and edible shares are the core table's), every other food stays as it is and is named, and
// all runs share one ensemble: amounts and steps draw alike. A table goes by the name under which it is
// loaded, the crosswalk by its format; of another edition than that which was judged it is told.
//
// A table tells a figure if its rows know of it what the core foods in their place bring. What a kin
// shares out or a rule takes as zero is ours and not the table's. If its rows leave open less than a
// share of the figure (data/limits.csv) it is told all the same; if they know none of it, it is not in
// this table; between the two it is told in part and enters no spread. Where no row that is taken brings
// any, the figure is as it was. Of what other foods bring, which stand as the core table has them, no table
// has said anything: each tells which share of a figure its own rows bring, and agreement counts only of
// those that bring half (data/limits.csv).
//
// How sugar splits hangs on the pH of the pot, and so on acids that a table may not have. What steps make
// of the sugars of a row is therefore that which they make of the core food's; where the run itself differs
// by more than a table may leave open, the figure is by a step and in no spread.
//
// What tables do not mean alike (data/unlike_definitions.csv) was converted, or is marked: a difference of
// such a figure need be no disagreement, and it is never that on which they disagree most.
//
// The spread is that between the central figures of the tables that tell one. The food on which they
// disagree most is the one whose bringing lies furthest apart among the tables that both have it and
// tell it, as a share of the figure or of what that is a part of.
//
// # Limits
//
// Agencies copy from each other, and the core table from one of them: tables that agree are not
// independent, and a wide spread is as often another cultivar or another method as an error. A table
// of which a reading of the drink says otherwise is moved by the reading like any other. Chemistry is
// not compared: most tables know no acids. Allergens stay those of the drink.
package across
