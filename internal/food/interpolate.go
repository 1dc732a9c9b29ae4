package food

import (
	"math"
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// Between gives the food that lies a share of the way from one row of a table to another that
// differs from it in one thing, as the roast of a coffee:
//
//	x = (1 − w)·a + w·b,   sd² = ((1 − w)·sd(a) + w·sd(b))² + (b − a)²·sd(w)²
//
// What both have of one row is one figure and stays as it is, and so does what only the nearer
// one has. The figures are drawn with those of the nearer one, whose name the food has.
func Between(a, b *Food, w, sd float64) *Food {
	const middle = 0.5
	near, far := a, b
	if w > middle {
		near, far = b, a
	}
	mixed := *near
	mixed.Values = nil
	for _, v := range near.Values {
		other, ok := far.Value(v.Constituent)
		c, known := constituent.Find(string(v.Constituent))
		if !ok || !known || c.Kind == constituent.Figure || !Stated(v.Amount) || !Stated(other.Amount) || rowOf(near, v) == rowOf(far, other) {
			mixed.Values = append(mixed.Values, v)
			continue
		}
		share := w
		if near == b {
			share = 1 - w
		}
		mixed.Values = append(mixed.Values, between(near, far, c, v, other, share, sd))
	}
	return &mixed
}

// between gives the value a share of the way from v, of near, to other, of far.
func between(near, far *Food, c *constituent.Constituent, v, other Value, share, sd float64) Value {
	own, _ := spreadOf(near, c, v)
	others, _ := spreadOf(far, c, other)
	from, to := v.Amount, other.Amount
	v.Amount = from + share*(to-from)
	v.SD = math.Hypot((1-share)*own+share*others, (to-from)*sd)
	v.N, v.Low, v.High = 0, None, None
	if share > 0 {
		v.State = max(v.State, other.State, estimate.Calculated)
	}
	v.Source = works(v.Source, other.Source)
	return v
}

// works joins the works of two values, each once.
func works(a, b string) string {
	var list []string
	for id := range strings.FieldsSeq(a + " " + b) {
		if id != Borrowed && !slices.Contains(list, id) {
			list = append(list, id)
		}
	}
	return strings.Join(list, " ")
}

// Kept gives the food with a figure that stays as the rest of it goes: its share grows by factor,
// which is known to sd.
func Kept(f *Food, id constituent.ID, factor, sd float64) *Food {
	kept := *f
	kept.Values = append([]Value(nil), f.Values...)
	c := constituent.Must(id)
	for i := range kept.Values {
		v := &kept.Values[i]
		if v.Constituent != id || !Stated(v.Amount) {
			continue
		}
		own, _ := spreadOf(f, c, *v)
		v.Amount, v.SD = v.Amount*factor, math.Hypot(own*factor, v.Amount*sd)
		v.N, v.Low, v.High, v.State = 0, None, None, max(v.State, estimate.Calculated)
	}
	return &kept
}

// Across gives a food of which it is not known where it lies between rows that differ in one thing,
// as the roast of a coffee: each figure stays, and is as unsure as if all between the least and the
// greatest of the rows were as likely. The figures of the rows count as multiples of those of base,
// the row that the food is of:
//
//	sd² = sd(x)² + ((high − x)³ − (low − x)³) / (3·(high − low))
func Across(f, base *Food, rows []*Food) *Food {
	wide := *f
	wide.Values = append([]Value(nil), f.Values...)
	for i := range wide.Values {
		v := &wide.Values[i]
		c, known := constituent.Find(string(v.Constituent))
		of, ok := base.Value(v.Constituent)
		if !known || !ok || c.Kind == constituent.Figure || !Stated(v.Amount) || !Stated(of.Amount) || of.Amount == 0 {
			continue
		}
		low, high := v.Amount, v.Amount
		for _, row := range rows {
			if other, has := row.Value(v.Constituent); has && Stated(other.Amount) && rowOf(row, other) != rowOf(base, of) {
				x := v.Amount * other.Amount / of.Amount
				low, high = min(low, x), max(high, x)
				v.Source = works(v.Source, other.Source)
			}
		}
		if high > low {
			own, _ := spreadOf(f, c, *v)
			about := (math.Pow(high-v.Amount, 3) - math.Pow(low-v.Amount, 3)) / (3 * (high - low))
			v.SD = math.Sqrt(own*own + about)
			v.N, v.Low, v.High, v.State = 0, None, None, max(v.State, estimate.Calculated)
		}
	}
	return &wide
}

// Change is a figure of one food as a multiple of another's.
type Change struct {
	Constituent *constituent.Constituent
	Times       float64
}

// Changes lists by how much the figures of a food differ from another's, in vocabulary order;
// those of one row and those that nobody states do not.
func Changes(from, to *Food) []Change {
	var list []Change
	for _, c := range constituent.All() {
		a, okA := from.Value(c.ID)
		b, okB := to.Value(c.ID)
		if !okA || !okB || c.PerGram == 0 || c.Kind == constituent.Figure || !Stated(a.Amount) || !Stated(b.Amount) || a.Amount == 0 {
			continue
		}
		const worth = 0.005 // our own bound: it would print as × 1.00
		if times := b.Amount / a.Amount; math.Abs(times-1) >= worth {
			list = append(list, Change{c, times})
		}
	}
	return list
}
