package acidity

import (
	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
)

// Fizz lets go what the carbonates of an open pot have given off to its acids, beyond what
// liquid holds under carbon dioxide alone at 1 atm (solution.CO2Solubility), and gives the grams
// that left, draw by draw; nil if there is no carbonate. Other gas stays: whoever charges a
// bottle or pours what is sold with its gas says what is in it. Where the pot cannot be solved
// all of it stays too.
func (lab *Laboratory) Fizz(pot *ledger.Pot) []float64 {
	rows, held := lab.carbonates(pot)
	if len(rows) == 0 || pot.Central(constituent.Water) <= 0 {
		return nil
	}
	carbonic, molar := acid.Must("carbonic"), constituent.Must(constituent.CarbonDioxide).Molar
	all, gone := pot.Total(constituent.CarbonDioxide), make([]float64, pot.N)
	err := lab.IonsOf(pot, pot.N).Each(func(s *acid.Solver, sol *acid.Solution, own, _ acid.State, d int) error {
		before := sol.Acids[carbonic]
		_, err := s.Degas(sol, solution.CO2Solubility(MeterCelsius), own)
		stays := max(sol.Acids[carbonic], (all[d]-held[d])/molar)
		gone[d] = min(max((before-stays)*molar, 0), held[d])
		return err
	})
	if err != nil {
		return nil
	}
	if !anyOf(gone) {
		return nil
	}
	col := pot.Columns.At(constituent.CarbonDioxide)
	for _, row := range rows {
		for d, cell := 0, pot.Write(row, col); d < pot.N; d++ {
			if held[d] > 0 {
				cell[d] *= 1 - gone[d]/held[d]
			}
		}
	}
	return gone
}

// carbonates gives the rows of a pot that are substances with carbonate, and the carbon dioxide
// that they hold.
func (lab *Laboratory) carbonates(pot *ledger.Pot) (rows []int, held []float64) {
	for row, r := range pot.Rows {
		if !r.Profile.Food.Chemical || r.Profile == lab.gas {
			continue
		}
		of := pot.Of(row, constituent.CarbonDioxide)
		if !anyOf(of) {
			continue
		}
		if rows = append(rows, row); held == nil {
			held = estimate.Constant(pot.N, 0)
		}
		for d, x := range of {
			held[d] += x
		}
	}
	return rows, held
}

func anyOf(column []float64) bool {
	for _, x := range column {
		if x > 0 {
			return true
		}
	}
	return false
}
