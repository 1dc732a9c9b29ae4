package sheet

import (
	"math"
	"slices"

	"sipsum/internal/amount"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/contrast"
	"sipsum/internal/drink"
	"sipsum/internal/evidence"
	"sipsum/internal/ladder"
)

// Compared is a drink, B, against another, A. Both were calculated in one ensemble, under the same
// rules.
type Compared struct {
	A, B *Sheet
	*contrast.Contrast
}

// Compare sets a drink against another.
func Compare(a, b *Sheet) *Compared {
	return &Compared{a, b, contrast.Of(a.Assay, b.Assay, ComparedFigures(a.Assay.Drink, b.Assay.Drink))}
}

// ComparedFigures lists what is told of a serving of two drinks: what the one-page sheet tells, and
// what speaks for the senses of either, in the order of every page.
func ComparedFigures(a, b *drink.Drink) []constituent.ID {
	asked := slices.Concat(evidence.Constituents(a), evidence.Constituents(b))
	var ids []constituent.ID
	for _, g := range Groups() {
		for _, l := range g.Lines {
			if l.Short || slices.Contains(asked, l.ID) {
				ids = append(ids, l.ID)
			}
		}
	}
	for _, id := range asked {
		if !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
	}
	return ids
}

// Telling is how figures are told: those that differ and of which anybody knows how far, those that
// hardly do, and those that nobody can tell apart. What is the same is in none.
type Telling struct{ Told, Hardly, Open []contrast.Figure }

// Told sorts the figures of a serving.
func (c *Compared) Told() Telling {
	var t Telling
	for _, f := range c.Figures {
		switch {
		case f.None(), f.Constituent.ID == constituent.CarbonDioxide && c.still():
		case !f.Bounded(), Hollow(f.A) && Hollow(f.B), f.Sign() == 0 && (Hollow(f.A) || Hollow(f.B)):
			t.Open = append(t.Open, f)
		case hardly(f.Difference, f.A, f.B), c.little(f):
			t.Hardly = append(t.Hardly, f)
		default:
			t.Told = append(t.Told, f)
		}
	}
	return t
}

// still reports whether neither drink sparkles: of the gas of such no word is said, nor a line.
func (c *Compared) still() bool {
	for _, s := range []*Sheet{c.A, c.B} {
		gas, ok := s.Assay.PerServing.Find(constituent.CarbonDioxide)
		if ok && !evidence.Still(s.Assay, gas.Result) {
			return false
		}
	}
	return true
}

// told are the figures of the liquid that a comparison tells.
func (c *Compared) told() []contrast.Liquid {
	return slices.DeleteFunc(slices.Clone(c.Liquids), func(l contrast.Liquid) bool { return l.Kind == contrast.Gas && c.still() })
}

// little reports whether neither drink holds enough of a constituent for anybody to ask, whatever is
// unknown (data/worth.csv).
func (c *Compared) little(f contrast.Figure) bool {
	of := func(r composition.Result, s *Sheet) bool {
		most := r.High
		if r.Partial || r.Unknown {
			most = r.UpTo // NaN is not little
		}
		return ladder.Little(f.Constituent, most, s.Assay.Volume.Mean)
	}
	return of(f.A, c.A) && of(f.B, c.B)
}

// metered reports whether a meter tells two pH apart.
func metered(l contrast.Liquid) bool {
	return furthest(l.Difference) >= amount.MustInstrument(amount.ReadPH).Half
}

// Our own bounds: a difference is hardly one that is less than a fiftieth of the larger figure, which
// no jigger pours, or less than anybody weighs, in any unit. Of a density and of a pH what is lost
// in their digits is hardly one.
const (
	aFiftieth       = 0.02
	weighedByNobody = 0.0005
	lostOfDensity   = 0.0005
	lostOfPH        = 0.005
)

func hardly(d contrast.Difference, a, b composition.Result) bool {
	most := furthest(d)
	return most < aFiftieth*max(a.Mean, b.Mean) || most < weighedByNobody
}

func hardlyLiquid(l contrast.Liquid) bool {
	switch l.Kind {
	case contrast.PH:
		return furthest(l.Difference) < lostOfPH
	case contrast.Density:
		return furthest(l.Difference) < lostOfDensity
	}
	return hardly(l.Difference, l.A, l.B)
}

func furthest(d contrast.Difference) float64 { return max(math.Abs(d.Least), math.Abs(d.Most)) }

// Parted is a list of which some are in both drinks and some in one.
type Parted struct{ Both, OnlyA, OnlyB []string }

// Undecided says what of the allergens waits for a decision, and which readings contradict their recipe.
func (c *Compared) Undecided() Parted {
	return parted(slices.Concat(Contradictions(c.A), c.A.Undecided()), slices.Concat(Contradictions(c.B), c.B.Undecided()))
}

func parted(a, b []string) Parted {
	var p Parted
	for _, x := range a {
		if slices.Contains(b, x) {
			p.Both = append(p.Both, x)
		} else {
			p.OnlyA = append(p.OnlyA, x)
		}
	}
	for _, x := range b {
		if !slices.Contains(a, x) {
			p.OnlyB = append(p.OnlyB, x)
		}
	}
	return p
}

// ToDecide reports whether the comparison tells of anything that waits for a decision.
func (c *Compared) ToDecide() bool {
	u := c.Undecided()
	a, b := c.NewCautions()
	return len(u.Both)+len(u.OnlyA)+len(u.OnlyB) > 0 || len(overdoses(slices.Concat(a, b, c.TooMuchInBoth()), english)) > 0
}

// NewCautions gives the cautions that only one of the drinks has.
func (c *Compared) NewCautions() (onlyA, onlyB []Cautioned) {
	a, b := c.A.Cautions(), c.B.Cautions()
	return notIn(a, b), notIn(b, a)
}

// TooMuchInBoth gives the cautions, as B has them, of what is too much in either drink.
func (c *Compared) TooMuchInBoth() []Cautioned {
	a := c.A.Cautions()
	return slices.DeleteFunc(c.B.Cautions(), func(y Cautioned) bool {
		return y.TooMuch == "" || !slices.ContainsFunc(a, func(x Cautioned) bool { return x.Code == y.Code && x.TooMuch != "" })
	})
}

// notIn gives the cautions of which another list has none of that code, or of which it is too much
// here alone.
func notIn(list, other []Cautioned) []Cautioned {
	var out []Cautioned
	for _, x := range list {
		if !slices.ContainsFunc(other, func(y Cautioned) bool { return y.Code == x.Code && (y.TooMuch != "" || x.TooMuch == "") }) {
			out = append(out, x)
		}
	}
	return out
}
