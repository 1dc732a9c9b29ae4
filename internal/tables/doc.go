// Package tables is the list of the formats of published tables that sipsum
// reads.
//
// # Limits
//
// Sniffing looks at the names of files, or at the first bytes of one; it does
// not read a table.
package tables
