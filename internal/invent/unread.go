package invent

import (
	"cmp"
	"context"
	"math"
	"slices"

	"sipsum/internal/claim"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// Unread is a food that would be a design by itself if a figure that nobody knows were read as it hopes.
type Unread struct {
	Food   *food.Food
	By     *Preparation
	Grams  float64                  // of a serving
	Gap    claim.Gap                // what to read
	Of     *constituent.Constituent // of which there would have to be so much; nil: it is no amount
	Least  float64                  // in 100 g of what is poured, in the constituent's unit; NaN: it is an upper limit
	Most   float64                  // the same
	Share  float64                  // how much of what it could be at most it would have to be; NaN: nothing bounds it
	Target string
}

// unread finds foods that miss by what nobody knows of them alone.
func (s *search) unread(ctx context.Context) error {
	var list []Unread
	for i := range s.pool.list {
		u, ok, err := s.hopes(ctx, i)
		if err != nil {
			return err
		}
		if ok {
			list = append(list, u)
		}
	}
	order := func(x float64) float64 {
		if math.IsNaN(x) {
			return math.Inf(1)
		}
		return x
	}
	slices.SortStableFunc(list, func(a, b Unread) int { return cmp.Compare(order(a.Share), order(b.Share)) })
	for _, u := range list {
		if len(s.res.Unread) == int(unit.LimitOf("inventions that are shown", "").High) {
			break
		}
		if !slices.ContainsFunc(s.res.Unread, func(o Unread) bool { return alikeFoods(o.Food, u.Food) }) {
			s.res.Unread = append(s.res.Unread, u)
		}
	}
	return nil
}

func alikeFoods(a, b *food.Food) bool {
	return slices.ContainsFunc(wordsOf(a), func(w string) bool { return slices.Contains(wordsOf(b), w) })
}

// hopes tells whether a candidate would be an answer with what nobody knows of it at the end that helps, and
// is none with it at the other.
func (s *search) hopes(ctx context.Context, i int) (u Unread, ok bool, err error) {
	c := s.pool.list[i]
	if s.pool.won[key([]int{i})] || slices.Equal(c.centre, c.helped) {
		return u, false, nil
	}
	least := math.Inf(1)
	var at float64
	for _, x := range c.grams {
		if need, met := s.needs(c, x); met && need < least && need > 0 && need <= unit.LimitOf("hope of an unread figure", "share").High {
			least, at = need, x
		}
	}
	if math.IsInf(least, 1) {
		return u, false, nil
	}
	cols, err := c.drawn()
	if err != nil {
		return u, false, err
	}
	fails := int((1 - s.pool.enough) * float64(s.pool.drawsOf()))
	if _, done := s.pool.holding(s.pool.trialOf([]columns{{hurt: cols.help}}), []float64{at}, fails); !done {
		return u, false, nil
	}
	return s.told(ctx, i, at)
}

// needs tells which share of what nobody knows of a candidate would have to be there, or not be there, for an
// amount of it to meet every condition; met is false where all of it would not do.
func (s *search) needs(c candidate, grams float64) (share float64, met bool) {
	for k := range s.pool.base {
		hurt := s.pool.base[k][0] + c.centre[k]*grams
		help := s.pool.base[k][0] + c.helped[k]*grams
		if !s.pool.reaches(k, help, math.Abs(help)) {
			return 0, false
		}
		switch {
		case s.pool.reaches(k, hurt, math.Abs(hurt)):
		case ofAcids(s.conditions[k]): // what acids there are is told by what is read
		case math.IsInf(help, 1) || math.IsInf(hurt, -1):
			share = max(share, unbounded)
		default:
			share = max(share, -hurt/(help-hurt))
		}
	}
	return share, true
}

// ofAcids reports whether a condition asks for the acidity of the whole.
func ofAcids(c condition) bool {
	return slices.ContainsFunc(c.Terms, func(t claim.Term) bool { return t.Of.Property == claim.PH || t.Of.Property == claim.Acidity })
}

// unbounded stands for a share of what nothing bounds.
const unbounded = 2

// told says what to read of a candidate, and what it would have to be.
func (s *search) told(ctx context.Context, i int, grams float64) (u Unread, ok bool, err error) {
	l, c := s.liquids[i], s.pool.list[i]
	u = Unread{Food: l.food, By: l.by, Grams: grams, Least: math.NaN(), Most: math.NaN()}
	if u.Share, _ = s.needs(c, grams); u.Share >= unbounded {
		u.Share = math.NaN()
	}
	a, err := s.assayed(ctx, l.cup(), s.central())
	if err != nil {
		return u, false, err
	}
	cup := newAddends(a, 1)
	for k, cond := range s.conditions {
		hurt := s.pool.base[k][0] + c.centre[k]*grams
		if s.pool.reaches(k, hurt, math.Abs(hurt)) || ofAcids(s.conditions[k]) {
			continue
		}
		next := u
		if !next.asks(s.textOf(cond), cond, cup, -hurt) {
			continue
		}
		if !s.plausible(l, next) {
			return u, false, nil
		}
		if !ok {
			u, ok = next, true
		}
	}
	return u, ok, nil
}

// asks notes what of a condition nobody knows, and what it would have to be; false where all is known.
func (u *Unread) asks(target string, cond condition, cup addends, short float64) bool {
	for _, t := range cond.Terms {
		_, _, gaps := cup.of(t.Of)
		if len(gaps) == 0 {
			continue
		}
		u.Target, u.Gap = target, gaps[0]
		if len(gaps) == 1 && t.Of.Constituent != nil {
			limit(u, t, cup, short)
		}
		return true
	}
	return false
}

// plausible reports whether a figure may be what it would have to be: as much, or as little, as some food has
// that is of the group and is poured likewise. Where none of them is known the bounds alone speak.
func (s *search) plausible(l liquid, u Unread) bool {
	if u.Of == nil {
		return true
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, f := range s.pantry {
		if f.Group != l.food.Group || !slices.ContainsFunc(pouredOf(f), func(p poured) bool { return p.by == l.by }) {
			continue
		}
		if v, told := f.Value(u.Of.ID); told && food.Stated(v.Amount) {
			low, high = min(low, v.Amount), max(high, v.Amount)
		}
	}
	return low > high || !(u.Least > high) && !(u.Most < low)
}

// limit tells how much of a constituent there would have to be in 100 g at least, or at most.
func limit(u *Unread, t claim.Term, cup addends, short float64) {
	least, most, _ := cup.of(t.Of)
	per := hundred * t.Of.Constituent.PerGram
	short /= math.Abs(t.Times) * u.Grams
	switch {
	case math.IsInf(short, 1): // nothing bounds it
	case t.Times > 0:
		u.Of, u.Least = t.Of.Constituent, per*(least[0]/measured+short)
	default:
		u.Of, u.Most = t.Of.Constituent, per*(most[0]/measured-short)
	}
}
