package assay

import (
	"fmt"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/prep"
	"sipsum/internal/solution"
)

// fizz lets gas out of an open pot that acid has driven out of a carbonate, says so, and gives its
// grams at central values.
func (w *walk) fizz(pot *ledger.Pot, where string) float64 {
	gone := w.plan.flatten(pot)
	if len(gone) == 0 {
		return 0
	}
	if gone[0] < fizzes {
		return gone[0]
	}
	if where == "" {
		where = "the drink"
	}
	w.note(note.Note{Kind: "step", Text: fmt.Sprintf("%s: its acid drives about %s g of carbon dioxide out of the carbonate in it: it foams, and in an open vessel that gas leaves", where, note.Number(gone[0]))})
	return gone[0]
}

// fizzes is the gas in grams that is worth a word.
const fizzes = 0.05

// flatten lets go what the carbonates of an open pot have given off to its acids, beyond what
// liquid holds under carbon dioxide alone at 1 atm (solution.CO2Solubility), and gives the grams
// that left, draw by draw; nil if there is no carbonate. Other gas stays: whoever charges a
// bottle or pours what is sold with its gas says what is in it. Where the pot cannot be solved
// all of it stays too.
func (p *Plan) flatten(pot *ledger.Pot) []float64 {
	rows, held := p.carbonates(pot)
	if len(rows) == 0 || pot.Central(constituent.Water) <= 0 {
		return nil
	}
	carbonic, molar := acid.Must("carbonic"), constituent.Must(constituent.CarbonDioxide).Molar
	all, gone := pot.Total(constituent.CarbonDioxide), make([]float64, pot.N)
	err := p.lab.IonsOf(pot, pot.N).Each(func(s *acid.Solver, sol *acid.Solution, own, _ acid.State, d int) error {
		before := sol.Acids[carbonic]
		_, err := s.Degas(sol, solution.CO2Solubility(acidity.MeterCelsius), own)
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
func (p *Plan) carbonates(pot *ledger.Pot) (rows []int, held []float64) {
	for row, r := range pot.Rows {
		if !r.Profile.Food.Chemical || r.Profile == p.recipe.Brought[prep.Gas().ID] {
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
