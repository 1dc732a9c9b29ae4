// Package cli is sipsum's command line: it joins the store, the readers of
// tables, the domain and the renderers, and is the only place that does.
//
// # Model
//
// Main builds the command tree over injected streams and gives an exit code.
// Every command is one file: its options, its cobra command, and a function that
// does the work and never sees cobra. The database is opened when a command
// first needs it, so help and version touch nothing.
//
// Results go to the output, errors to the error stream; with --format json both
// are JSON. Exit codes are those of package fail; findings give code 3 only from
// the command that prints them.
//
// # Limits
//
// One command at a time; no configuration file.
package cli
