// Package assaytest is what the tests of the assay and of its rooms share: foods in memory,
// and drinks calculated from their text.
//
// # Limits
//
// A library in memory finds foods by their id and by their whole name, and suggests none.
package assaytest
