package prep

import (
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// Freeze takes ice out until the pot weighs to grams (a column). The ice carries
// a part of what is dissolved with it:
//
//	share of a solute that goes = D · ice / mass
//
// D, the ratio of the solute in the ice to that in the liquid, is rectangular
// between clean ice and a block frozen slowly (data/kinetics.csv). It is an error
// to ask for more than there is or for less than the dry matter.
//
// Limits: one D for everything that is not water; around 65 % solids no more ice
// forms, which is said and not prevented.
func Freeze(pot *ledger.Pot, to []float64, f Factors) (Outcome, error) {
	mass, water := pot.Mass(), pot.Total(constituent.Water)
	if to[0] > mass[0] {
		return Outcome{}, unlike("freeze down to %s g: the pot holds only %s g", to[0], mass[0])
	}
	// guard: no ice without water
	if dry := mass[0] - water[0]; to[0] < dry {
		return Outcome{}, unlike("freeze down to %s g: there are %s g of dry matter", to[0], dry)
	}
	ratio := f.draw("ice distribution", kinetics()["ice distribution"])
	m := &ice{water: make([]float64, pot.N), solute: make([]float64, pot.N)}
	for d := range m.water {
		taken := max(mass[d]-to[d], 0)
		m.solute[d] = 1
		if mass[d] > 0 {
			m.solute[d] -= ratio[d] * taken / mass[d]
		}
		if water[d] > 0 {
			dry := (mass[d] - water[d]) * (1 - m.solute[d])
			m.water[d] = min(max(1-(taken-dry)/water[d], 0), 1)
		}
	}
	out := Outcome{Lost: apply(pot, m)}
	if solids, limit := 1-pot.Central(constituent.Water)/pot.Central(constituent.Mass), kinetics()["freezing limit"].value; solids > limit {
		out.note("%.0f %% solids: from about %.0f %% on the rest of the water does not freeze out", 100*solids, 100*limit)
	}
	return out, nil
}

// ice keeps one share of the water and one of everything else.
type ice struct{ water, solute []float64 }

func (m *ice) Share(_ ledger.Row, c *constituent.Constituent, share []float64) {
	if c.ID == constituent.Water {
		copy(share, m.water)
		return
	}
	copy(share, m.solute)
}
