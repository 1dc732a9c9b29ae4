// Package core reads sipsum's own table of drink foods, data/core.
//
// # Model
//
// foods.csv gives the foods, values.csv their values per 100 g edible part in
// the units of the vocabulary, sources.csv the works that values cite; names.csv,
// portions.csv and marks.csv add names, measures and what is known of allergens,
// cautions and added sugar. All of them are plain CSV with a header; their
// columns are described in data/core/README.md. The table is embedded in the
// program; a folder with the same files may be opened instead.
//
// An empty amount belongs to a value that is trace, below a limit or unknown;
// the column high then holds the most that it can be. A value may cite several
// sources, separated by blanks.
//
// # Limits
//
// The whole table is held in memory while it is read: it has some hundred
// foods. Its edition is the beginning of the hash of its files.
package core
