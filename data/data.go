// Package data holds sipsum's own small tables as embedded bytes: the core food
// table, the vocabulary of constituents, constants, rules, retention factors,
// column maps of public table formats and the demo drinks.
//
// The package contains bytes only. Each domain package parses the file that it
// owns, once, and fails loudly if a row is wrong; the audit tests beside the
// files check that every figure has a source.
package data

import "embed"

// FS is the embedded file tree. Paths are those of this folder, for instance
// "constituents.csv" or "core/values.csv".
//
//go:embed *.csv core/*.csv maps/*.csv demo/*.yaml
var FS embed.FS
