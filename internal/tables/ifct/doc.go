// Package ifct reads the table compositions.csv that carries the figures of the
// Indian Food Composition Tables 2017. The user brings the file: its figures are
// the publisher's and are not part of sipsum.
//
// # Model
//
// One row is one food, UTF-8, with a header. A header cell is "Label; code";
// labels repeat (glucose and glutamic acid have the same), so columns are known
// by their code. Each component is followed by a column with its code and "_e",
// the standard deviation between the regions sampled; the number of regions is
// the n of the values.
//
// All amounts are in g per 100 g edible part, energy in kJ; data/maps/ifct.csv
// gives the factor to the vocabulary's unit. Two choices of that map matter:
//
//   - CHOAVL is the column cho, the sum of starch and free sugars analysed. The
//     column choavldf is 100 less water, protein, fat, ash and fibre: it holds
//     the organic acids, and is kept under its own name.
//   - The column orgac is the sum of the acids that were analysed. As OA it would
//     say that a food has no other acid; it is kept under its own name.
//
// The file has no blanks: a zero may be a true zero, a value below a limit or a
// component that nobody analysed. Every zero is therefore unknown, and a
// deviation of zero is not stated. All other values are measured.
//
// # Limits
//
// The file says neither which values were calculated nor how many analyses stand
// behind one. Local names whose language is not in data/maps/ifct_languages.csv
// (no two-letter code, several languages, an unclear abbreviation) go into the
// note as they are.
package ifct
