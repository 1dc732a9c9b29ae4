package prep

import (
	"fmt"

	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
)

// frozen tells of a pot that is so cold that ice is in it; empty: it is liquid, or nobody knows where it
// freezes. What is dissolved in the liquid between its ice nobody has measured, nor how much of it is left.
func frozen(pot *ledger.Pot, celsius float64) string {
	const dust = 0.05 // °C, half of the last digit that is printed
	if freezes, ok := liquid.FreezesAt(pot); ok && celsius < freezes-dust {
		return fmt.Sprintf("it freezes from about %.1f °C on, and is partly ice at %s °C", freezes, plain(celsius))
	}
	return ""
}
