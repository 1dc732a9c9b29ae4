// Package caution says what in a drink may hurt somebody, as far as its foods, its
// amounts, its steps, its techniques and its vessels show.
//
// # Model
//
// data/cautions.csv holds one row per caution: under which rules (a list; none: all), what
// brings it up, what of it is measured, the text in our own words, whom it concerns, its
// source, and how bad it is (rank 1 may kill, 2 may poison or injure, 3 concerns some
// guests, 4 is of making and keeping, 5 of law and label).
//
// "when" lists alternatives parted by "|", each of terms joined by "+", which must meet in
// one part of the drink (a component, or the whole):
//
//   - mark, allergen: a food carries it, stated or inferred (package allergen);
//   - group: a food is of one of our groups; own: so is a food of the drink file;
//   - food: a name of a food or of a component, or a treat:, holds words of a list
//     (data/hazard_foods.csv); ownfood: the same of foods of the drink file alone;
//   - step: the part has such a step; "hot steep" is one from which on a code asks for cooling, "keep"
//     that a file says how long the part keeps;
//   - technique, vessel: words of data/techniques.csv, in a treat:, in an aroma: or in the name of a
//     component, and in a vessel:;
//   - alcohol: the drink holds any (from 0.05 % vol, below which a strength prints as
//     0.0), over or up to a strength (of one that nobody has stated, over it perhaps); served: it is served so hot;
//   - not: nothing of the kind is in that part.
//
// "measure" says what else must hold: an amount of a constituent or the mass of the foods
// that were found, as the file pours them (per serving, batch, kg, litre, 100 ml, 100 g); the
// strength; the pH of the part; or that how much is in it is unknown. "tell" speaks whatever
// the mass is, and of one above the limit first; "too much over" and "too much from" are "over" and
// "at least" of a dose that nobody may pour. What is surely above any of the three is too much: who makes
// the drink has to decide. "over 4.6" of a pH is lifted only by a
// meter's reading, never by an estimate; "below 6" by a pH known to be higher.
//
// An amount and a strength are judged as known and at the upper end of their interval. If
// only the second goes over the limit the caution cannot be ruled out; with the bounds of
// what is unknown only where a food could plausibly bring it (only_with), or has no group.
//
// Words are compared without accents; a list has words that are taken out of a name first
// (ignore: "borage oil") and words in whose company nothing is found (not). A row silences
// others that say less ("silences"), if it is as certain; of rows of one code one speaks, a
// certain one first. Worse comes first.
//
// # Limits
//
// The package knows what its tables list and nothing more: that no caution is printed does
// not mean that a drink is safe. Words are English, German, French, Spanish and Italian; a
// name in a brand's words, and a technique that nobody wrote down, are not found. Masses are
// those that lines pour: what a steep leaves behind counts as if it were drunk. Texts help a
// licensed kitchen; its local code, the labels of what it uses and the advice of a doctor or
// pharmacist come before them.
package caution
