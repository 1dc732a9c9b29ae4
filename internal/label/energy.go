package label

import (
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// energyParts gives the constituents that have factors, each in grams less the
// parts of it that have factors of their own. A part that is unknown inside a
// known whole counts as the whole does.
func (r *ruleset) energyParts(u string, f Facts) []part {
	amounts := make([]estimate.Amount, len(r.factors))
	for i, x := range r.factors {
		amounts[i] = r.amountOf(x.Of, f)
	}
	net := append([]estimate.Amount(nil), amounts...)
	for i, x := range r.factors {
		whole, inside := r.wholeOf(x.Of)
		switch {
		case !inside:
		case !amounts[i].Known && amounts[whole].Known:
			net[i] = estimate.Amount{}
		default:
			net[whole].Mean = max(net[whole].Mean-amounts[i].Mean, 0)
			net[whole].WithBounds = max(net[whole].WithBounds-amounts[i].Mean, 0)
			net[whole].High = max(net[whole].High-amounts[i].Mean, 0)
			net[whole].UpTo = max(net[whole].UpTo-amounts[i].Mean, 0)
		}
	}
	var parts []part
	for i, x := range r.factors {
		p := part{id: x.Of, amount: net[i], cited: cited{x.Source, x.Status}}
		factor, ok := x.PerGram[u]
		switch {
		case ok:
			p.factor = factor
		case len(x.PerGram) == 0:
			p.none = r.mostOfCarbohydrate(u)
		default:
			continue
		}
		parts = append(parts, p)
	}
	return parts
}

// amountOf gives an amount in grams; one that the rules have by difference is what its row
// says.
func (r *ruleset) amountOf(id constituent.ID, f Facts) estimate.Amount {
	for _, l := range r.lines {
		if l.tag == id && l.byDifference() {
			s := addUp(differenceParts(l.terms, f, 1), l, f, 1)
			return estimate.Amount{Mean: s.known, WithBounds: s.bound, UpTo: s.most, Known: s.anything}
		}
	}
	return f.of(id, 1)
}

// mostOfCarbohydrate is the most that a carbohydrate without a factor could count as.
func (r *ruleset) mostOfCarbohydrate(u string) float64 {
	most := 0.0
	for _, x := range r.factors {
		for at := x.Of; at != ""; at = constituent.Must(at).Parent {
			if at == constituent.Carbohydrate {
				most = max(most, x.PerGram[u])
			}
		}
	}
	return most
}

// converted gives energy in a unit that the rules make of the other.
func (r *ruleset) converted(l line, u string, f Facts) sum {
	own := r.energyIn[0]
	s := r.sumOf(l, own, f)
	id, factor := constituent.Energy, 1/r.kjPerKcal
	if own == "kcal" {
		id, factor = constituent.EnergyKcal, r.kjPerKcal
	}
	total := part{id: id, amount: estimate.Amount{Mean: s.known, WithBounds: s.bound, UpTo: s.most, Known: s.anything}, factor: factor, cited: r.cited}
	s = s.times(factor)
	s.rests, s.parts = s.parts, []part{total}
	return s
}

// wholeOf gives the nearest constituent above that has a factor as well.
func (r *ruleset) wholeOf(id constituent.ID) (int, bool) {
	for up := constituent.Must(id).Parent; up != ""; up = constituent.Must(up).Parent {
		for i, x := range r.factors {
			if x.Of == up {
				return i, true
			}
		}
	}
	return 0, false
}
