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
// What is handed out (card, allergens, menu) has further forms, and a file of its own if asked
// (output.go): written whole, beside what was there, and put in its place in one step. A menu
// tells the faults of all its drinks before it prints anything.
//
// Many drinks are assayed side by side and written in the order of the walk (walk.go, many.go): the database is opened
// before the first, then nothing of the app is written to but the two streams, by one goroutine. A line is written in one
// piece; an interruption waits for its end, a second one does not.
//
// What a designer begins with is a file of its own, start.drink.yaml: new writes it under the
// drink's name, by the same way by which it copies any other drink (newname.go), and never over
// what is there.
//
// What a fit finds is written into a copy of the drink only if that is asked for (fit.go), and only if
// the copy, read again where it is to stand, gives the figures that were told.
//
// An interruption (SIGINT) gives exit code 130 whatever the command does: it may
// leave tidily in a moment; if it does not hear, it is left as it is.
//
// The database is the file that the user names, or one in the data folder. One
// that can only be read is read if it holds the core table of this sipsum; where
// there is no other place the command works from memory and says so once. A table
// is loaded and removed only where that is kept, and a release that falls short of
// its edition (data/editions.csv), or of what it would replace, only with --force.
//
// # Limits
//
// One command at a time; no configuration file. Of a folder with many files all names are in memory at once; links that
// lead to the same folder by many ways are followed by each.
package cli
