// Package sr reads the ASCII files of the USDA National Nutrient Database for
// Standard Reference, as the agency publishes them.
//
// # Model
//
// Fields are separated by "^", text stands between "~", lines end in CRLF, there
// is no header and no escape: a quotation mark inside a text is a quotation
// mark. The text is Windows-1252, whatever the documentation says: FOOD_DES and
// FOOTNOTE hold its curly quotes. The code of a food has five digits and its
// leading zero counts.
//
// FOOD_DES leads; NUT_DATA, WEIGHT and FOOTNOTE are sorted by the same code and
// are read beside it, so that one food is in memory at a time. NUTR_DEF names
// the columns, SRC_CD the kinds of source, FD_GROUP the publisher's groups.
// FOOD_DES, NUT_DATA, NUTR_DEF, FD_GROUP and SRC_CD must be there; DERIV_CD,
// WEIGHT and FOOTNOTE are read if they are.
//
// A value is per 100 g edible part. An absent row is an absent value. A zero is
// one of three things: source code 7 or derivation Z says that nobody measured
// and zero is assumed (state assumed); with data points it was looked for and
// not found (below, with half of the last decimal that NUTR_DEF gives the column
// as its limit: the file itself drops trailing zeros); otherwise it is
// calculated. Any other value is measured if its source code stands for
// analyses and it has data points, else calculated (data/maps/sr_sources.csv).
//
//	sd = standard error · √(number of data points)
//
// # Limits
//
// The files do not name their release; it is recognised by its counts of foods
// and columns (data/editions.csv). Short descriptions, the survey flag,
// degrees of freedom, error bounds, LANGUAL, LANGDESC, DATA_SRC and DATSRCLN are
// not read. Factors for nitrogen and energy stand in the note of a food, as
// text. A file cut exactly between two rows of its last food cannot be told from
// a whole one.
package sr
