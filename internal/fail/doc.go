// Package fail is the one error type that sipsum shows to people.
//
// An Error carries one or more faults. A Fault says what is wrong, where
// (file:line:col, as far as known) and what to do next. Readers collect all the
// faults of a file before they give up, so a drink file with five faults
// reports five. Every Error also carries the exit code of the program; the
// table of codes is in code.go and nowhere else.
//
// An error that is not a *Error and reaches the command line is a bug of ours:
// it is printed whole and says so.
//
// # Limits
//
// The package formats no faults: renderers decide between text and JSON.
package fail
