package textreport

// The rounding and the wrapping have rules of their own to be tested.
var (
	Place   = place
	Rounded = rounded
	Upward  = upward
	Span    = span
	Wrap    = wrap
	Width   = width
	Signs   = signs
	Grouped = grouped
)

// MostDigits is how many significant digits a figure has at most.
const MostDigits = mostDigits

// Words gives the words of every constituent on a page, by id.
func Words() map[string]string {
	words := map[string]string{}
	for _, g := range groups() {
		for _, l := range g.lines {
			words[string(l.id)] = l.words
		}
	}
	return words
}
