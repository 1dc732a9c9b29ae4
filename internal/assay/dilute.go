package assay

import (
	"fmt"
	"slices"

	"sipsum/internal/drink"
	"sipsum/internal/ledger"
)

// diluteTo gives the mass to dilute to: stated, or that at which the pot reads
// the stated °Brix, since water reads none. Water brings no reading up, and none
// to nothing.
func (w *walk) diluteTo(pot *ledger.Pot, s *drink.Dilute) ([]float64, error) {
	if s.To != nil {
		return w.amounts.column(*s.To, s.StepPath()+"/to"), nil
	}
	read, mass, to := w.amounts.quantity(*s.Brix, percent, s.StepPath()+"/brix"), pot.Mass(), w.plan.lab.gauge.refracted(pot)
	// guard: no water reads nothing away
	if slices.Min(read) <= 0 || s.Brix.Number <= s.Brix.Half {
		return nil, fmt.Errorf("dilute to 0 °Bx: no water is enough for that, give the reading that it shall have")
	}
	if to[0] < read[0]*mass[0] || mass[0] <= 0 {
		there := 0.0
		if mass[0] > 0 {
			there = to[0] / mass[0] / percent
		}
		return nil, fmt.Errorf("dilute to %s °Bx: the pot reads only %s °Bx, and water brings it further down", grams(s.Brix.Number), grams(there))
	}
	for d := range to {
		to[d] /= read[d]
	}
	return to, nil
}
