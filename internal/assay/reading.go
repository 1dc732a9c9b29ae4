package assay

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// disagreement is how many standard deviations a reading may lie from the
// recipe before that is said.
const disagreement = 3

// reading conditions a pot on its measured mass. In logarithms, draw by draw,
//
//	x′ = x + K·(z + ε − h),   K = cov(x, h) / (var(h) + r²)
//
// with h the mass that the recipe gives, z the reading, r its spread and ε drawn
// from it (0 at central values); then the mass is closed on h′ = h + K_h·(z + ε −
// h). The least certain entry moves most; contributions stay.
func (w *walk) reading(pot *ledger.Pot, m *drink.Measured) {
	if m.Mass == nil {
		return
	}
	path := m.StepPath() + "/mass"
	if m.Mass.Measure.Kind != unit.Mass {
		w.faults.Add(m.At(), "write it in g", "a mass is read in %s", quote(m.Mass.Measure.Name))
		return
	}
	h, read := pot.Mass(), w.amounts.column(*m.Mass, path)
	if h[0] <= 0 || read[0] <= 0 {
		w.faults.Add(m.At(), "check the amounts", "a mass was read, but the pot or the reading is empty")
		return
	}
	z := read[0]
	r := w.amounts.spread(*m.Mass) / z
	logs(h)
	for d := range read {
		read[d] = math.Log(z) + read[d]/z - 1 // ε is r wide in logarithms too, however coarse the scale
	}
	variance := r * r
	if w.amounts.n > 2 {
		variance += stat.Variance(h[1:], nil)
	}
	move := make([]float64, len(h))
	for d := range move {
		move[d] = read[d] - h[d]
	}
	w.noteDisagreement(m, move[0], math.Sqrt(variance), r)
	if variance == 0 || w.amounts.n <= 2 {
		return
	}
	target := make([]float64, len(h))
	gain := stat.Variance(h[1:], nil) / variance
	for d := range target {
		target[d] = math.Exp(h[d] + gain*move[d])
	}
	condition(pot, h, move, variance)
	closeOn(pot, target)
}

// condition moves each entry of a pot by its covariance with h.
func condition(pot *ledger.Pot, h, move []float64, variance float64) {
	u := make([]float64, pot.N)
	for row := range pot.Rows {
		for col := range pot.Columns.List {
			cell := pot.Cell(row, col)
			if !positive(cell) {
				continue
			}
			copy(u, cell)
			logs(u)
			k := stat.Covariance(u[1:], h[1:], nil) / variance
			for d := range cell {
				cell[d] *= math.Exp(k * move[d])
			}
		}
	}
}

// closeOn scales the mass-additive entries so that the pot weighs target.
func closeOn(pot *ledger.Pot, target []float64) {
	mass := pot.Mass()
	cols := pot.Columns.Below(constituent.Mass)
	for row := range pot.Rows {
		for _, col := range cols {
			for d := range pot.Cell(row, col) {
				if mass[d] > 0 {
					pot.Cell(row, col)[d] *= target[d] / mass[d]
				}
			}
		}
	}
}

func (w *walk) noteDisagreement(m *drink.Measured, move, sd, r float64) {
	if math.Abs(move) <= disagreement*max(sd, r) {
		return
	}
	w.notes = append(w.notes, Note{
		Kind: "reading disagrees",
		Text: fmt.Sprintf("%s: the mass read differs from the recipe by %+.1f %%, more than %d standard deviations: check the reading and the recipe", m.StepPath(), 100*math.Expm1(move), disagreement),
	})
}

func logs(col []float64) {
	for d, x := range col {
		col[d] = math.Log(x)
	}
}

func positive(col []float64) bool {
	for _, x := range col {
		if x <= 0 {
			return false
		}
	}
	return true
}
