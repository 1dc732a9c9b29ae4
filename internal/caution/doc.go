// Package caution says what in a drink may hurt somebody, as far as its foods,
// its amounts and its steps show.
//
// # Model
//
// data/cautions.csv holds one row per caution: a trigger, the text in our own
// words, its source. A trigger is
//
//   - mark: a food carries a caution mark ("raw egg"), stated or inferred from
//     its name (package allergen); a + b asks for both, in any foods;
//   - group: a food is of one of our groups;
//   - step: the drink uses a step;
//   - amount: a constituent in a serving, in 100 ml or in 100 g is over a limit;
//   - abv: the alcoholic strength is over, or at, a limit;
//   - unknown: a food carries the mark but the amount of the constituent is not
//     fully known.
//
// An amount is judged twice, as known and at the upper end of its interval with the
// bounds of what is unknown. If only the second goes over the limit the caution is
// given as one that cannot be ruled out. What is only ever added on purpose (only_with)
// cannot be ruled out where a food carries that mark, or has no food group; elsewhere
// nobody would believe it.
//
// # Limits
//
// The package knows what data/cautions.csv lists and nothing more: that no
// caution is printed does not mean that a drink is safe. Names of drinks are
// read in English. Texts help a licensed kitchen; its local code, the labels of
// what it uses and the advice of a doctor or pharmacist come before them.
package caution
