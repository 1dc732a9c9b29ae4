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
// A request comes through a door, link by link (Serving, secure.go). It has to call this machine by a name of
// its own, so that no name of somebody else's leads a page of theirs to ours (DNS rebinding). What another page sends is refused,
// by Origin and Sec-Fetch-Site. Where others may come there are keys (session.go): a token that is good once is exchanged, by a press of a
// button, for a cookie of this browser. It is heard to its end, and no further than a drink file may be long (limit.go), before it
// waits for its turn: two calculate at once. Newer input of the same browser to the same address stops the older.
// The answer is written down before it is sent, so that who takes it slowly holds no turn. No page has a script, a style or a picture from anywhere else
// (the Content-Security-Policy). The log says which route failed, and nothing that anybody typed.
//
// A page that changes a drink sends the text as typed and the mark of the text it began from (base). If the file is no longer
// that, both texts are shown and nothing is written (save.go). A comment at a line of a drink is a comment of its file.
//
// # Limits
//
// It is made for one person at one machine, and knows no accounts: who has come in may do everything. What is sent is not
// encrypted, so others are let in within a network of one's own only. Browsers send a cookie to every port of a
// machine: a server on another port of the same machine sees it. Two tabs of one browser at the same drink are one: the newer input
// stops what the other has asked for, and a save from the one is an outside edit to the other.
package web
