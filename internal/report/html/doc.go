// Package htmlreport prints the leaves of a sheet as pages for a browser and for paper: the
// card, the guest's and the stage's card, the allergens, the menu.
//
// # Model
//
// A page is one file: its style is inside, it fetches nothing, holds no script and forbids
// both. It is real headings, lists and tables, in an order that reads without style; what is
// emphasised is bold or boxed, what nobody has determined is hatched and says so in words,
// and no sign stands without its word. Texts are escaped by html/template.
//
// On a screen the page takes the width that there is. On paper it is of one size (a6, a5,
// letter), black on white, and as large as its text allows to stay on one page (paper.go);
// below the least size that is read with ease it takes another page.
//
// # Limits
//
// How many lines a text takes is estimated from its letters: a font much wider than usual may
// need a second page. The whole sheet has no page yet.
package htmlreport
