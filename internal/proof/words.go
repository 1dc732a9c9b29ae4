package proof

import (
	"strconv"
	"strings"
)

// Words writes a value as its table has it: amount, spread, count of samples, state.
func (v Value) Words() string {
	text := "not stated"
	switch {
	case v.Amount != nil:
		text = plain(*v.Amount)
		if v.SD != nil {
			text += " ± " + plain(*v.SD)
		}
		text += " " + v.Unit
	case v.Most != nil:
		text = "at most " + plain(*v.Most) + " " + v.Unit
	}
	if v.Low != nil && v.High != nil {
		text += " (" + plain(*v.Low) + " to " + plain(*v.High) + ")"
	}
	if v.N > 0 {
		text += ", n " + strconv.Itoa(v.N)
	}
	return strings.TrimSpace(text) + ", " + v.State
}

func plain(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
