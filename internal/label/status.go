package label

import "slices"

// The statuses of a source: an official text was read, a copy or a quotation of it was, or
// nobody has seen it.
const (
	Verified   = "verified"
	Secondary  = "secondary"
	Unverified = "unverified"
)

var statuses = []string{Verified, Secondary, Unverified}

// cited is the source of a cell of the rules, and how well it is known.
type cited struct{ source, status string }

// worst gives the weakest of the statuses.
func worst(list []cited) string {
	at := 0
	for _, c := range list {
		at = max(at, slices.Index(statuses, c.status))
	}
	return statuses[at]
}

// Open is a cell of the rules that nobody has verified.
type Open struct {
	Cell   string // "row carbohydrate", "rounding of energy from 0"
	Source string
}

// opens notes a cell of the rules if it is not verified.
func (r *ruleset) opens(cell string, c cited) cited {
	if c.status == Unverified {
		r.open = append(r.open, Open{Cell: cell, Source: c.source})
	}
	return c
}
