// Command sipsum assays signature drinks: see the README.
//
// # Limits
//
// It does nothing itself: package cli is the program, this gives it the arguments and the
// exit code to the shell.
package main
