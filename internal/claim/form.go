package claim

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/unit"
)

// Form is a condition as a sum that is nothing or more where the condition holds. Each of its terms adds
// up when liquids are poured together, so that of a drink with something more in it nothing else need be
// known than what is in that. A share, and what 100 ml hold, are such sums too: of what is asked less the
// limit times what it is of.
type Form struct {
	Terms  []Term
	Const  float64
	Strict bool // it holds above nothing only
}

// Term is a figure of a sum, and how often it counts.
type Term struct {
	Times float64
	Of    Addend
}

// Addend is a figure that adds up: what a part holds of a constituent, the mass, the volume; of what is a
// ratio itself its product with what it is of (Property: grams of sucrose, of acid, of °Brix times mass);
// of a pH the base that brings a liquid to it.
type Addend struct {
	Constituent *constituent.Constituent // nil: it is a property
	Part        Part
	Property    Property
	PH          float64 // to which the base brings it
}

// Form gives a single comparison as a sum; ok is false of what is none, such as two truths joined by or, or
// a product of two figures.
func (c *Claim) Form() (f Form, ok bool) {
	cmp, is := c.truth.(comparison)
	if !is || len(cmp.orders) != 1 {
		return Form{}, false
	}
	a, okA := fractionOf(cmp.terms[0])
	b, okB := fractionOf(cmp.terms[1])
	if cmp.orders[0][0] == '>' {
		a, b = b, a
	}
	if !okA || !okB {
		return Form{}, false
	}
	f.Strict = len(cmp.orders[0]) == 1
	if a.reading || b.reading {
		return f.ofPH(a, b)
	}
	low, okA := a.over.product(b.under)
	high, okB := b.over.product(a.under)
	if a.under.same(b.under) {
		low, high, okA, okB = a.over, b.over, true, true
	}
	s := high.plus(low.times(-1))
	f.Terms, f.Const = s.terms, s.number
	return f, okA && okB && len(f.Terms) > 0
}

// ofPH is the form of a < b where one of them is the pH and the other a number: a liquid of a higher pH
// needs acid to come down to the limit.
func (f Form) ofPH(a, b fraction) (Form, bool) {
	sign, limit := 1.0, b
	if b.reading {
		sign, limit = -1, a
	}
	if limit.reading || len(limit.over.terms) > 0 || !limit.under.one() {
		return f, false
	}
	f.Terms = []Term{{sign, Addend{Property: PH, PH: limit.over.number}}}
	return f, true
}

// Forbids gives the allergen that a condition does not want.
func (c *Claim) Forbids() (allergen string, ok bool) {
	d, denied := c.truth.(denial)
	if !denied {
		return "", false
	}
	of, ok := d.a.(contained)
	return of.allergen, ok
}

// sum is a sum of figures and a number.
type sum struct {
	terms  []Term
	number float64
}

// fraction is a sum over another; reading: it is the pH, which is none.
type fraction struct {
	over, under sum
	reading     bool
}

var whole = sum{number: 1}

func (s sum) one() bool { return len(s.terms) == 0 && s.number == 1 }

func (s sum) same(t sum) bool { return s.number == t.number && slices.Equal(s.terms, t.terms) }

func (s sum) plus(t sum) sum {
	out := sum{slices.Clone(s.terms), s.number + t.number}
	for _, x := range t.terms {
		if i := slices.IndexFunc(out.terms, func(y Term) bool { return x.Of == y.Of }); i >= 0 {
			out.terms[i].Times += x.Times
			continue
		}
		out.terms = append(out.terms, x)
	}
	return out
}

func (s sum) times(x float64) sum {
	out := sum{slices.Clone(s.terms), s.number * x}
	for i := range out.terms {
		out.terms[i].Times *= x
	}
	return out
}

// product is that of two sums, one of which is a number.
func (s sum) product(t sum) (sum, bool) {
	switch {
	case len(s.terms) == 0:
		return t.times(s.number), true
	case len(t.terms) == 0:
		return s.times(t.number), true
	}
	return sum{}, false
}

func fractionOf(q quantity) (fraction, bool) {
	switch q := q.(type) {
	case literal:
		return fraction{over: sum{number: q.value}, under: whole}, true
	case figure:
		return q.fraction()
	case arithmetic:
		a, okA := fractionOf(q.a)
		b, okB := fractionOf(q.b)
		if !okA || !okB || a.reading || b.reading {
			return fraction{}, false
		}
		return a.joined(q.sign, b)
	}
	return fraction{}, false
}

func (a fraction) joined(sign string, b fraction) (f fraction, ok bool) {
	switch sign {
	case "/":
		return a.joined("*", fraction{over: b.under, under: b.over})
	case "*":
		over, okA := a.over.product(b.over)
		under, okB := a.under.product(b.under)
		return fraction{over: over, under: under}, okA && okB
	case "-":
		b.over = b.over.times(-1)
	}
	if a.under.same(b.under) {
		return fraction{over: a.over.plus(b.over), under: a.under}, true
	}
	x, okA := a.over.product(b.under)
	y, okB := b.over.product(a.under)
	under, okC := a.under.product(b.under)
	return fraction{over: x.plus(y), under: under}, okA && okB && okC
}

// fraction gives a figure of the drink as sums that add up.
func (f figure) fraction() (fraction, bool) {
	of := func(a Addend) sum { return sum{terms: []Term{{1, a}}} }
	amount := func(i int, p Part) sum { return of(Addend{Constituent: f.tags[i], Part: p}) }
	size := func(p Property) sum { return of(Addend{Property: p}) }
	switch name := f.function.name; {
	case name == "serving", name == "component":
		return fraction{over: amount(0, f.part), under: whole}, true
	case name == "share":
		rest := f.part
		rest.Rest = true
		return fraction{over: amount(0, f.part), under: amount(0, f.part).plus(amount(0, rest))}, true
	case name == "ratio":
		return fraction{over: amount(0, Part{}), under: amount(1, Part{})}, true
	case name == "per100g":
		return fraction{over: amount(0, f.part).times(unit.Hundred), under: size(Mass)}, true
	case name == "per100ml":
		return fraction{over: amount(0, f.part).times(unit.Hundred), under: size(Volume)}, true
	case name == string(PH):
		return fraction{reading: true}, true
	case name == "brix":
		return fraction{over: size(Brix), under: size(Mass)}, true
	case name == "mass", name == "volume":
		return fraction{over: size(Property(name)), under: whole}, true
	case name == "ta", name == "sweetness":
		return fraction{over: size(Property(name)), under: size(Volume)}, true
	case name == "alcohol_abv":
		return fraction{over: size(Strength), under: size(Volume)}, true
	}
	return fraction{}, false
}
