package caution

import (
	"cmp"
	"slices"

	"sipsum/internal/food"
	"sipsum/internal/phrase"
)

// Drink is a drink that was looked through for what may hurt.
type Drink struct{ look *look }

// Look looks a drink through, once for whatever rules.
func Look(in Input) Drink { return Drink{newLook(in)} }

// For gives the cautions of a drink under its rules.
func For(in Input) []Caution { return Look(in).Under(in.Rules) }

// Under gives the cautions of a drink under one set of rules, the worst first, then in the
// order of data/cautions.csv.
func (d Drink) Under(rules string) []Caution {
	var all []spoken
	for i := range table() {
		r := &table()[i]
		if !r.under(rules) || d.look.excused(r) {
			continue
		}
		if s, speaks := d.look.judge(r); speaks {
			all = append(all, s)
		}
	}
	out := []Caution{}
	for i, s := range all {
		if !silenced(s, all) && !said(s, all[:i], all[i:]) {
			out = append(out, s.Caution)
		}
	}
	slices.SortStableFunc(out, func(a, b Caution) int { return cmp.Compare(a.Rank, b.Rank) })
	return out
}

// spoken is a caution that a row gives.
type spoken struct {
	Caution
	row     *row
	certain bool
}

// said reports whether another row of the same code says the same: one before it as surely,
// or a later one that is sure.
func said(s spoken, before, after []spoken) bool {
	same := func(other spoken) bool { return other.Code == s.Code && (other.certain || !s.certain) }
	sure := func(other spoken) bool { return other.Code == s.Code && other.certain && !s.certain }
	return slices.ContainsFunc(before, same) || slices.ContainsFunc(after, sure)
}

// silenced reports whether another row says more, as surely.
func silenced(s spoken, all []spoken) bool {
	return slices.ContainsFunc(all, func(other spoken) bool {
		return slices.Contains(other.row.silences, s.Code) && (other.certain || !s.certain)
	})
}

// Standing gives a caution by its code, as its row writes it, for a page that proposes
// what it warns of. It panics if there is none.
func Standing(code string) Caution {
	for i := range table() {
		if r := &table()[i]; r.code == code {
			return r.caution()
		}
	}
	panic("caution: cautions.csv has no row " + code)
}

func (r *row) caution() Caution {
	return Caution{Code: r.code, Text: r.text, Source: r.source, Who: r.who, Rank: r.rank}
}

// excused reports whether the drink's name lifts the caution and what it is made of does
// too: a name alone is no excuse.
func (l *look) excused(r *row) bool {
	if !r.exempt.In(phrase.Words(fold(l.Name))) {
		return false
	}
	based := false
	for i := range l.Items {
		if !l.brings(i, r) {
			continue
		}
		if !l.isBase(i, r.exemptFoods) {
			return false
		}
		based = true
	}
	return based
}

// brings reports whether a food brings the constituent of a row, as far as anybody knows.
func (l *look) brings(i int, r *row) bool {
	id := l.Items[i].Food
	if slices.Contains(l.Brought[r.of], id) || slices.Contains(l.Unstated[r.of], id) && l.plausible(i, r) {
		return true
	}
	return len(l.Brought[r.of]) == 0 && l.plausible(i, r)
}

// isBase reports whether a food is one of those that excuse.
func (l *look) isBase(i int, foods []term) bool {
	is := false
	for _, t := range foods {
		if l.is(i, term{t.kind, t.key, false}) {
			if t.not {
				return false
			}
			is = true
		}
	}
	return is
}

// plausible reports whether a food could bring the constituent of a row.
func (l *look) plausible(i int, r *row) bool {
	return slices.ContainsFunc(r.with, func(terms together) bool {
		return slices.ContainsFunc(terms, func(t term) bool { return l.is(i, t) })
	})
}

// foods gives the ids of the foods of a match, each once.
func (l *look) foods(m *match) []food.ID {
	var ids []food.ID
	for _, i := range m.items {
		if id := l.Items[i].Food; !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
	}
	return ids
}
