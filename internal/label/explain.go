package label

import (
	"fmt"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/unit"
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
	Sources []string
}

// Term is one addend of a figure.
type Term struct {
	Tag    string
	Name   string
	Amount *float64 // known part; nil = unknown
	Most   *float64
	Unit   string
	Factor float64
	Gives  float64
	Source string // of the factor
}

// Explain gives the working of every figure of a card, in its order: the basis
// of the rules first, then the serving.
func Explain(rules string, f Facts) ([]Working, error) {
	r, basis, err := prepare(rules, f)
	if err != nil {
		return nil, err
	}
	var out []Working
	for _, l := range r.lines {
		if !r.column(l, f, PerServing).wanted(l) {
			continue
		}
		for _, b := range columnsOf(basis) {
			c := r.column(l, f, b)
			for i, u := range l.units {
				out = append(out, c.working(l, i, u, f))
			}
		}
	}
	return out, nil
}

func (c column) working(l line, i int, unitName string, f Facts) Working {
	s, p := c.sums[i], c.prints[i]
	w := Working{
		Row: l.key, Label: l.label, Basis: c.basis, Unit: unitName, Scale: 1,
		Printed: p.text, Terms: []Term{}, Sources: c.sources(),
	}
	switch c.basis {
	case Per100ml:
		w.Scale = unit.Hundred / f.ServingMl
	case Per100g:
		w.Scale = unit.Hundred / f.ServingG
	}
	if s.anything {
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
	w.Formula = strings.Join(formula, " + ")
	return w
}

func (p part) formula(l line) string {
	if !l.energy && p.factor == 1 {
		return string(p.id)
	}
	return fmt.Sprintf("%g × %s", p.factor, p.id)
}

func (p part) show(l line, unitName string) Term {
	t := Term{
		Tag: string(p.id), Name: constituent.Must(p.id).Name, Unit: unitName,
		Factor: p.factor, Gives: p.factor * p.amount.Mean, Source: p.source,
	}
	if l.energy {
		t.Unit = "g"
	}
	if p.amount.Known {
		t.Amount = &p.amount.Mean
	}
	if p.amount.Missing() > 0 {
		t.Most = &p.amount.WithBounds
	}
	return t
}
