package titration

import (
	"fmt"
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// Titrate puts the spectrum of a pot's bench titrations in the place of its own ions; one
// with acid and one with base are two ends of one curve. From here on the rows carry
// grams of the liquid as it was titrated, shared out by their water, and these go with
// what is dissolved.
func (r *Rig) Titrate(pot *ledger.Pot, read []*drink.Measured) {
	m := read[0]
	mass, water := pot.Mass(), pot.Total(constituent.Water)
	if !(mass[0] > 0 && water[0] > 0) {
		r.Faults.Add(m.At(), "check the recipe", "there is no water in what was titrated")
		return
	}
	solvent := (water[0] + pot.Central(constituent.Alcohol)) / mass[0]
	in := r.Lab.IonsOf(pot, r.Lab.Solved())
	b := r.sampledOf(pot, read, in, solvent)
	own := b
	own.strength = slices.Clone(b.strength)
	recipe := r.compare(pot, m, in, b)
	fit, ok := r.fit(m, b, solvent)
	if !ok {
		return
	}
	reads := r.begins(pot, m, in, r.meter(m))
	if p := r.tell(pot, m, own, solvent, recipe); p != nil {
		for d := range b.strength {
			b.strength[d] *= p.Factor[d] / own.strength[d]
		}
		if !p.Adjusted { // what an adjusted one is off by no curve takes away: it reads as it does alone
			reads = meterAsFound(m.Titration[0].PH-r.off(m, m.Titration[0].PH), p)
			r.Doubted = true
			if fit, ok = r.fit(m, corrected(b, p), solvent); !ok {
				return
			}
		}
	}
	perGram := fit.Solution(solvent / unit.Kilo)
	perGram.Solvent = 0
	shift, err := r.meterShift(fit, perGram, b.strength, reads, m, solvent/unit.Kilo)
	if err != nil {
		r.Faults.Add(m.At(), "check the points", "the titration cannot be used: %s", err.Error())
		return
	}
	t := &acidity.Titration{Of: m.What(), Lowest: fit.Lowest, Highest: fit.Highest, PerGram: perGram, Strength: b.strength, Shift: shift}
	for row := range pot.Rows {
		pot.Drop(row)
		part := pot.Of(row, constituent.Water)
		col := pot.Carry(row, t)
		for d := range col {
			if water[d] > 0 {
				col[d] = mass[d] * part[d] / water[d]
			}
		}
	}
}

// fit finds the spectrum of a curve; without one, or one that nobody can have read, it faults.
func (r *Rig) fit(m *drink.Measured, b sampled, solvent float64) (acid.Spectrum, bool) {
	fit, err := acid.Fit(b.curve)
	if err != nil {
		r.Faults.Add(m.At(), "check the points, the sample and the strength", "the titration cannot be used: %s", err.Error())
		return fit, false
	}
	if miss := fit.Worst; miss > amount.MustInstrument(amount.ReadPH).Half {
		r.note(note.Note{Kind: "titration", Text: fmt.Sprintf("%s: the points do not lie on one curve (one is off by %.2f pH): check them", note.Place(m.StepPath()), miss)})
	}
	if err := plausible(fit, solvent/unit.Kilo); err != nil {
		r.Faults.Add(m.At(), "check the volumes, the sample and the strength", "%s", err.Error())
		return fit, false
	}
	return fit, true
}

// meterShift gives the strong ion by which a draw's liquid has another pH than the
// central one: the meter may have been off, the same at all points.
func (r *Rig) meterShift(fit acid.Spectrum, perGram *acid.Solution, strength, read []float64, m *drink.Measured, solvent float64) ([]float64, error) {
	r.Lab.Ens.Journal.Write(estimate.Readings, "meter of the titration of "+m.Pot(), read)
	s, err := acid.NewSolver(acidity.MeterCelsius)
	if err != nil {
		return nil, err
	}
	own, err := s.Solve(fit.Solution(solvent), acid.State{})
	if err != nil {
		return nil, err
	}
	shift, near, sol := make([]float64, len(read)), own, acid.New(0)
	for d := range read {
		if d == 0 && strength[0] == 1 {
			continue // it reads what was read
		}
		sol.Reset(solvent)
		sol.Pour(perGram, strength[d])
		if near, err = s.Titrate(sol, own.PH+read[d]-read[0], near); err != nil {
			return nil, err
		}
		shift[d] = near.Base * solvent
	}
	return shift, nil
}
