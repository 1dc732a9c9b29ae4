package claim

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/unit"
)

// Logic is what a claim is whatever the drink: its own words decide it.
type Logic int8

const (
	Open   Logic = iota // the drink decides
	Always              // it holds of any drink
	Never               // its parts exclude one another
)

// logicOf decides a truth by its form alone. Each figure in it, and each difference of two, is taken to be
// free: below, at, between or above the numbers to which it is held. What holds in all of these
// cases holds always, what holds in none never, whatever nobody knows of the figures.
func logicOf(t truth) Logic {
	l := &logic{cuts: map[string][]float64{}}
	l.read(t)
	cases := 1
	for _, key := range l.keys {
		cases *= 2*len(l.cuts[key]) + 1
		if float64(cases) > unit.LimitOf("cases of a check", "").High {
			return Open
		}
	}
	some, all := false, true
	for n := range cases {
		where := map[string]int{}
		for _, key := range l.keys {
			k := 2*len(l.cuts[key]) + 1
			where[key], n = n%k, n/k
		}
		is := l.holds(t, where)
		some, all = some || is, all && is
	}
	switch {
	case all:
		return Always
	case !some:
		return Never
	}
	return Open
}

// logic is the figures of a truth, each with the numbers that it is held to, in their order.
type logic struct {
	keys []string
	cuts map[string][]float64
}

// link is one comparison of two sides: a figure, by its key, and a number; constant where there is none.
type link struct {
	key   string
	cut   float64
	order string
}

var mirrored = map[string]string{"<": ">", "<=": ">=", ">": "<", ">=": "<="}

// linkOf brings a comparison into the form figure, order, number.
func linkOf(a, b quantity, order string) link {
	x, isA := a.(literal)
	y, isB := b.(literal)
	switch {
	case isA && isB:
		return link{"", y.value - x.value, order}
	case isB:
		return link{keyOf(a), y.value, order}
	case isA:
		return link{keyOf(b), x.value, mirrored[order]}
	}
	switch first, second := keyOf(a), keyOf(b); {
	case first == second:
		return link{"", 0, order}
	case first < second:
		return link{first + " − " + second, 0, order}
	default:
		return link{second + " − " + first, 0, mirrored[order]}
	}
}

// keyOf writes a quantity so that two of one key are one figure.
func keyOf(q quantity) string {
	switch q := q.(type) {
	case literal:
		return fmt.Sprint(q.value)
	case figure:
		var tags []constituent.ID
		for _, c := range q.tags {
			tags = append(tags, c.ID)
		}
		return fmt.Sprint(q.function.name, tags, q.part, q.food)
	case arithmetic:
		return "(" + keyOf(q.a) + " " + q.sign + " " + keyOf(q.b) + ")"
	}
	panic("claim: no such figure")
}

func (l *logic) read(t truth) {
	switch t := t.(type) {
	case comparison:
		for i, order := range t.orders {
			l.add(linkOf(t.terms[i], t.terms[i+1], order))
		}
	case contained:
		l.add(link{key: "contains " + strings.ToLower(t.allergen)})
	case joined:
		l.read(t.a)
		l.read(t.b)
	case denial:
		l.read(t.a)
	}
}

func (l *logic) add(k link) {
	if k.key == "" {
		return
	}
	if _, seen := l.cuts[k.key]; !seen {
		l.keys = append(l.keys, k.key)
	}
	if at, found := l.find(k); !found {
		l.cuts[k.key] = slices.Insert(l.cuts[k.key], at, k.cut)
	}
}

// find gives the place of a number among those of its figure: one in two units is one.
func (l *logic) find(k link) (at int, found bool) {
	for i, cut := range l.cuts[k.key] {
		if math.Abs(cut-k.cut) <= closeness(cut, k.cut) {
			return i, true
		}
		if cut > k.cut {
			return i, false
		}
	}
	return len(l.cuts[k.key]), false
}

// holds tells whether a truth holds in a case: where is, by figure, an even number between two of
// its numbers and an odd one at a number.
func (l *logic) holds(t truth, where map[string]int) bool {
	switch t := t.(type) {
	case comparison:
		for i, order := range t.orders {
			k := linkOf(t.terms[i], t.terms[i+1], order)
			is := float64(0) - k.cut
			if k.key != "" {
				at, _ := l.find(k)
				is = float64(where[k.key] - (2*at + 1))
			}
			if !map[string]bool{"<": is < 0, "<=": is <= 0, ">": is > 0, ">=": is >= 0}[k.order] {
				return false
			}
		}
		return true
	case contained:
		return where["contains "+strings.ToLower(t.allergen)] > 0
	case joined:
		if t.both {
			return l.holds(t.a, where) && l.holds(t.b, where)
		}
		return l.holds(t.a, where) || l.holds(t.b, where)
	case denial:
		return !l.holds(t.a, where)
	}
	panic("claim: no such truth")
}
