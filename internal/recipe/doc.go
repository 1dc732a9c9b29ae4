// Package recipe is a drink file with its foods found: every line by its path.
//
// # Model
//
// All that is wrong is reported at once, with its place: names that no component and no
// food has, portions and densities that a food lacks, foods that print what cannot be. Foods
// of the drink file are foods like any other, held to what a food can be (ownsound.go): no
// more than 100 g of anything in 100 g, no parts beyond what they are part of, all together
// no more than the whole, each within the rounding of what is written and two standard
// deviations of what is stated (data/limits.csv). Their figures are read as their pack declares
// them, and are as uncertain as its rules allow (declaration.go, package pack); how they were read
// is said beside the figures. The facts of a coffee choose what it borrows (coffee.go): the row of its
// species and roast in the core table, or what lies between two roasts by the mass lost, linearly
// between their usual losses and no further; caffeine stays as the mass goes, as far as roasts are
// published. A colour alone, or a species that the table has not, is as unsure as from one roast or
// species to the others. Of a fact without a published effect (data/coffee_facts.csv) that is said, and
// nothing else changes. What the file can say and nobody
// calculates is refused, never ignored (notcomputed.go). Components and foods are called so
// that a reader tells them apart (called.go). A text names a component, a food by its table
// and code, or one by its whole name, in that order (lookup.go); what it may have meant instead is
// told, the drink's own names first (meant.go). A line becomes grams by its portion, its food's
// density and its edible share (weigh.go).
//
// # Limits
//
// Names are found whole, case aside, never by likeness: what is near is only suggested, and a name
// that looks like one of the drink's own is refused even where a table has it. Claims and targets
// are judged further up (packages claims and fit). Garnish amounts are for all servings together,
// like the build; a garnish that is not eaten counts for the allergens only.
package recipe
