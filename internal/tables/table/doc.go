// Package table says what a reader of a published food-composition table gives:
// a Release, and what all readers share: the map of its columns to the
// vocabulary, the rules that give a food its group, and the hash of its files.
//
// # Model
//
// A Format knows how to open a folder of the publisher's files, unchanged. Open
// reads the small files (columns, codes, groups) and gives a Release whose
// foods come as a stream, in the publisher's order, each with all its values;
// the stream never holds more than one food. The first error ends it.
//
// A column of the table is mapped to a constituent of the vocabulary with the
// factor from the printed unit, or kept under "table:number" in the printed
// unit, or it holds the standard deviation of another column, or it is refused
// by name (codes, names, counts, sums that are not totals). The choice is a row
// of data/maps/<format>.csv with its reason; no column is dropped unnamed.
//
// A food's group is the first rule of data/group_rules.csv that fits its table
// format, the publisher's group and the words of its name.
//
// # Limits
//
// The hash covers the names and bytes of the publisher's files that are read,
// not the map: after a change of a map a table is loaded again by force. Files
// that change between the hash and the reading are not noticed.
package table
