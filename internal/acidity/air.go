package acidity

import (
	"sipsum/internal/acid"
	"sipsum/internal/solution"
)

// Above alkaline a liquid left in air takes up carbon dioxide; below sour what
// bicarbonate is left after degassing is too little to matter.
const (
	alkaline = 7.0 // pH
	Sour     = 5.0
)

// inAir solves a drink as it stands in its glass: an alkaline one is brought to
// equilibrium with air.
func inAir(s *acid.Solver, sol *acid.Solution, near acid.State, celsius float64) (acid.State, error) {
	state, err := s.Solve(sol, near)
	if err != nil || state.PH < alkaline {
		return state, err
	}
	return s.Degas(sol, SpanOf("air").High*solution.CO2Solubility(celsius), state)
}

// Degas takes the dissolved gas out before a titration, as laboratories do. Where nothing but
// the gas is sour, as in a soda water, the bicarbonate stays: it cannot leave without an acid.
func Degas(s *acid.Solver, sol *acid.Solution, state acid.State) error {
	carbonic := acid.Must("carbonic")
	if sol.Acids[carbonic] == 0 {
		return nil
	}
	if state.PH < Sour {
		held := sol.Acids[carbonic]
		sol.Acids[carbonic] = 0
		if base, err := s.Base(sol, Sour, state); err != nil || base >= 0 {
			return err
		}
		// it is the gas alone that is sour
		sol.Acids[carbonic] = held
	}
	_, err := s.Degas(sol, SpanOf("air").High*solution.CO2Solubility(MeterCelsius), state)
	return err
}
