package label

import (
	"fmt"
	"strconv"
	"strings"

	"sipsum/internal/constituent"
)

// Working is how one figure of a card came about.
type Working struct {
	Row     string
	Label   string
	Basis   string
	Unit    string
	Formula string
	Terms   []Term  // per serving
	Scale   float64 // of one serving to the basis
	Value   *float64
	Most    *float64
	Printed string
	Percent string
	Against string // the reference
	// Accepted is what an authority accepts around what is printed on the first basis; nil
	// where the rules have no guidance on it.
	Accepted *Accepted
	Status   string
	Sources  []string
}

// Term is one addend of a figure.
type Term struct {
	Tag    string
	Name   string
	Amount *float64 // known part; nil = unknown
	Most   *float64
	Unit   string
	Factor float64
	Gives  *float64 // nil = unknown
	Source string   // of the factor, or of the row
}

// Explain gives the working of every figure of a card, in its order: the columns as the
// rules print them.
func Explain(rules string, f Facts) ([]Working, error) {
	r, basis, err := prepare(rules, f)
	if err != nil {
		return nil, err
	}
	works := r.explain(basis, f.closed())
	for i := range works {
		works[i].Accepted = r.acceptedOf(rules, &works[i], f.closed())
	}
	return works, nil
}

func (r *ruleset) explain(basis string, f Facts) []Working {
	var out []Working
	for _, l := range r.lines {
		if _, _, ok := r.row(l, basis, f); !ok {
			continue
		}
		serving, first := r.both(l, f, basis)
		for _, b := range r.columnsOf(basis) {
			c := first
			if b == PerServing {
				c = serving
			}
			for i, u := range l.units {
				out = append(out, c.working(l, i, u, f))
			}
		}
	}
	return out
}

func (c column) working(l line, i int, unitName string, f Facts) Working {
	s, p := c.sums[i], c.prints[i]
	w := Working{
		Row: l.key, Label: l.label, Basis: c.basis, Unit: unitName, Scale: scaleTo(c.basis, f),
		Printed: p.text, Terms: []Term{}, Sources: []string{}, Status: worst(c.sources()),
	}
	for _, by := range c.sources() {
		w.Sources = append(w.Sources, by.source)
	}
	if s.anything || s.complete() {
		w.Value = &s.known
	}
	if s.bounded() && !s.complete() {
		w.Most = &s.most
	}
	if i == 0 && c.percent != "" {
		w.Percent, w.Against = c.percent, fmt.Sprintf("%g %s", c.ref.value, c.ref.unit)
	}
	var formula []string
	for _, t := range s.parts {
		w.Terms = append(w.Terms, t.show(l, unitName))
		formula = append(formula, t.formula(l))
	}
	w.Formula = strings.ReplaceAll(strings.Join(formula, " + "), "+ −", "− ")
	return w
}

// formula writes a term: "17 × CHOAVL", "NA", "−WATER".
func (p part) formula(l line) string {
	switch {
	case p.none != 0:
		return "no factor for " + string(p.id)
	case !l.energy && p.factor == 1:
		return string(p.id)
	case p.factor == -1:
		return "−" + string(p.id)
	}
	const digits = 4
	return strconv.FormatFloat(p.factor, 'g', digits, 64) + " × " + string(p.id)
}

func (p part) show(l line, unitName string) Term {
	t := Term{Tag: string(p.id), Name: constituent.Must(p.id).Name, Unit: unitName, Factor: p.factor, Source: p.source}
	if t.Source == "" {
		t.Source = l.source
	}
	if c := constituent.Must(p.id); c.Kind == constituent.Figure {
		t.Unit = c.Unit
	} else if l.energy {
		t.Unit = "g"
	}
	if p.amount.Known {
		gives := p.factor * p.amount.Mean
		t.Amount, t.Gives = &p.amount.Mean, &gives
	}
	if p.amount.Missing() > 0 {
		most := max(p.amount.WithBounds, orNothing(p.amount.Most()))
		t.Most = &most
	}
	return t
}
