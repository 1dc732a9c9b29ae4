// Package batchtest is what tests of batches share: a drink as a file would have it that serves a
// whole batch.
//
// # Limits
//
// It changes the drink that it is given. What a run finds by itself, a dose to a reading, it leaves.
package batchtest
