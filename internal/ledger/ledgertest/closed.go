package ledgertest

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// Closed gives the largest difference, over draws, between the mass of a pot and the
// sum of the vocabulary's top-level parts, relative to the mass: 0 when the ledger is
// whole.
func Closed(p *ledger.Pot) float64 {
	mass := p.Mass()
	parts := make([]float64, p.N)
	for _, child := range constituent.Sums().Children(constituent.Mass) {
		for d, x := range p.Total(child.ID) {
			parts[d] += x
		}
	}
	worst := 0.0
	for d := range mass {
		if mass[d] > 0 {
			worst = max(worst, math.Abs(mass[d]-parts[d])/mass[d])
		}
	}
	return worst
}
