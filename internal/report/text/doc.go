// Package textreport prints sipsum's results as calm, aligned text for people:
// assay, evidence, card, allergens, the whole sheet, foods, hits, tables,
// errors. It works in a pipe and on 80 columns; on a terminal it is as wide as that, from a
// telephone's 40 columns to 120, adds bold and one accent colour, and never tells anything by
// colour alone.
//
// # Model
//
// Every view is composed as plain text on a page and written in one go. A figure
// is its central value and its 90 % interval, cut to the digits that its
// standard deviation supports (digits.go) and to three significant ones at most;
// one too small for its unit is printed in the next smaller. "≥" stands before a
// figure where something is unknown; "up to" gives the upper end of its interval
// with every unknown part at its most, rounded upwards: never below the interval. What is wholly unknown is named in
// words and is never a zero. A figure of which all that is known is a limit far
// below what the unknown parts could be counts as unknown too.
//
// A table keeps as many of its columns beside the names as leave them room; what the others
// say follows on a line of its own (columns.go). No line ends within a figure (package
// typeset). A page that does not tell all names the few unknown things that may be most, and
// counts the others (missing.go). What was entered from memory has its † where that may
// decide something, and the foot of a page says what it is (legend.go). Codes stand beside
// their words.
//
// A share is of the known part and carries its own interval. A bar is solid up to
// the low end of that interval and shaded up to the high end; twenty cells are
// 100 %. Parts and their order, what is listed and the words of the constituents are
// package sheet's; each part has a printer here (pages.go).
//
// Texts of files and tables are hostile: Clean takes out what could steer a
// terminal or turn the reading direction, and clips what is absurdly long.
//
// A brief (brief.go) has 24 lines of 80 columns, two of them kept for what may not be said and what
// a change would do; a narrower page has as many more as it takes. What it has to tell is ranked,
// taken while there is room, and counted where there is none: what may hurt (allergens, alcohol,
// cautions for a guest, a glass that overflows, what is kept too long), then contradictions and the
// unknown that matters most, before all else. Cautions have few words where sentences have no room.
//
// A leaf (leaf.go) comes with its words; here its tables get as many columns as fit, and the
// rest below, and the guest's box a bar at its side.
//
// # Limits
//
// Nothing is calculated here: what a sheet lacks is not printed. A web address longer than a
// line is broken at its edge. The interval is of the known part.
package textreport
