package assay

import (
	"slices"
	"strings"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/source"
)

// publishedPH is the pH that has been published of a food.
const publishedPH constituent.ID = "PH"

// calibratedAs is the tracer of what gives a row the pH that has been published of its
// food: grams of the food as it was published.
var calibratedAs = ledger.Tracer{Name: "published pH", As: potassium}

// Calibration is a published pH on which a pH rests: of a food whose own composition
// does not tell it.
type Calibration struct {
	Food      food.ID
	Low, High float64 // of what has been published, with what instruments and laboratories are off by
	Source    string  // ids of the food's table's works, separated by spaces
}

// calibration is the strong ion by which a food has its published pH: mol of charge that
// a gram lacks; below zero it is an anion.
type calibration struct {
	Calibration
	strong     []float64 // by draw
	none, most float64   // with none and with the most of the acid that nobody has stated
}

// calibrate makes the last row of a pot, just poured, have the published pH of its food,
// if that is needed. From here on this goes with what is dissolved.
func (w *walk) calibrate(pot *ledger.Pot, grams []float64) {
	row := len(pot.Rows) - 1
	if w.calibrationOf(pot.Rows[row].Profile) != nil {
		copy(pot.Carry(row, calibratedAs), grams)
	}
}

// calibrationOf gives the calibration of a food; nil where its composition tells its pH,
// or nobody has published one.
func (w *walk) calibrationOf(profile *food.Profile) *calibration {
	c, ok := w.calibrations[profile]
	if !ok {
		c = w.findCalibration(profile)
		w.calibrations[profile] = c
	}
	return c
}

// findCalibration solves a gram of the food as its composition has it. Where that leaves
// the pH open, the published one is drawn and each draw gets the strong ion that it
// lacks, as from a reading; the acids stay as uncertain as they were.
func (w *walk) findCalibration(profile *food.Profile) *calibration {
	value, ok := profile.Food.Value(publishedPH)
	if !ok || !food.Stated(value.Amount) || source.IsFromMemory(value.Source) {
		return nil
	}
	pot := ledger.New(w.columns, w.amounts.n)
	pot.Pour(profile, w.drawer.PerGram(profile), constantColumn(w.amounts.n, 1), "")
	if w.unsolvable(pot) != "" || w.tells(pot) {
		return nil
	}
	low, high := publishedRange(value)
	c := &calibration{
		Calibration: Calibration{Food: profile.Food.ID, Low: low, High: high, Source: value.Source},
		strong:      make([]float64, w.amounts.n),
	}
	pH := make([]float64, w.amounts.n)
	estimate.Input{
		Central: value.Amount, Shape: estimate.Uniform, Low: low, High: high,
		Stream: estimate.KeyOf(w.amounts.seed, "unmeasured", string(publishedPH), c.Food.Table, c.Food.Code),
	}.Fill(pH)
	w.journal.write(Tables, "published pH of "+c.Food.String(), pH)
	if err := c.solve(w.ionsOf(pot, w.amounts.n), pH); err != nil {
		return nil // the food stays withheld, with its own reason
	}
	return c
}

// solve finds the strong ion that a gram lacks of a pH, draw by draw, and at central values
// with none and with the most of its unknown acid.
func (c *calibration) solve(in ions, pH []float64) error {
	err := eachDraw(in.n, func(s *acid.Solver, sol *acid.Solution, from, to int) error {
		in.fill(sol, 0)
		near, err := s.Titrate(sol, pH[0], acid.State{}) // each draw from the central one: any number of cores gives the same
		if err != nil {
			return err
		}
		for d := from; d < to; d++ {
			in.fill(sol, d)
			state, err := s.Titrate(sol, pH[d], near)
			if err != nil {
				return err
			}
			c.strong[d] = state.Base * sol.Solvent
		}
		return nil
	})
	if err != nil {
		return err
	}
	s, err := acid.NewSolver(MeterCelsius)
	if err != nil {
		return err
	}
	c.none, c.most = c.strong[0], c.strong[0]
	ends, sol := in.nobody.ends(), acid.New(0)
	if len(ends) < 2 {
		return nil
	}
	for i, strong := range []*float64{&c.none, &c.most} {
		in.fill(sol, 0)
		ends[i](sol)
		state, err := s.Titrate(sol, pH[0], acid.State{})
		if err != nil {
			return err
		}
		*strong = state.Base * sol.Solvent
	}
	return nil
}

