// Package phrase finds words in names: of foods, of components, of drinks.
//
// # Model
//
// A name is cut into lower-case words. A phrase matches words that follow each other, whole
// words only, a plural s or es aside; "^" ties it to the start of the name, and "*" at the end
// of a word stands for whatever follows in it ("holunderbeer*"). What is taken out of a name
// keeps its place, so that words which were apart do not become neighbours.
//
// # Limits
//
// Plurals of other languages, accents and compounds are not folded: a table of words writes
// them out.
package phrase
