// Package csvreport prints sheets, cards, declarations and menus for a spreadsheet: RFC 4180, one
// header, one thing a line, so that a filter or a pivot table finds it.
//
// # Model
//
// What a rule prints stands as it is printed ("<0.5 g"). Beside it stand the figure that was
// calculated, not rounded and in the first unit that is printed, and whether anybody knows it.
// An empty figure is not known, never 0.
//
// A batch is what is bought, weighed and done, a thing a line in the order of work; "times" is how often
// it is weighed.
//
// A spreadsheet runs what begins with =, +, - or @, in their wide forms too. A text of a drink
// that does so gets an apostrophe before it, by which it is read as text; package clean has
// taken out the tabs and line breaks that do the same.
//
// # Limits
//
// Numbers have a decimal point. A spreadsheet set to a language with decimal commas has to be
// told so when it imports.
package csvreport
