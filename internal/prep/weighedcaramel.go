package prep

import (
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/unit"
)

func (a at) caramelise(s *drink.Caramelise) (Outcome, error) {
	acids, perGram := a.Drawn(BurntSugarAcids())
	loss, to := a.share(s.Loss, "loss"), a.amount(s.To, "to")
	var sour Outcome
	a.warnSplit(&sour)
	if to == nil {
		out := Caramelise(a.pot, Burning{Loss: loss, Acids: acids, PerGram: perGram}, a.Factors)
		out.Notes = append(out.Notes, sour.Notes...)
		return out, nil
	}
	w, err := a.weighed(to)
	if err != nil {
		return Outcome{}, err
	}
	if loss, err = w.share(loss, a); err != nil {
		return Outcome{}, err
	}
	out := Caramelise(a.pot, Burning{Loss: loss, Acids: acids, PerGram: perGram}, a.Factors)
	out.Lost = apply(a.pot, w.boilsOff(a))
	out.note("the weight says that at least %.2g %% of the sugar has burnt", unit.Hundred*w.floor[0])
	out.Notes = append(out.Notes, sour.Notes...)
	return out, nil
}

// weighedCaramel is what the weight of a pot of caramel tells of it. Its water goes first;
// what has gone beyond it has left the sugar:
//
//	L = (before − after − water) / sugar        burnt share ≥ L / 0.167
//
// since sucrose that becomes caramel loses at most 16.7 % of its mass (data/kinetics.csv,
// caramel weight loss); all of it may have burnt, for what condenses without loss is caramel
// too. Where nobody states the share it is rectangular between the two.
//
// Limits: what smokes away as well lowers the floor; a pot that still holds water tells
// nothing.
type weighedCaramel struct{ gone, floor []float64 } // grams that left the sugar

// weighed reads a weight. It is an error if it tells nothing of the sugar, or more than
// caramel can lose.
func (a at) weighed(to []float64) (weighedCaramel, error) {
	mass, water, sugar := a.pot.Mass(), a.pot.Total(constituent.Water), a.pot.Total(constituent.Sugar)
	most := kinetics()["caramel weight loss"].high
	if to[0] > mass[0] {
		return weighedCaramel{}, unlike("caramelise to %s g: the pot holds only %s g", to[0], mass[0])
	}
	if dry := mass[0] - water[0]; to[0] > dry {
		return weighedCaramel{}, unlike("caramelise to %s g: without its water the pot weighs %s g, so the weight says nothing of the sugar; give loss", to[0], dry)
	}
	w := weighedCaramel{make([]float64, a.pot.N), make([]float64, a.pot.N)}
	for d := range w.gone {
		w.gone[d] = min(max(mass[d]-water[d]-to[d], 0), most*sugar[d])
		if sugar[d] > 0 {
			w.floor[d] = w.gone[d] / (most * sugar[d])
		}
	}
	if left := mass[0] - water[0] - most*sugar[0]; to[0] < left {
		return weighedCaramel{}, unlike("caramelise to %s g: caramel cannot leave less than %s g, since sugar that burns loses at most %.3g %% of its weight", to[0], left, unit.Hundred*most)
	}
	return w, nil
}

// share gives the share of the sugar that burns: stated, or between the floor and all.
func (w weighedCaramel) share(stated []float64, a at) ([]float64, error) {
	if stated == nil {
		const half = 0.5
		above := a.draw("burnt above the floor", factor{half, 0, 1})
		for d, u := range above {
			above[d] = w.floor[d] + u*(1-w.floor[d])
		}
		return above, nil
	}
	if stated[0] < w.floor[0] {
		return nil, impossible("the weight says that at least %.3g %% of the sugar has burnt, and loss says %.3g %%", unit.Hundred*w.floor[0], unit.Hundred*stated[0])
	}
	for d := range stated {
		stated[d] = max(stated[d], w.floor[d])
	}
	return stated, nil
}

// boilsOff takes the water and what has left the sugar out of the pot, after it has burnt.
func (w weighedCaramel) boilsOff(a at) *boilOff {
	m, caramel := &boilOff{make([]float64, a.pot.N), make([]float64, a.pot.N)}, a.pot.Total(burnt)
	for d := range m.burnt {
		m.burnt[d] = 1
		if caramel[d] > 0 {
			m.burnt[d] = max(1-w.gone[d]/caramel[d], 0)
		}
	}
	return m
}
