package source

import "strings"

// FromMemory marks a figure that nobody has seen in print while entering it.
// Such figures are never printed as evidence.
const FromMemory = "from memory"

// Table is one release of a published food-composition table.
type Table struct {
	ID        string // short name in sipsum, such as "sr"
	Format    string // the reader that understands it
	Title     string
	Edition   string
	Publisher string
	Licence   string
	Citation  string // as the publisher asks for it
	Hash      string // of the files that were read, hexadecimal
}

// Work is one citable source of single values.
type Work struct {
	ID       string
	Citation string
	URL      string
	Licence  string
	Grade    string // A to D
	Note     string
}

// IsFromMemory reports whether a source text admits that it is from memory.
func IsFromMemory(text string) bool { return strings.Contains(text, FromMemory) }
