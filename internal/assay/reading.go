package assay

import (
	"fmt"
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/ledger"
)

// disagreement is how many standard deviations a reading may lie from the
// recipe before that is said.
const disagreement = 3

// sweeps is how often what the curvature of the model leaves is taken away
// after an update. Each pass leaves a small part of the one before.
const sweeps = 4

// reading conditions a pot on all that was read of it, in one joint update. In
// logarithms, draw by draw,
//
//	x′ = x + K·(z + ε − h),   K = cov(x, h)·(cov(h) + R)⁻¹
//
// with h what the recipe gives for each reading z, R the variances of the
// instruments and ε drawn from them (0 at central values): the ensemble form of
// the least squares of recipe and readings (Evensen 2003, Ocean Dynamics 53:343,
// with perturbed observations). The least certain entry moves most, an entry
// that has nothing to do with a reading stays, contributions stay.
//
// Each reading itself moves to h′ = h + cov(h)·(cov(h) + R)⁻¹·(z + ε − h). The
// readings are not linear in the logarithms, so the pot is swept with the same K
// until it reads h′; a mass is then closed on its h′ exactly.
func (w *walk) reading(pot *ledger.Pot, m *drink.Measured) {
	list, ok := w.take(pot, m)
	if !ok {
		return
	}
	u := newUpdate(list)
	for j, r := range list {
		w.noteDisagreement(m, r, u.move[j][0], u.sd(j))
	}
	if !u.possible() {
		return
	}
	before := bulk(pot)
	gains := u.gains(pot)
	gains.apply(pot, u.move)
	for range sweeps {
		gains.apply(pot, u.left(func(kind string) []float64 { return w.expected(pot, kind) }))
	}
	for j, r := range list {
		if r.kind == readMass {
			closeOn(pot, u.target[j])
		}
	}
	growBounds(pot, before)
}

// closeOn scales the mass-additive entries so that the pot weighs exp(target).
func closeOn(pot *ledger.Pot, target []float64) {
	mass := pot.Mass()
	cols := pot.Columns.Below(constituent.Mass)
	for row := range pot.Rows {
		for _, col := range cols {
			cell := pot.Cell(row, col)
			for d := range cell {
				if mass[d] > 0 {
					cell[d] *= math.Exp(target[d]) / mass[d]
				}
			}
		}
	}
}

// bulk gives the central mass of each row.
func bulk(pot *ledger.Pot) []float64 {
	mass := make([]float64, len(pot.Rows))
	for row := range pot.Rows {
		mass[row] = pot.Of(row, constituent.Mass)[0]
	}
	return mass
}

// growBounds lets what is unknown of a row grow with the row. It does not
// shrink it: a reading of what is known says nothing of the rest.
func growBounds(pot *ledger.Pot, before []float64) {
	for row, now := range bulk(pot) {
		if now <= before[row] || before[row] <= 0 {
			continue
		}
		bounds := pot.Bounds(row)
		for i := range bounds {
			bounds[i] *= now / before[row] // NaN stays NaN
		}
	}
}

func (w *walk) noteDisagreement(m *drink.Measured, r reading, move, sd float64) {
	if math.Abs(move) <= disagreement*max(sd, r.r) {
		return
	}
	w.notes = append(w.notes, Note{
		Kind: "reading disagrees",
		Text: fmt.Sprintf("%s: the %s read differs from the recipe by %+.1f %%, more than %d standard deviations: check the reading and the recipe", m.StepPath(), r.kind, 100*math.Expm1(move), disagreement),
	})
}
