package prep

import (
	"fmt"
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
)

// concentrate takes water out by freezing or under vacuum.
func concentrate(a at, s *drink.Concentrate) (Outcome, error) {
	to := a.amount(&s.To, "to")
	if s.By == "vacuum" {
		return Evaporate(a.pot, to, a.Factors)
	}
	return Freeze(a.pot, to, celsiusOf(s.Temperature), a.Factors)
}

// Freeze takes ice out until the pot weighs to grams (a column), in a freezer of so many °C (NaN:
// a household's, data/kinetics.csv). The ice carries a part of what is dissolved with it:
//
//	share of a solute that goes = D · ice / mass
//
// D, the ratio of the solute in the ice to that in the liquid, is rectangular
// between clean ice and a block frozen slowly (data/kinetics.csv). Ice forms until what is
// left freezes no sooner than the freezer is cold (solution.FreezesAt). It is an error to ask for
// more than there is, for less than the dry matter, or for ice that no such freezer makes.
//
// Limits: one D for everything that is not water; around 65 % solids no more ice
// forms, which is said and not prevented.
func Freeze(pot *ledger.Pot, to []float64, freezer float64, f Factors) (Outcome, error) {
	mass, water := pot.Mass(), pot.Total(constituent.Water)
	if to[0] > mass[0] {
		return Outcome{}, unlike("freeze down to %s g: the pot holds only %s g", to[0], mass[0])
	}
	// the plainer word comes first: no freezer at all leaves less than what is dry
	if dry := mass[0] - water[0]; to[0] < dry {
		return Outcome{}, unlike("freeze down to %s g: there are %s g of dry matter", to[0], dry)
	}
	other := ""
	if math.IsNaN(freezer) {
		freezer, other = kinetics()["household freezer"].value, ", a household freezer: write at: … °C if yours is colder"
	}
	ratio := f.draw("ice distribution", kinetics()["ice distribution"])
	// guard: no colder than the freezer
	if least := leastFrozen(pot.First(1), ratio[0], freezer); to[0] < least {
		return Outcome{}, unlike("freeze down to %s g: at "+fmt.Sprintf("%.3g °C", freezer)+" no more ice forms from about %s g on"+other, to[0], least)
	}
	out := Outcome{Lost: apply(pot, iced(pot, to, ratio))}
	if solids, limit := 1-pot.Central(constituent.Water)/pot.Central(constituent.Mass), kinetics()["freezing limit"].value; solids > limit {
		out.note("%.0f %% solids: from about %.0f %% on the rest of the water does not freeze out", 100*solids, 100*limit)
	}
	return out, nil
}

// leastFrozen gives the least mass that a freezer leaves of a pot of central values: what is left
// of it freezes where the freezer is cold.
func leastFrozen(pot *ledger.Pot, ratio, freezer float64) float64 {
	const halvings = 40
	liquid := func(to float64) bool { // ice forms in what is left no sooner than the freezer is cold
		left := pot.Copy()
		left.Apply(iced(left, []float64{to}, []float64{ratio}))
		celsius, ok := liquid.FreezesAt(left)
		return !ok || celsius < freezer
	}
	high := pot.Mass()[0]
	low := high - pot.Total(constituent.Water)[0]
	if liquid(high) {
		return high // it does not freeze at all
	}
	for range halvings {
		if middle := (low + high) / 2; liquid(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}

// iced keeps what is not frozen out down to so many grams.
func iced(pot *ledger.Pot, to, ratio []float64) *ice {
	mass, water := pot.Mass(), pot.Total(constituent.Water)
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
	return m
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
