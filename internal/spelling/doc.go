// Package spelling tells which of some names somebody meant who wrote another: a code, the
// name of a food, of a house-made part, of a constituent.
//
// # Model
//
// Two names read alike if case, spaces and what cannot be seen are all that tells them apart. Two
// with the same words, whatever parts these (a space, a hyphen, a comma), are the nearest that there
// are. Else a name is near, the nearest first,
//
//  1. if it has all the words that were written, plurals aside: "water" is of "water-tap" and of
//     "soda-water", and of "date" only by two letters;
//  2. if all its words were written, among others: "my syrup" is of "syrup";
//  3. if its words begin with those that were written;
//  4. if it is a slip or two away (Distance), at most one for four letters.
//
// A word that was written whole is never taken for another word that looks like it, which is why
// slips come last.
//
// # Limits
//
// Accents count as letters. Words of other languages are of the same kind; nothing is translated.
package spelling
