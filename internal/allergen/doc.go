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
// What is known of a food is one of four things:
//
//   - stated: its publisher or its owner lists the allergens; an empty list is a
//     statement too, and answers every question;
//   - usual: our own judgement of a food as it is usually sold, which the core table
//     has of each of its foods (data/allergen_knowledge.csv). By itself it asks nothing;
//   - inferred: rules of data/mark_rules.csv find leaves in its table, its group
//     and the words of its name, and one of them settles the food: it describes
//     a single plain commodity, so that nothing else is to be expected;
//   - not assessed: neither. Leaves that a rule found are declared, and the food
//     is listed as not assessed all the same, because a mixture may hold more
//     than its name says.
//
// A food that its owner made and did not assess is never settled by a rule. A
// name or a group that contradicts a statement is listed to be checked, with where the own
// food is written; so is what an own food borrows from, if it holds what the statement
// leaves out.
//
// # Questions
//
// What the name of a food leaves open is a row of data/allergen_questions.csv: of which
// animal a gelatine is, with what a wine was fined, on which cereal a beer was brewed. It is
// asked of every food that nobody has stated, under the rules that declare what it could
// be, unless that is declared of the food anyway or excepted; it stands among what is to be
// checked, and is a finding. Its owner settles it: an own food, which may borrow all its
// figures (fill:), with its allergens.
//
// # Exceptions
//
// What a set of rules takes out of a class is a row of data/allergen_exceptions.csv: glucose
// syrup of wheat, spirits of cereals, isinglass that cleared a wine. An exception holds for
// what was inferred or is usual of the food that it names, never for a mixture of it, and is
// printed with its paragraph. What an owner states is declared.
//
// # Sulphur dioxide
//
// The amount in the drink decides (data/allergen_limits.csv): more than 10 mg/kg or 10 mg/l in
// the European Union and the United Kingdom, 10 mg/kg and more elsewhere, of the drink as
// served. Enough of it, by the upper end of what is known, is declared whatever the foods are
// called. Less, all of it known or bounded, takes it out. What nobody knows decides nothing:
// what is said to hold it is declared, and a question stays one.
//
// # States of a class
//
// A table of drinks asks for one of four words of each class: contains, may contain (as the
// designer states), check, none found. None is a blank, and the last is no promise.
//
// # Rules on names
//
// A name is cut into lower-case words. A phrase of a rule matches words that
// follow each other, whole words only, a plural s or es aside; "^" ties it to
// the start of the name. Phrases of the column "ignore" are taken out of the
// name first: peanut butter is no butter. A phrase of "not_words" switches the
// rule off. Groups are those it speaks of, or after "not " those it does not: on coffee,
// "honey" names how the cherry was dried. All rules that match count.
//
// # Limits
//
// Names are English, with the words of the regulations in German, French, Spanish and
// Italian; a table in another language is not assessed until rules are written for it. A
// question is asked of the name to print alone. A table loaded under another id than its own gets only
// the rules for any table, so its plain foods are listed as not assessed.
// Doses, cross-contact that nobody has stated, and whether a process was what an
// exception asks for are for the producer to judge. What Codex lists is open (its
// revisions were not read): its rows say "unverified". What is printed helps a
// licensed kitchen to comply with its local code and replaces neither the code
// nor the supplier's specification; no output of this package says that
// anything is absent from a drink.
package allergen