// publishedRange gives where the pH of a food may lie: as published, with what a meter is
// off by. One work says nothing of other laboratories and crops, so its range is at least
// what such works differ by.
func publishedRange(value food.Value) (low, high float64) {
	low, high = value.Amount, value.Amount
	if food.Stated(value.Low) && food.Stated(value.High) {
		low, high = value.Low, value.High
	}
	if meter := mustInstrument(readPH).half; len(strings.Fields(value.Source)) > 1 {
		return low - meter, high + meter
	}
	apart := spanOf("pH from one work")
	return min(low, value.Amount+apart.low), max(high, value.Amount+apart.high)
}

// tells reports whether a pot's composition tells its pH: what withholdUnknown would let
// be printed.
func (w *walk) tells(pot *ledger.Pot) bool {
	in := w.ionsOf(pot, min(pot.N, chemistryDraws+1))
	pH := make([]float64, in.n)
	err := in.each(func(s *acid.Solver, sol *acid.Solution, near, _ acid.State, d int) error {
		state, err := in.solve(s, sol, near, MeterCelsius)
		if err != nil {
			return err
		}
		pH[d] = state.PH
		return nil
	})
	c := &Chemistry{PHMeter: Estimate{Result: known((&meter{}).Of(pH), "pH")}}
	if err != nil || c.widen(in, pot) != nil {
		return false
	}
	c.withholdUnknown(in, "", surely{})
	return c.PHMeter.Why == ""
}

// calibrated gives the grams with which a row has its food's published pH; nil if it has
// not.
func calibrated(pot *ledger.Pot, row int) []float64 {
	for _, t := range pot.Traced(row) {
		if t.Tracer == calibratedAs {
			return t.Column
		}
	}
	return nil
}

// vouched reports whether a pot holds a food whose own composition does not tell its pH.
func (w *walk) vouched(pot *ledger.Pot) bool {
	return slices.ContainsFunc(pot.Rows, func(r ledger.Row) bool { return w.calibrationOf(r.Profile) != nil })
}

// addVouched adds what the table of a row left out whose food has its published pH: then
// what is unknown of its acids and metals does not leave the pH open.
func (w *walk) addVouched(in *ions, pot *ledger.Pot, row int) {
	drawn := newIons(in.n)
	w.addUnmeasured(&drawn, pot, row)
	for id, col := range drawn.grams {
		for d, x := range col {
			in.grams[id][d] += x
		}
	}
	in.protein, in.aired = in.protein || drawn.protein, in.aired || drawn.aired
	for id, g := range drawn.nobody.acids {
		in.vouched.add(id, g)
	}
	in.untold = append(in.untold, drawn.unknown...)
}

// rest adds the strong ion of a calibration: potassium, or chloride where an anion is
// missing.
func (in *ions) rest(c *calibration, grams []float64) {
	for d := range in.n {
		mol := c.strong[d] * grams[d]
		in.grams[potassium][d] += max(mol, 0) * constituent.Must(potassium).Molar
		in.grams[chloride][d] += max(-mol, 0) * constituent.Must(chloride).Molar
	}
	in.vouched.lessNone += (c.none - c.strong[0]) * grams[0]
	in.vouched.lessMost += (c.most - c.strong[0]) * grams[0]
	if !slices.Contains(in.restsOn, c.Calibration) {
		in.restsOn = append(in.restsOn, c.Calibration)
	}
}

// forget takes the published pH of foods back, since the pH has been read.
func (w *walk) forget(pot *ledger.Pot) {
	for row := range pot.Rows {
		if calibrated(pot, row) != nil {
			pot.Shed(row, calibratedAs)
		}
	}
}
