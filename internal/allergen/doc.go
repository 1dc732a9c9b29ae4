// Package allergen says what must be declared of a drink, and what nobody has
// looked at.
//
// # Model
//
// A food carries allergens as leaves: the most exact thing that is known, such
// as "oats", "almond" or "cow milk" (data/allergens.csv). Each set of rules maps
// a leaf to a declared class, or to none: oats are "cereals containing gluten"
// in the European Union and not a major allergen in the United States
// (data/allergen_rules.csv holds the classes, their order and how they are
// named).
//
// What is known of a food is one of three things:
//
//   - stated: its table or its owner lists the allergens; an empty list is a
//     statement too;
//   - inferred: rules of data/mark_rules.csv find leaves in its table, its group
//     and the words of its name, and one of them settles the food: it describes
//     a single plain commodity, so that nothing else is to be expected;
//   - not assessed: neither. Leaves that a rule found are declared, and the food
//     is listed as not assessed all the same, because a mixture may hold more
//     than its name says.
//
// A food that its owner made and did not assess is never settled by a rule. A
// leaf that is only likely ("sulphites?" of wine) is listed to be checked. A
// name that contradicts a statement is listed to be checked as well.
//
// # Rules on names
//
// A name is cut into lower-case words. A phrase of a rule matches words that
// follow each other, whole words only, a plural s or es aside; "^" ties it to
// the start of the name. Phrases of the column "ignore" are taken out of the
// name first: peanut butter is no butter. A phrase of "not_words" switches the
// rule off. All rules that match count.
//
// # Limits
//
// Names are English; a table in another language is not assessed until rules
// are written for it. A table loaded under another id than its own gets only
// the rules for any table, so its plain foods are listed as not assessed.
// Sulphur dioxide is not calculated: the thresholds of the rules are printed
// with the class. Doses, cross-contact that nobody has stated, and exceptions
// that depend on processing (refined oils, glucose syrup) are for the producer
// to judge. The rules in force here are eu and us. What is printed helps a
// licensed kitchen to comply with its local code and replaces neither the code
// nor the supplier's specification; no output of this package says that
// anything is absent from a drink.
package allergen
