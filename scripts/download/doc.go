// Command download lists where the agencies offer the tables that sipsum reads,
// and fetches the files of a format into a folder.
//
//	go run ./scripts/download                    list
//	go run ./scripts/download -get cnf -to DIR   fetch
//	go run ./scripts/download -get sr -to DIR -sha256 HEX
//
// It asks for the file at the address of releases.csv, once, and writes it only
// when it is whole; a file that is there already stays as it is. It prints the
// SHA-256 of what came, and refuses a file whose sum is not the one of
// releases.csv or of -sha256.
//
// # Limits
//
// Addresses and licences carry their source; most were not opened when they were
// entered, and agencies move files. A page of HTML in place of a file is refused: the
// publisher may want its terms read first. The program accepts no terms for
// anybody, sends no cookies and follows redirects only to https. Where no
// address is known it names the page.
package main
