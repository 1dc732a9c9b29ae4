// Package drivers tells what the spread of a figure hangs on, and which reading to take next.
//
// # Model
//
// The ranks of a figure are regressed on those of the inputs that a run's journal kept
// (driver.go): the shares of hand, tables, steps, constants and readings in its spread. The
// readings that nobody has taken are ranked by the variance that each would take from the
// wanted constituents (next.go).
//
// What a meter and a burette would read is worked out for as many draws as equilibria are solved
// for elsewhere.
//
// # Limits
//
// Shares of a spread are of ranks: a product of inputs loses a few per cent to "together".
// A reading is weighed alone, as if it were the only one to be taken.
package drivers
