// Package data holds sipsum's own small tables as embedded bytes: the core food
// table, the vocabulary of constituents, constants, rules, retention factors,
// column maps of public table formats and the demo drinks.
//
// The package contains bytes only. Each domain package parses the file that it
// owns, once, and fails loudly if a row is wrong; the audit tests beside the
// files check that every figure has a source.
//
// # Limits
//
// Bytes have no types: what a column means and which of its values are allowed is said by
// the package that reads the file, and held true by the audits.
package data
