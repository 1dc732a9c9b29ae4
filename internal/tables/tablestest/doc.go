// Package tablestest is the conformance suite that every reader of a published
// table passes: what it must give of a whole release, and how it must refuse a
// damaged one.
//
// # Limits
//
// The suite copies the folder for each kind of damage, so the damage part is
// meant for small releases.
package tablestest
