package assay

import (
	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
)

// solved holds the results draw by draw.
type solved struct {
	pH, meter         []float64
	why               string      // pH is nil
	per100g, perLitre [][]float64 // by end point
}

// solveDraws solves the equilibria of each draw, each from the one before.
func solveDraws(in ions, pot *ledger.Pot, density []float64, celsius float64) (solved, error) {
	atMeter, err := acid.NewSolver(MeterCelsius)
	if err != nil {
		return solved{}, err
	}
	out := solved{meter: make([]float64, in.n)}
	atServing, err := acid.NewSolver(celsius)
	if err == nil {
		out.pH = make([]float64, in.n)
	} else {
		out.why = err.Error()
	}
	for range endPoints {
		out.per100g, out.perLitre = append(out.per100g, make([]float64, in.n)), append(out.perLitre, make([]float64, in.n))
	}
	mass := pot.Mass()
	equivalent := acid.All()[acid.Must("citric")].Equivalent()
	sol := acid.New(0)
	var served, read acid.State
	for d := range in.n {
		sol.Reset(0)
		sol.AddGrams(func(id constituent.ID) float64 { return max(in.grams[id][d], 0) })
		if out.pH != nil {
			if served, err = inAir(atServing, sol, served, celsius); err != nil {
				return solved{}, err
			}
			out.pH[d] = served.PH
		}
		if read, err = inAir(atMeter, sol, read, MeterCelsius); err != nil {
			return solved{}, err
		}
		out.meter[d] = read.PH
		if err := degas(atMeter, sol, read); err != nil {
			return solved{}, err
		}
		for i, end := range endPoints {
			base, err := atMeter.Base(sol, end, read)
			if err != nil {
				return solved{}, err
			}
			const hundred = 100
			grams := max(base, 0) * sol.Solvent * equivalent
			out.per100g[i][d] = hundred * grams / mass[d]
			out.perLitre[i][d] = perLitre * grams / mass[d] * density[d]
		}
	}
	return out, nil
}

// Above alkaline a liquid left in air takes up carbon dioxide; below sour what
// bicarbonate is left after degassing is too little to matter.
const (
	alkaline = 7.0 // pH
	sour     = 5.0
)

// inAir solves a drink as it stands in its glass: an alkaline one is brought to
// equilibrium with air.
func inAir(s *acid.Solver, sol *acid.Solution, near acid.State, celsius float64) (acid.State, error) {
	state, err := s.Solve(sol, near)
	if err != nil || state.PH < alkaline {
		return state, err
	}
	if err := s.Degas(sol, spanOf("air").high*solution.CO2Solubility(celsius)); err != nil {
		return state, err
	}
	return s.Solve(sol, acid.State{})
}

// degas takes the dissolved gas out before a titration, as laboratories do.
func degas(s *acid.Solver, sol *acid.Solution, state acid.State) error {
	carbonic := acid.Must("carbonic")
	if sol.Acids[carbonic] == 0 {
		return nil
	}
	if state.PH < sour {
		sol.Acids[carbonic] = 0
		return nil
	}
	return s.Degas(sol, spanOf("air").high*solution.CO2Solubility(MeterCelsius))
}
