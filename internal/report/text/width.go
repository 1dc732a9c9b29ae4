package textreport

import "sipsum/internal/typeset"

// Widths and lines are counted in columns of a terminal.
func width(text string) int             { return typeset.Width(text) }
func left(text string, n int) string    { return typeset.Left(text, n) }
func right(text string, n int) string   { return typeset.Right(text, n) }
func fit(text string, n int) string     { return typeset.Fit(text, n) }
func leaders(text string, n int) string { return typeset.Leaders(text, n) }
func wrap(text string, n int) []string  { return typeset.Wrap(text, n) }
