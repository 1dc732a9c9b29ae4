// Package reporttest is what the tests of the renderers share: a leaf that has every form, a
// drink whose every name tries to be more than a name, and the leaves of the demo drinks.
//
// # Limits
//
// The figures of the made-up leaf speak of no food; those of the demo drinks are tested
// elsewhere. Drinks are calculated with few draws.
package reporttest
