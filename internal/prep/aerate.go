package prep

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
)

// perMl is g/l in g/ml.
const perMl = 0.001

// carbonate reads what is known of the charge and of what is left of it.
func (a at) carbonate(s *drink.Carbonate) (Outcome, error) {
	var charge *Charge
	if s.Bottle != nil {
		_, unknown := a.pot.Bound(constituent.CarbonDioxide)
		charge = &Charge{
			Gas:    solution.CarbonDioxide,
			Bottle: a.amount(s.Bottle, "bottle"), Grams: a.amount(s.Charge, "charge"), Celsius: a.figure(s.Temperature, 1, "at"),
			Unmeasured: len(unknown) > 0,
		}
		// guard: no ice is carbonated
		if why := frozen(a.pot, charge.Celsius[0]); why != "" {
			return Outcome{}, impossible("%s: how much carbon dioxide it takes up nobody can say", why)
		}
	}
	grams, told, err := Carbonate(charge, a.figure(s.Left, perMl, "left"), a.Volume(a.pot), a.pot.Total(constituent.CarbonDioxide), a.Factors)
	if err != nil {
		return Outcome{}, err
	}
	gas, perGram := a.Drawn(Gas())
	out := Aerate(a.pot, gas, perGram, grams, a.Path)
	out.Notes = told.Notes
	return out, nil
}

// Aerate makes the pot hold grams (a column) of carbon dioxide: what is missing
// is poured as gas, what is too much leaves.
func Aerate(pot *ledger.Pot, gas *food.Profile, perGram ledger.Cells, grams []float64, path string) Outcome {
	var out Outcome
	held, more, kept := pot.Total(constituent.CarbonDioxide), make([]float64, pot.N), estimate.Constant(pot.N, 1)
	for d, g := range grams {
		more[d] = max(g-held[d], 0)
		if held[d] > g {
			kept[d] = g / held[d]
		}
	}
	if slices.Min(kept) < 1 {
		out.Lost = apply(pot, degassing(kept))
	}
	pot.Pour(gas, perGram, more, path)
	out.Added = more[0]
	return out
}

// degassing keeps a share of the carbon dioxide and all of the rest.
type degassing []float64

func (m degassing) Share(_ ledger.Row, c *constituent.Constituent, share []float64) {
	if c.ID == constituent.CarbonDioxide {
		copy(share, m)
		return
	}
	estimate.Fill(share, 1)
}
