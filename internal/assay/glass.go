package assay

import (
	"math"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/minutes"
	"sipsum/internal/prep"
	"sipsum/internal/taste"
)

// Glass is what is liquid of a serving, for its taste: an eaten garnish is no part of it.
func (a *Assay) Glass() taste.Glass {
	g := taste.Glass{Pot: a.liquid.pot, Volume: a.liquid.volume, Seed: a.Seed, Only: a.Only, Celsius: acidity.MeterCelsius, Chemistry: a.Chemistry}
	if a.Drink.At != nil {
		g.Celsius = a.Drink.At.Number
	}
	return g
}

// Standing is a serving as it is poured, for how it goes while it stands: an eaten garnish is no part of it.
// The chemistry must have been asked for.
func (a *Assay) Standing() minutes.Glass {
	water, gas := a.recipe.Water, a.recipe.Brought[prep.Gas().ID]
	return minutes.Glass{
		Drink: a.Drink, Pot: a.liquid.pot, Lab: a.liquid.lab, Chemistry: a.Chemistry,
		Bottled: func(row int) bool {
			p := a.liquid.pot.Rows[row].Profile
			return p != gas && !p.Food.Chemical
		},
		Water: func(pot *ledger.Pot, grams []float64) { prep.Water(pot, water, a.liquid.water, grams, "stands/ice") },
	}
}

// BaseTo gives the base in mol, draw by draw of those that equilibria are solved for, that brings what is
// liquid of a serving to a pH; acid counts below nothing. Liquids that are poured together need what each
// of them needs, but for what their salts do to each other. NaN: it cannot be told; open: foods leave open
// which acids they hold.
func (a *Assay) BaseTo(pH float64) (base []float64, open bool) {
	pot := a.liquid.pot
	base = make([]float64, min(pot.N, a.liquid.lab.Solved()))
	in := a.liquid.lab.IonsOf(pot, len(base))
	unsolved := acidity.Unsolvable(pot) != ""
	if !unsolved {
		unsolved = in.Each(func(s *acid.Solver, sol *acid.Solution, _, near acid.State, d int) error {
			at, err := s.Titrate(sol, pH, near)
			base[d] = at.Base * sol.Solvent
			return err
		}) != nil
	}
	if unsolved {
		estimate.Fill(base, math.NaN())
	}
	return base, in.Open()
}
