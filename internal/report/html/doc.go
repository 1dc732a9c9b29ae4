// Package htmlreport prints pages for a browser and for paper: the sheet of a drink, its proof pack, and its
// leaves, the card, the guest's and the stage's card, the allergens, the menu.
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
// A sheet (sheet.html) is one file of several pages: the brief with its pictures and the card are a
// page each, made smaller as far as they have to be (sheetpaper.go); the rest follows. Its pictures
// are pieces of package svgreport, as wide as the page lets them be, beside the words that say the
// same. Each figure names where the documents have it (data-figure), by which tests hold the page
// to them. On paper every hue is a grey.
//
// A proof pack (proof.html) is a page too: each figure opens to the pots, foods and rows that bring it. The
// pack stands behind them as a block of data, which no browser runs, and the page ends with its seal.
//
// # Limits
//
// How many lines a text takes is estimated from its letters: a font much wider than usual may
// need a second page. A sheet is made smaller by CSS zoom; a browser that does not know it takes
// more pages.
package htmlreport
