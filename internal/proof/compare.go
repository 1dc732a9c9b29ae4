package proof

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// agreement is how far a stored figure may be from the one calculated anew, as a share of the
// larger: our own bound, a thousandth of a thousandth of what the best balance reads.
const agreement = 1e-9

// Moved is a figure that is not the same when it is calculated anew.
type Moved struct {
	ID   string
	Of   string
	What string // which side of it: "printed", "mean", "low", …, "brought_by", "missing", "new"
	Pack string
	Now  string
	by   float64 // how far its mean moved, as a share of the larger
}

// Compare gives what moved between the figures of a pack and those calculated anew: what is printed otherwise
// first, then by how far the mean moved, else in the order of the pack. printed compares nothing else.
func Compare(pack, now []Figure, printed bool) []Moved {
	var list []Moved
	anew := map[string]*Figure{}
	for i := range now {
		anew[now[i].ID] = &now[i]
	}
	for i := range pack {
		p := &pack[i]
		n, ok := anew[p.ID]
		delete(anew, p.ID)
		switch {
		case !ok:
			list = append(list, Moved{p.ID, p.Of, "missing", p.Printed, "", 0})
		case p.Printed != n.Printed || !printed && (p.In != n.In || p.Of != n.Of):
			list = append(list, Moved{p.ID, n.Of, "printed", p.Printed, n.Printed, apart(p.Mean, n.Mean)})
		case !printed:
			list = append(list, p.stored(n)...)
		}
	}
	for i := range now {
		if n := &now[i]; anew[n.ID] != nil && !printed {
			list = append(list, Moved{n.ID, n.Of, "new", "", n.Printed, 0})
		}
	}
	slices.SortStableFunc(list, func(a, b Moved) int { return cmp.Or(b.seen()-a.seen(), cmp.Compare(b.by, a.by)) })
	return list
}

// seen is 1 of what moves on a printed page, and 0 of what is only stored.
func (m Moved) seen() int {
	if slices.Contains([]string{"printed", "missing", "new"}, m.What) {
		return 1
	}
	return 0
}

// stored compares what is stored of a figure that is printed the same.
func (f *Figure) stored(now *Figure) []Moved {
	for _, side := range []struct {
		what      string
		pack, now *float64
	}{{"mean", f.Mean, now.Mean}, {"sd", f.SD, now.SD}, {"low", f.Low, now.Low}, {"high", f.High, now.High}, {"up_to", f.UpTo, now.UpTo}} {
		if !agree(side.pack, side.now) {
			return []Moved{{f.ID, now.Of, side.what, exactly(side.pack), exactly(side.now), apart(f.Mean, now.Mean)}}
		}
	}
	if !slices.EqualFunc(f.Parts, now.Parts, Part.agrees) {
		return []Moved{{f.ID, now.Of, "brought_by", partsOf(f.Parts), partsOf(now.Parts), 0}}
	}
	return nil
}

func (p Part) agrees(other Part) bool {
	same := p.Food == other.Food && p.Name == other.Name && p.Lender == other.Lender && p.Printed == other.Printed && p.State == other.State && p.Why == other.Why && p.At == other.At
	return same && slices.Equal(p.Through, other.Through) && slices.Equal(p.Tags, other.Tags) && agree(p.Mean, other.Mean) && agree(p.Most, other.Most)
}

func agree(a, b *float64) bool { return apart(a, b) <= agreement }

// apart is how far two numbers are from each other, as a share of the larger; all of it where only one is there.
func apart(a, b *float64) float64 {
	switch {
	case a == nil && b == nil || a != nil && b != nil && *a == *b:
		return 0
	case a == nil || b == nil:
		return 1
	}
	return math.Abs(*a-*b) / max(math.Abs(*a), math.Abs(*b))
}

func exactly(x *float64) string {
	if x == nil {
		return "none"
	}
	return plain(*x)
}

// partsOf tells the parts of a figure, as many as a line holds.
func partsOf(parts []Part) string {
	const most = 6 // our own bound: a line
	text := ""
	for i, p := range parts {
		if i == most {
			return text + fmt.Sprintf(" and %d more", len(parts)-most)
		}
		if i > 0 {
			text += ", "
		}
		text += p.Food + " " + p.Printed
	}
	return text
}
