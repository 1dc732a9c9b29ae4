package acidity

import (
	"errors"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

var errDry = errors.New("there is no water in it")

// Acidity gives what a meter and a burette read of a pot, draw by draw: its pH, and
// its titratable acidity to EndPoints[0] in g/100 g as citric acid.
func (lab *Laboratory) Acidity(pot *ledger.Pot) (pH, per100g []float64, err error) {
	return lab.IonsOf(pot, pot.N).Read(pot)
}

// Read gives what a meter and a burette read of a pot that holds these ions.
func (in Ions) Read(pot *ledger.Pot) (pH, per100g []float64, err error) {
	if pot.Central(constituent.Water) <= 0 {
		return nil, nil, errDry
	}
	mass := pot.Mass()
	pH, per100g = make([]float64, pot.N), make([]float64, pot.N)
	err = in.Each(func(s *acid.Solver, sol *acid.Solution, near, end acid.State, d int) error {
		read, err := in.Solve(s, sol, near, MeterCelsius)
		if err != nil {
			return err
		}
		pH[d] = read.PH
		if err = Degas(s, sol, read); err != nil {
			return err
		}
		titrated, err := s.Titrate(sol, EndPoints[0], end)
		if err != nil {
			return err
		}
		per100g[d] = AsCitric(titrated.Base*sol.Solvent) / mass[d]
		return nil
	})
	return pH, per100g, err
}

// AsCitric gives mol of base as citric acid in hundredths of a gram: over grams of a
// liquid, g/100 g.
func AsCitric(base float64) float64 {
	return AsGrams(unit.Hundred * base)
}

// AsGrams gives mol of base as grams of citric acid.
func AsGrams(base float64) float64 { return base * acid.All()[acid.Must("citric")].Equivalent() }

// ModelError draws what the pH of a composition is off by even if every amount is
// right. It is the pot's own.
func ModelError(ens estimate.Ensemble, path string) []float64 {
	s := SpanOf("model")
	return ens.Column(estimate.Input{Shape: estimate.Uniform, Low: s.Low, High: s.High, Stream: ens.Stream("pH model", path)})
}

// Central gives the equilibria of the central values, as it stands and at the end point
// of a titration: every draw is solved from there, so that none depends on another.
func (in Ions) Central(s *acid.Solver, sol *acid.Solution) (own, end acid.State, err error) {
	in.Fill(sol, 0)
	if own, err = in.Solve(s, sol, acid.State{}, MeterCelsius); err != nil {
		return own, end, err
	}
	end, err = s.Titrate(sol, EndPoints[0], own)
	return own, end, err
}

// Each works off the draws of a liquid: work gets the solution of draw d, and the
// equilibria of the central values to begin from.
func (in Ions) Each(work func(s *acid.Solver, sol *acid.Solution, own, end acid.State, d int) error) error {
	return EachDraw(in.N, func(s *acid.Solver, sol *acid.Solution, from, to int) error {
		own, end, err := in.Central(s, sol)
		if err != nil {
			return err
		}
		for d := from; d < to; d++ {
			in.Fill(sol, d)
			if err := work(s, sol, own, end, d); err != nil {
				return err
			}
		}
		return nil
	})
}

// EachDraw works draws off side by side, each block with a solver at the meter's
// temperature.
func EachDraw(n int, work func(s *acid.Solver, sol *acid.Solution, from, to int) error) error {
	return estimate.InBlocks(n, func(from, to int) error {
		s, err := acid.NewSolver(MeterCelsius)
		if err != nil {
			return err
		}
		return work(s, acid.New(0), from, to)
	})
}
