package label

import (
	"math"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/unit"
)

// part is one term of a sum as --explain shows it.
type part struct {
	id     constituent.ID
	amount estimate.Amount // in the row's unit; of energy in g, less what has a factor of its own
	factor float64         // of energy in the row's unit per g
	source string          // of the factor, if it has one of its own
}

// sum is a row's amount in one serving.
type sum struct {
	known    float64
	most     float64 // NaN if nobody knows
	anything bool    // false: nothing at all is known
	parts    []part
}

// sumOf adds up a row in one of its units.
func (r *ruleset) sumOf(l line, u string, f Facts) sum {
	parts, perGram := r.energyParts(u, f), 1.0
	if !l.energy {
		perGram, _ = unit.PerGram(u)
		parts = nil
		for _, t := range l.terms {
			parts = append(parts, part{id: t.id, amount: f.of(t.id, perGram), factor: t.factor})
		}
	}
	s := sum{parts: parts}
	for _, p := range parts {
		s.known += p.factor * p.amount.Mean
		if p.factor != 0 { // what counts nothing may be unknown
			s.most += p.factor * missingIn(parts, p, f, perGram)
		}
		// Without its main part a row says nothing; energy says what it can.
		if p.amount.Known && (l.energy || p.id == l.tag) {
			s.anything = true
		}
	}
	s.most += s.known
	return s
}

// missingIn gives how much of a part the sum may lack. What is unknown of a part
// lies in the rest of a total above it; where the sum counts that rest already,
// the part adds no more than the total itself lacks.
func missingIn(parts []part, p part, f Facts, perGram float64) float64 {
	missing := p.amount.Missing()
	for up := constituent.Must(p.id).Parent; up != "" && up != constituent.Mass; up = constituent.Must(up).Parent {
		if !counts(parts, constituent.RestOf(up)) || (up == constituent.Carbohydrate && !counts(parts, constituent.RestOf(constituent.Available))) {
			continue
		}
		whole := f.of(up, perGram).Missing()
		if !math.IsNaN(whole) && (math.IsNaN(missing) || whole < missing) {
			missing = whole
		}
	}
	return missing
}

// counts reports whether a sum has a constituent, by itself or within a whole.
func counts(parts []part, id constituent.ID) bool {
	for at := id; at != ""; at = constituent.Must(at).Parent {
		if slices.ContainsFunc(parts, func(p part) bool { return p.id == at }) {
			return true
		}
	}
	return false
}

// energyParts gives the constituents that have factors, each in grams less the
// parts of it that have factors of their own. A part that is unknown inside a
// known whole counts as the whole does.
func (r *ruleset) energyParts(u string, f Facts) []part {
	amounts := make([]estimate.Amount, len(r.factors))
	for i, x := range r.factors {
		amounts[i] = f.of(x.Of, 1)
	}
	net := append([]estimate.Amount(nil), amounts...)
	for i, x := range r.factors {
		whole, inside := r.wholeOf(x.Of)
		switch {
		case !inside:
		case !amounts[i].Known && amounts[whole].Known:
			net[i] = estimate.Amount{Known: true}
		default:
			net[whole].Mean = max(net[whole].Mean-amounts[i].Mean, 0)
			net[whole].WithBounds = max(net[whole].WithBounds-amounts[i].Mean, 0)
		}
	}
	var parts []part
	for i, x := range r.factors {
		if factor, ok := x.PerGram[u]; ok {
			parts = append(parts, part{id: x.Of, amount: net[i], factor: factor, source: x.Source})
		}
	}
	return parts
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

// times scales a sum from one serving to another amount.
func (s sum) times(scale float64) sum {
	s.known *= scale
	s.most *= scale
	return s
}

// complete reports whether nothing of the sum is missing.
func (s sum) complete() bool { return s.most <= s.known }

// bounded reports whether it is known how much the sum can be at most.
func (s sum) bounded() bool { return !math.IsNaN(s.most) }
