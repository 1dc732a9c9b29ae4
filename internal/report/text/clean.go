package textreport

import "sipsum/internal/clean"

// The most runes that a name and a longer text may have on a page.
const (
	mostName  = clean.MostName
	mostProse = clean.MostProse
)

// Clean makes a text of a file or a table harmless on a terminal.
func Clean(text string, most int) string { return clean.Text(text, most) }
