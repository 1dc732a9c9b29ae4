// Package embedded reads the small tables that sipsum carries in package data.
//
// # Model
//
// A table is a CSV file with a header; a row is asked for its cells by the
// header's names. The files are part of the program, and the audit tests beside
// them keep them well formed, so a fault in one is a fault of the build: reading
// panics with file, line and column, and callers have no error to handle.
//
// # Limits
//
// A row keeps its line of the file only as far as no cell holds a line break.
// Tables of the world's publishers are not read here: they are input, and their
// readers (internal/tables) report what is wrong with them.
package embedded
