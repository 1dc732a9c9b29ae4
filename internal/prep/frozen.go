package prep

import (
	"fmt"

	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
)

// frozen tells of a pot that is so cold that ice is in it; empty: it is liquid, or nobody knows where it
// freezes. What is dissolved in the liquid between its ice nobody has measured, nor how much of it is left.
func (a at) frozen(celsius float64) string {
	const dust = 0.05 // °C, half of the last digit that is printed
	if freezes, ok := icesAt(a.pot); ok && celsius < freezes-dust {
		return fmt.Sprintf("it freezes from about %.1f °C on, and is partly ice at %s °C", freezes, plain(celsius))
	}
	return ""
}

// icesAt gives where ice begins to form in a pot as it is, by what is published of alcohol in water too, in °C, of central values; false where nobody knows.
func icesAt(pot *ledger.Pot) (celsius float64, ok bool) {
	grams := map[constituent.ID]float64{}
	for _, leaf := range pot.Columns.List {
		grams[leaf.ID] = pot.Central(leaf.ID)
	}
	return solution.FreezesAt(grams)
}
