package label

import (
	"math"
	"strconv"

	"sipsum/internal/pack"
)

// Accepted is what an authority that checks a card accepts around a declared figure, by the
// guidance on tolerances of its rules. Low and High are as the rules print amounts.
type Accepted struct {
	Low, High string
	Source    string
	Status    string
}

// acceptedOf gives what is accepted around a figure of a card; nil where the rules say nothing
// of the row, limit it one way only, or the card declares no figure but words, or 0. The guidance is on what is in
// 100 g or 100 ml, and not on a serving.
//
// It widens the declared figure to all that rounds to it, read with one digit more (6.4 is
// 6.35 to 6.44), adds and takes off the tolerance, and rounds.
func (r *ruleset) acceptedOf(rules string, w *Working, f Facts) *Accepted {
	x, err := strconv.ParseFloat(w.Printed, 64)
	l, ok := r.line(w.Row)
	if err != nil || x <= 0 || !ok || w.Basis == PerServing {
		return nil
	}
	t, ok := pack.ToleranceOf(rules, w.Row, x)
	if !ok || !t.Least || !t.Most {
		return nil
	}
	digit, bands := math.Pow10(-decimals(w.Printed)), r.bandsOf(l.rounding, f)
	low, high := t.Around(x-0.5*digit, x+0.4*digit)
	return &Accepted{Low: render(low, bands).text, High: render(high, bands).text, Source: t.Source, Status: t.Status}
}
