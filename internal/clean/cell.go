package clean

import (
	"strings"
	"unicode/utf8"
)

// runs are the characters that begin what a spreadsheet runs or reads as a sign of its own.
// The wide forms are those that a keyboard for Japanese writes.
const runs = "=+-@＝＋－＠"

// Cell makes a text of a stranger a cell of a table that no spreadsheet runs (OWASP, CSV injection): an apostrophe
// stands before what would be.
func Cell(s string) string {
	s = Prose(s)
	if first, _ := utf8.DecodeRuneInString(s); s != "" && strings.ContainsRune(runs, first) {
		return "'" + s
	}
	return s
}
