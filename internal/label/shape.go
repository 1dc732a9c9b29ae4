package label

import "slices"

// The shapes of a table whose rules have a short one.
const (
	Vertical   = "vertical"
	Simplified = "simplified"
)

// How the short table takes a row: it stays always; a small-amount text counts as
// insignificant too; only its percentage says whether it is.
const (
	core      = "core"
	small     = "small"
	ofPercent = "percent"
)

// shape gives the shape of the table, and the lines that a short one leaves out: those of
// insignificant amounts, but for the core. It is allowed from so many of them on.
func (r *ruleset) shape(f Facts) (shape string, out []line) {
	if r.simplified == 0 {
		return "", nil
	}
	n := 0
	for _, l := range r.lines {
		if len(l.simple) == 0 || !r.insignificant(l, f) {
			continue
		}
		n++
		if !slices.Contains(l.simple, core) {
			out = append(out, l)
		}
	}
	if n < r.simplified {
		return Vertical, nil
	}
	return Simplified, out
}

// insignificant reports whether a serving has so little of a row that the rules let it be
// declared as nothing.
func (r *ruleset) insignificant(l line, f Facts) bool {
	c := r.column(l, f, PerServing)
	p := c.prints[0]
	switch {
	case !c.number:
		return false
	case slices.Contains(l.simple, ofPercent):
		return c.percent == "0 %"
	case slices.Contains(l.simple, small):
		return p.zero || p.fixed
	}
	return p.zero
}
