package batch

import (
	"math"

	"sipsum/internal/assay"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/fail"
	"sipsum/internal/taste"
)

// Band is what a serving is held to: a taste within what a judge notices, or a sentence that holds.
type Band struct {
	Name   string
	Share  float64 // of a taste: how far it may be off, of itself; 0 of a sentence
	Source string
}

// bands are those of a drink, with its conditions read.
type bands struct {
	Bench
	list       []Band
	conditions []condition
	want       assay.Want
}

// condition is a claim or a target of the drink.
type condition struct {
	text string
	of   *claim.Claim
}

// The tastes of the bands.
const (
	sweet = "sweet"
	sour  = "sour"
	thick = "thick"
)

// Overflow is the band of a stated glass: it does not.
const Overflow = "the glass"

// reads the conditions of a drink; what cannot be judged is told by the commands that judge it.
func newBands(b Bench) *bands {
	d := b.Recipe.Drink
	s := &bands{Bench: b, want: assay.Want{Draws: true, Chemistry: true}}
	for _, c := range claims.Read(d, &fail.List{}) {
		if c != nil {
			s.conditions = append(s.conditions, condition{c.Text, c})
		}
	}
	for _, t := range d.Targets {
		if read, err := claim.ParseTarget(t.Check, t.Place); err == nil && read.Goal == nil {
			s.conditions = append(s.conditions, condition{read.Text, read.Whole()})
		}
	}
	for _, c := range s.conditions {
		s.want.Figures = append(s.want.Figures, c.of.Constituents()...)
	}
	return s
}

// reading is what a run shows, band by band, each a column: of a taste its figure, of a condition its
// margin.
type reading map[string][]float64

// read reads the bands off a run.
func (s *bands) read(a *assay.Assay) reading {
	r := reading{}
	add := func(name string, x taste.Index) {
		if x.Why == "" && x.Mean > 0 {
			r[name] = append([]float64{x.Mean}, x.Draws...)
		}
	}
	if tastes := taste.Of(a.Glass()); tastes.Why == "" {
		add(sweet, tastes.Sweet.Index)
		add(sour, tastes.Sour.Titratable)
		add(thick, tastes.Body.Viscosity)
	}
	g := claims.NewGlass(a, s.Declared)
	for _, c := range s.conditions {
		if o, err := c.of.Evaluate(g, nil); err == nil && len(o.Margin) > 0 {
			r[c.text] = o.Margin
		}
	}
	if of := s.Recipe.Drink.Glass; of != nil {
		r[Overflow] = []float64{of.Base() - a.Filled.Mean}
		for _, x := range a.Filled.Draws {
			r[Overflow] = append(r[Overflow], of.Base()-x)
		}
	}
	return r
}

// hold lists the bands in which a drink is as it stands: a sentence that does not hold already is
// none.
func (s *bands) hold(now reading, tastes taste.Profile) {
	least := func(name string, d taste.Difference) {
		if now[name] == nil {
			return
		}
		b := Band{name, d.Low * percent, d.Source}
		if n, ok := limits().noticed[name]; ok && n.share < b.Share {
			b.Share, b.Source = n.share, n.source
		}
		s.list = append(s.list, b)
	}
	least(sweet, tastes.Sweet.Notices)
	least(sour, tastes.Sour.Notices)
	least(thick, tastes.Body.Notices)
	for _, c := range s.conditions {
		if m := now[c.text]; m != nil && m[0] >= 0 {
			s.list = append(s.list, Band{Name: c.text})
		}
	}
	if m := now[Overflow]; m != nil && m[0] >= 0 {
		s.list = append(s.list, Band{Name: Overflow})
	}
}

// leaves names the first band that draw d of a reading leaves; central is the drink as it is written.
func (s *bands) leaves(r, central reading, d int) (name string, out bool) {
	for _, b := range s.list {
		col, was := r[b.Name], central[b.Name]
		switch {
		case b.Share > 0 && (d >= len(col) || math.Abs(col[d]-was[0]) > b.Share*was[0]):
			return b.Name, true
		case b.Share == 0 && (d >= len(col) || col[d] < 0):
			return b.Name, true
		}
	}
	return "", false
}

// drawn is how many draws every band of a reading has.
func (s *bands) drawn(r reading) int {
	n := math.MaxInt
	for _, b := range s.list {
		n = min(n, len(r[b.Name]))
	}
	return n
}
