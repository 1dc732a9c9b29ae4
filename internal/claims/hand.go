package claims

import (
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// handUnits are the units of what steps state, by the key of the step; a step that means another by it comes first.
var handUnits = map[string]struct {
	unit   string
	factor float64
}{
	"chill/to": {"°C", 1}, "cool/to": {"°C", 1}, "heat/to": {"°C", 1},
	"at": {"°C", 1}, "from": {"°C", 1}, "ice": {"°C", 1}, "for": {"min", 1}, "brix": {"°Bx", 1},
	"melt": {"g", 1}, "collect": {"g", 1}, "to": {"g", 1}, "charge": {"g", 1}, "left": {"g/l", unit.Kilo},
	"share": {"%", unit.Hundred},
}

// byHand tells what a hand weighed or a step states, between what it may be, as the file writes it.
func (l *Link) byHand(in estimate.Entry, d *drink.Drink) {
	what, of, factor := note.Place(in.Name), "", 1.0
	parts := strings.Split(in.Name, "/")
	if line, ok := lineAt(d, in.Name); ok && line.Portion == "" && line.Amount.Measure.Factor > 0 {
		of, factor = " "+line.Amount.Measure.Name, 1/line.Amount.Measure.Factor
	} else if n := len(parts); n > 1 {
		as, ok := handUnits[parts[n-2]+"/"+parts[n-1]]
		if !ok {
			as, ok = handUnits[parts[n-1]]
		}
		if ok {
			of, factor = " "+as.unit, as.factor
		}
	}
	s := estimate.Summarise(in.Column)
	between := note.Number(s.Low*factor) + " to " + note.Number(s.High*factor) + of
	l.Name, l.Rests = "the amount of "+what, between
	l.Asked, l.Answer = "how exactly do you measure "+what+"?", between+", nine times of ten"
}

// stepWords says of which step of which pot a factor is, and of what: "the step clarify of punch (fat)".
func stepWords(name string) string {
	path, what, _ := strings.Cut(name, ": ")
	parts := strings.Split(path, "/")
	step := parts[len(parts)-1]
	words := "the step " + step
	if len(parts) > 1 {
		words += " of " + note.Place(strings.Join(parts[:len(parts)-1], "/"))
	}
	what, _, _ = strings.Cut(what, ", ") // what comes after tells rows of a table apart
	for _, c := range constituent.All() {
		if string(c.ID) == what {
			what = c.Words()
		}
	}
	if what = strings.Trim(what, "* "); what != "" {
		words += " (" + what + ")"
	}
	return words
}
