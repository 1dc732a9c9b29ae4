// Package benchlog is what a bar writes down of its readings, line by line.
//
// # Model
//
// A log is a CSV file (RFC 4180) beside the drinks, to which lines are only ever added: when it was read, by whom, of
// which drink and which pot (empty: the drink itself), which quantity (a key of measured), its value and its unit, the
// meter of the shelf, and the lot. The first line names the columns; a line that names them again is none, so that two
// who begin a log at the same moment lose nothing. Empty lines are none.
//
// The latest line of a pot and a quantity is what it reads now, by its time and then by its place in the file. The
// latest line of each lot tells how much lots differ (Spread): with n lots, their mean and standard deviation s,
//
//	u(next) = s·√(1 + 1/n)
//
// is how far the next one may lie from that mean (JCGM 100:2008, 4.2.2 and 4.2.3: the variance of one, and of the mean), widened
// as Student has it for n − 1 degrees of freedom. A line without a lot is a lot of its day.
//
// A cell that begins as what a spreadsheet runs is written with an apostrophe before it, and read without.
//
// # Limits
//
// Lots are taken to scatter at random: a bar that gets sweeter from lot to lot is not told so. What lots differ by
// includes what their readings scatter by. What a value may be is the business of package drink.
package benchlog
