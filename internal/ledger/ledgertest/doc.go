// Package ledgertest is what the tests of several packages ask of a pot.
//
// # Limits
//
// It looks at columns alone: bounds and what rows carry beside their constituents are
// the business of each test.
package ledgertest
