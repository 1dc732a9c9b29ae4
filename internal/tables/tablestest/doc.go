// Package tablestest is the conformance suite that every reader of a published
// table passes: what it must give of a whole release, and how it must refuse a
// damaged one.
//
// Run checks a release, RunBook a damaged workbook, and Legal what a reader made
// of any bytes. What the readers' own tests have in common stands here too: to
// read a release or one value of it, to copy and change one, and to find the
// published tables, without which a test is skipped.
//
// # Limits
//
// The suite copies the folder for each kind of damage, so the damage part is
// meant for small releases.
package tablestest
