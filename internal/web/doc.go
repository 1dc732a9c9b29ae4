// Package web is the local page: sipsum serve.
//
// # Model
//
// A Server answers requests about the drink files of one folder. What it calculates it asks of a
// Kitchen, what it reads and saves of a Folder; both are interfaces of this package. Pages are made
// by html/template on the server; small modules of plain JavaScript send what is typed and put the
// pieces that come back in their places, and without JavaScript the same forms are submitted whole.
// Routes stand in one file for each part of the house: folder.go what lies in it, bench.go the page
// of a drink, and so on; each adds its own to the mux.
//
// # Limits
//
// It is made for one person at one machine: it listens there, and knows no accounts.
package web
