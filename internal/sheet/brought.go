package sheet

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/evidence"
	"sipsum/internal/ledger"
	"sipsum/internal/recipe"
)

// Bringer is what one component, or one food poured directly, brings of a constituent.
type Bringer struct {
	ID   recipe.PartID
	Name string
	composition.Figure
	By string // whose figure a weighty share of it is, where nobody measured the food's own
}

// Brought are the parts of a constituent: those with something known, largest
// first, and those of which nothing is known.
type Brought struct {
	Known, Unknown []Bringer
}

// BroughtTo gives the parts of a constituent.
func BroughtTo(a *assay.Assay, id constituent.ID) Brought {
	var b Brought
	whole, _ := a.PerServing.Find(id)
	for i := range a.Components {
		c := &a.Components[i]
		f, ok := c.Constituents.Find(id)
		switch {
		case !ok || None(f.Result):
		case Hollow(f.Result):
			b.Unknown = append(b.Unknown, Bringer{ID: c.ID, Name: c.Name, Figure: f})
		default:
			b.Known = append(b.Known, Bringer{c.ID, c.Name, f, byOf(whole.Contributions, c.ID)})
		}
	}
	slices.SortStableFunc(b.Known, func(x, y Bringer) int { return cmp.Compare(y.Mean, x.Mean) })
	return b
}

// byOf tells whose figures a part rests on, as far as they are not its own foods'.
func byOf(list []composition.Contribution, id recipe.PartID) string {
	total, lent := 0.0, map[string]float64{}
	for _, c := range list {
		if within := len(c.Path) > 0 && c.Path[0] == id.Component; !within && (len(c.Path) > 0 || c.Food != id.Food.String()) {
			continue
		}
		total += c.Mean
		lent[c.By] += c.Mean
	}
	for _, by := range slices.Sorted(maps.Keys(lent)) {
		if by != "" && lent[by] > 0 && lent[by] >= ledger.Weighty*total {
			return by
		}
	}
	return ""
}

// HasShare reports whether a share of the total was calculated.
func HasShare(s composition.Share) bool { return !math.IsNaN(s.Mean) && s != composition.Share{} }

// tiny is the share below which a part is counted, not listed: our own bound, it would
// print as less than 1 %.
const tiny = 0.005

// small reports whether a part's share is known and tiny.
func (b Bringer) small() bool { return HasShare(b.Share) && b.Share.Mean < tiny }

// Listed gives the known parts that are worth a line, and how many more there are. The
// largest is, and one that may be more than is known.
func (b Brought) Listed() (list []Bringer, more int) {
	for i, k := range b.Known {
		if i > 0 && k.small() && !k.Partial {
			more++
		} else {
			list = append(list, k)
		}
	}
	return list, more
}

// Named gives the known parts that are worth a word in a sentence: those with a share.
func (b Brought) Named() []Bringer {
	var list []Bringer
	for i, k := range b.Known {
		if HasShare(k.Share) && (i == 0 || !k.small()) {
			list = append(list, k)
		}
	}
	return list
}

// AllKnown reports whether a part that is the only known one brings all there is, and not
// only all that is known.
func (b Brought) AllKnown() bool { return len(b.Unknown) == 0 && !b.Known[0].Partial }

// half is the least share of who leads.
const half = 0.5

// Lead gives the part that brings most of a constituent, if its share is known and is half
// or more.
func (b Brought) Lead() (Bringer, bool) {
	if len(b.Known) == 0 || !HasShare(b.Known[0].Share) || b.Known[0].Share.Mean < half {
		return Bringer{}, false
	}
	return b.Known[0], true
}

// Told is a constituent whose parts are told, and, if it speaks for a sensory category, its
// place there.
type Told struct {
	Figure composition.Figure
	Parts  Brought
	Entry  *evidence.Entry
}

// Contributions lists the constituents whose parts a page tells at length: energy, all that
// speak for a sensory category, and fat. One of which no part is known is left out.
func (s *Sheet) Contributions() []Told {
	var list []Told
	done := map[constituent.ID]bool{}
	tell := func(id constituent.ID, e *evidence.Entry) {
		if done[id] || !figured(s.Assay)(id) {
			return
		}
		done[id] = true
		f, _ := s.Assay.PerServing.Find(id)
		if parts := BroughtTo(s.Assay, id); len(parts.Known) > 0 {
			list = append(list, Told{f, parts, e})
		}
	}
	tell(constituent.Energy, nil)
	for _, c := range s.Evidence.Categories {
		for i := range c.Entries {
			tell(c.Entries[i].Constituent.ID, &c.Entries[i])
		}
	}
	tell(constituent.Fat, nil)
	return list
}
