// Package assaytest is what the tests of the assay and of its rooms share: foods in memory,
// drinks calculated from their text, and small pots of invented foods, of which a figure can
// be worked out on paper.
//
// # Limits
//
// A library in memory finds foods by their id and by their whole name, and suggests none.
package assaytest
