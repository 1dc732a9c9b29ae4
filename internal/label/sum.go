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
	none   float64         // where the rules have no factor: the most that one could be
	cited                  // of the factor, if it has one of its own
}

// sum is a row's amount in one serving.
type sum struct {
	known    float64
	bound    float64 // with the most that is unknown, at central values; NaN if nobody knows
	most     float64 // the end of the interval with it; NaN if nobody knows
	anything bool    // false: nothing at all is known
	parts    []part
	rests    []part // what the parts rest on, where they are converted
}

// sumOf adds up a row in one of its units.
func (r *ruleset) sumOf(l line, u string, f Facts) sum {
	switch {
	case l.energy && !slices.Contains(r.energyIn, u):
		return r.converted(l, u, f)
	case l.energy:
		return addUp(r.energyParts(u, f), l, f, 1).notBelow(f.Serving[energies[u]])
	}
	perGram, _ := unit.PerGram(u)
	var parts []part
	if l.byDifference() {
		return addUp(differenceParts(l.terms, f, perGram), l, f, perGram).notBelow(f.of(l.tag, perGram))
	}
	for _, t := range l.terms {
		parts = append(parts, part{id: t.id, amount: f.of(t.id, perGram), factor: t.factor})
	}
	return addUp(parts, l, f, perGram)
}

// energies are the figures of an assay's own energy by unit.
var energies = map[string]constituent.ID{"kJ": constituent.Energy, "kcal": constituent.EnergyKcal}

// notBelow keeps the end of a sum of which something is missing from lying below that of the
// assay, which adds the same up in its own way.
func (s sum) notBelow(own estimate.Amount) sum {
	if !s.complete() {
		s.most = max(s.most, own.UpTo)
	}
	return s
}

// addUp adds up the parts of a row.
func addUp(parts []part, l line, f Facts, perGram float64) sum {
	s := sum{parts: parts}
	for _, p := range parts {
		s.known += p.factor * p.amount.Mean
		missing, spread := missingIn(parts, p, f, perGram), max(p.amount.Most()-p.amount.WithBounds, 0)
		switch {
		case p.none != 0:
			s.bound += p.none * (p.amount.Mean + missing)
			s.most += p.none * (p.amount.KnownMost() + missing)
		case p.factor > 0: // what counts nothing, or less, may be unknown
			s.bound += p.factor * missing
			s.most += p.factor * (missing + orNothing(spread))
		}
		// Without its main part or an amount of another a row says nothing; energy says
		// what it can.
		if p.amount.Known && (l.energy || p.id == l.tag || p.factor > 0 && p.amount.Mean > 0) {
			s.anything = true
		}
	}
	s.known = max(s.known, 0)
	s.bound, s.most = s.bound+s.known, s.most+s.known
	if l.within != "" {
		whole := f.of(l.within, perGram)
		s.bound, s.most = least(s.bound, whole.WithBounds), least(s.most, whole.Most())
	}
	s.bound = max(s.bound, s.known)
	s.most = max(s.most, s.bound)
	return s
}

// least is the less of two, of which either may not be known.
func least(a, b float64) float64 {
	if math.IsNaN(a) || b < a {
		return b
	}
	return a
}

// orNothing is a number, or 0 where there is none.
func orNothing(x float64) float64 {
	if math.IsNaN(x) {
		return 0
	}
	return x
}

// differenceParts gives the terms of a row by difference, and of what the facts have in
// their place.
func differenceParts(terms []term, f Facts, perGram float64) []part {
	of, parts := f.difference(), []part(nil)
	for _, t := range terms {
		if a, ok := of[t.id]; ok {
			parts = append(parts, part{id: t.id, amount: a.Times(perGram), factor: t.factor})
		}
	}
	for _, id := range instead {
		if a, ok := of[id]; ok && (a.Known || len(of) == 1) {
			parts = append(parts, part{id: id, amount: a.Times(perGram), factor: 1})
		}
	}
	return parts
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
		missing = least(missing, f.of(up, perGram).Missing())
	}
	return missing
}

// counts reports whether a sum has a constituent, by itself or within a whole.
func counts(parts []part, id constituent.ID) bool {
	for at := id; at != ""; at = constituent.Must(at).Parent {
		if slices.ContainsFunc(parts, func(p part) bool { return p.id == at && p.factor > 0 }) {
			return true
		}
	}
	return false
}

// times scales a sum from one serving to another amount.
func (s sum) times(scale float64) sum {
	s.known *= scale
	s.bound *= scale
	s.most *= scale
	return s
}

// complete reports whether nothing of the sum is missing.
func (s sum) complete() bool { return s.bound <= s.known*(1+unit.Closeness) }

// bounded reports whether it is known how much the sum can be at most.
func (s sum) bounded() bool { return !math.IsNaN(s.bound) && !math.IsNaN(s.most) }
