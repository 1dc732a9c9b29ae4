// Package web is the local page: sipsum serve.
//
// # Model
//
// A Server answers requests about the drink files of one folder. What it calculates it asks of a
// Kitchen, what it reads and saves of a Folder; both are interfaces of this package. Pages are made
// by html/template on the server; small modules of plain JavaScript send what is typed and put the
// pieces that come back in their places, and without JavaScript the same forms are submitted whole.
//
// A panel (panel.go) is a page of its own and a piece beside the bench: foods by their names and by what they
// hold, amounts that are fitted, a food that gives way to another, a claim that is tried. It reads the text as it is
// typed, and changes nothing by itself: its buttons ask the bench for an edit. The stage, the guest's card and the
// allergens (stage.go, guest.go) are of the drink as it is saved, with the draws of what is printed.
//
// Routes stand in one file for each part of the house: folder.go what lies in it, bench.go the page
// of a drink, and so on; each adds its own to the mux.
//
// # Limits
//
// It is made for one person at one machine: it listens there, and knows no accounts.
package web
