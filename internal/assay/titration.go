package assay

import (
	"fmt"
	"math"
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// titration is what a bench titration says of a liquid: its buffer spectrum (package
// acid), which stands for all acids and ions of the rows that were titrated.
type titration struct {
	of              string
	lowest, highest float64        // pH that were titrated
	perGram         *acid.Solution // sites and strong ions in a gram of the liquid, without its solvent
	strength        []float64      // by draw: what a gram holds over what it holds at central values
	shift           []float64      // by draw: mol of strong ion in a gram that moves the pH as the meter may be off
}

// As is what a titrated liquid goes with.
func (*titration) As() constituent.ID { return potassium }

// titratedPart is how much of a titrated liquid a pot holds, by draw.
type titratedPart struct {
	*titration
	grams []float64
}

// pour adds the part to a solution that has its solvent already.
func (t titratedPart) pour(sol *acid.Solution, d int) {
	sol.Pour(t.perGram, t.grams[d]*t.strength[d])
	sol.Strong += t.grams[d] * t.shift[d]
	sol.Background += t.grams[d] * math.Abs(t.shift[d]) / 2
}

// titrated reports whether a row's ions come from a titration.
func titrated(pot *ledger.Pot, row int) bool {
	return slices.ContainsFunc(pot.Traced(row), func(t ledger.Traced) bool {
		_, is := t.Tracer.(*titration)
		return is
	})
}

func (in *ions) addTitrated(t *titration, grams []float64) {
	for i, part := range in.titrated {
		if part.titration == t {
			for d := range in.n {
				in.titrated[i].grams[d] += grams[d]
			}
			return
		}
	}
	in.titrated = append(in.titrated, titratedPart{t, slices.Clone(grams[:in.n])})
}

// titrate puts the spectrum of a pot's bench titrations in the place of its own ions; one
// with acid and one with base are two ends of one curve. From here on the rows carry
// grams of the liquid as it was titrated, shared out by their water, and these go with
// what is dissolved.
func (r *rig) titrate(pot *ledger.Pot, read []*drink.Measured) {
	m := read[0]
	mass, water := pot.Mass(), pot.Total(constituent.Water)
	if !(mass[0] > 0 && water[0] > 0) {
		r.faults.Add(m.At(), "check the recipe", "there is no water in what was titrated")
		return
	}
	solvent := (water[0] + pot.Central(constituent.Alcohol)) / mass[0]
	b := r.sampledOf(pot, read, solvent)
	r.compare(pot, m, b)
	fit, err := acid.Fit(b.curve)
	if err != nil {
		r.faults.Add(m.At(), "check the points, the sample and the strength", "the titration cannot be used: %s", err.Error())
		return
	}
	if miss := fit.Worst; miss > mustInstrument(readPH).half {
		r.note(Note{Kind: "titration", Text: fmt.Sprintf("%s: the points do not lie on one curve (one is off by %.2f pH): check them", m.StepPath(), miss)})
	}
	t := &titration{of: potOf(m), lowest: fit.Lowest, highest: fit.Highest, perGram: fit.Solution(solvent / kilo), strength: b.strength}
	if err := plausible(fit, solvent/kilo); err != nil {
		r.faults.Add(m.At(), "check the volumes, the sample and the strength", "%s", err.Error())
		return
	}
	t.perGram.Solvent = 0
	if t.shift, err = r.meterShift(fit, t, m, solvent/kilo); err != nil {
		r.faults.Add(m.At(), "check the points", "the titration cannot be used: %s", err.Error())
		return
	}
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

// potOf names what was titrated, for a reader: a component, or the drink.
func potOf(m *drink.Measured) string {
	if path := pathOf(m); len(path) > 0 {
		return path[0]
	}
	return "the drink"
}

// meterShift gives the strong ion by which a draw's liquid has another pH than the
// central one: the meter may have been off, the same at all points.
func (r *rig) meterShift(fit acid.Spectrum, t *titration, m *drink.Measured, solvent float64) ([]float64, error) {
	meter := drink.Quantity{Number: m.Titration[0].PH, Half: mustInstrument(readPH).half}
	read := r.hand.drawQuantity(meter, 1, m.StepPath()+"/titration")
	r.lab.ens.Journal.Write(estimate.Readings, "meter of the titration of "+readPot(m), read)
	s, err := acid.NewSolver(MeterCelsius)
	if err != nil {
		return nil, err
	}
	own, err := s.Solve(fit.Solution(solvent), acid.State{})
	if err != nil {
		return nil, err
	}
	shift, near, sol := make([]float64, len(read)), own, acid.New(0)
	for d := 1; d < len(read); d++ {
		sol.Reset(solvent)
		sol.Pour(t.perGram, t.strength[d])
		if near, err = s.Titrate(sol, own.PH+read[d]-read[0], near); err != nil {
			return nil, err
		}
		shift[d] = near.Base * solvent
	}
	return shift, nil
}
