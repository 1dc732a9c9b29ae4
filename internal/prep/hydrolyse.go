package prep

import (
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// Hydrolyse splits a share (a column) of the lactose into glucose and galactose,
// as lactase does; the water comes out of the pot. Limits: the oligosaccharides
// that lactase also makes are counted as the two sugars.
func Hydrolyse(pot *ledger.Pot, share []float64) (Outcome, error) {
	return Outcome{}, splitSugar(pot, hydrolysis(constituent.Lactose, constituent.Glucose, constituent.Galactose), share)
}
