package textreport

import "sipsum/internal/figure"

// mostDigits is how many significant digits a figure has at most.
const mostDigits = figure.MostDigits

// A page writes the digits of a figure as every form does.
var (
	place       = figure.Place
	firstPlace  = figure.FirstPlace
	rounded     = figure.Rounded
	span        = figure.Span
	plain       = figure.Plain
	plainSpread = figure.PlainSpread
)
