package drink

import (
	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// Stands is how a glass stands once it is poured. What is not stated is nil.
type Stands struct {
	Place fail.Place
	Room  *Quantity    // °C
	Ice   *unit.Amount // in each glass as it is poured; none of it is in the drink as calculated
	Melts *Quantity    // of the ice, g/min
	Loses *Quantity    // of the gas that is there, % a minute
}

// What a room, ice and gas can be: slips of the pen are kept out.
var (
	roomScale  = unit.Scale{What: "the temperature of a room", Units: []string{"°C"}, Low: 0, High: 50, Example: "22 °C"}
	meltScale  = unit.Scale{What: "how fast ice melts", Units: []string{"g/min"}, Low: 0, High: 100, Example: "1.5 g/min ± 0.5 g/min"}
	escapeRate = unit.Scale{What: "how fast gas leaves", Units: []string{"%/min"}, Low: 0, High: 100, Example: "6 %/min ± 2 %/min"}
)

var standsKeys = grammar[Stands]{"stands", []key[Stands]{
	scaled("room", "how warm the room is: 22 °C", roomScale, func(s *Stands) **Quantity { return &s.Room }),
	mass("ice", "the ice in each glass as it is poured, beside the drink: 60 g ± 10 g", func(s *Stands) **unit.Amount { return &s.Ice }),
	scaled("melts", "how much of the ice melts a minute, if you weighed it: 1.5 g/min", meltScale, func(s *Stands) **Quantity { return &s.Melts }),
	scaled("loses", "how much of its gas a glass loses a minute, if you measured it: 6 %/min", escapeRate, func(s *Stands) **Quantity { return &s.Loses }),
}}

// readStands reads how a glass stands.
func readStands(r *reader, n ast.Node, _ string) *Stands {
	s := &Stands{Place: r.nodeAt(n)}
	found, ok := standsKeys.read(r, s, n)
	if ok && s.Melts != nil && !found.has("ice") {
		r.faults.Add(found["melts"], "write how much ice is in a glass beside it: ice: 60 g", "melts is of ice, and stands has none")
	}
	return s
}

// warmestIce is up to where ice lies in a drink and the drink's temperature still means something: above, it
// melts as it is poured, and how much of it the heat tells.
var warmestIce = unit.LimitOf("drink on ice", "°C").High

// checkStands reports ice in a drink that is served too warm for it.
func (w *whole) checkStands() {
	s, at := w.drink.Stands, w.drink.At
	if s == nil || s.Ice == nil || at == nil || at.Number <= warmestIce {
		return
	}
	w.file.faults.Add(s.Place, "cool it first: finish: - chill: {from: "+at.String()+", to: 4 °C}, which tells how much of the ice melts, and write at: 4 °C", "ice melts at once in a drink of %s", at)
}
