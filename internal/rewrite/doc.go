// Package rewrite makes one change to the text of a drink file and leaves everything else as it is
// written: comments, layout, quotes, line ends.
//
// # Model
//
// A change is found by what the parser knows of places (package drink) and made row by row. Then the
// new text is read again, and the change stands only if the drink is the old one but for what was
// asked (same.go), and nothing is wrong with it that was not wrong before. What cannot be made so is
// refused, with what to write by hand. So no name, whatever stands in it, can change anything else.
//
//	Set       another amount, or another count, of a line or a step, by its path
//	Write     several of them at once, as a fit found them
//	Add       a line behind the others of a component, the build or the garnish
//	Remove    a line, by its path
//	Claim     a sentence with its check, behind the others
//	Measured  what an instrument read of a component or of the drink
//
// An amount without a range of its own keeps the one that is written; one in another unit loses it.
//
// # Limits
//
// What stands in a shelf is not the drink's to write. The last line of a list is not removed. A component
// that is written on one row in { } is given no first reading.
package rewrite
