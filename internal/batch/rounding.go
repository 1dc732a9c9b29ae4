package batch

import (
	"context"
	"math"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/unit"
)

// Rounding is what the scale's steps move, whether each serve is weighed by itself or all at once.
type Rounding struct {
	Figure *constituent.Constituent // that moves most; nil: none does
	Share  float64                  // by how much, of itself
	PH     float64
}

// rounding runs the drink with what the scale shows.
func (m *maker) rounding(ctx context.Context) (Rounding, error) {
	var out Rounding
	want := assay.Want{Chemistry: true}
	exact, err := m.Central.Run(ctx, nil, want)
	if err != nil {
		return out, err
	}
	for _, other := range []amount.Amounts{m.out.rounded(m.Central.Written(), false), m.out.rounded(m.Central.Written(), true)} {
		rounded, err := m.Central.Run(ctx, other, want)
		if err != nil {
			return out, err
		}
		out.compare(exact, rounded)
	}
	return out, nil
}

// compare notes what of a serving moved.
func (r *Rounding) compare(exact, rounded *assay.Assay) {
	for _, f := range exact.PerServing {
		g, ok := rounded.PerServing.Find(f.Constituent.ID)
		if !ok || f.Mean == 0 || math.IsNaN(f.Mean) {
			continue
		}
		if share := math.Abs(g.Mean/f.Mean - 1); share > r.Share+unit.Closeness {
			r.Figure, r.Share = f.Constituent, share
		}
	}
	if a, b := exact.Chemistry, rounded.Chemistry; a != nil && b != nil && a.PH.Why == "" && b.PH.Why == "" {
		r.PH = max(r.PH, math.Abs(a.PH.Mean-b.PH.Mean))
	}
}

// rounded gives what the scale shows of the amounts that a run can change, by path, as amounts of the
// drink as its file writes it: of the build each serve weighed by itself, or all in one round.
func (b *Batch) rounded(written amount.Amounts, round bool) amount.Amounts {
	other := amount.Amounts{}
	add := func(w Weighed) {
		if _, asked := written[w.Path]; asked && w.measured() {
			other[w.Path] = times(w.Rounded, w.file)
		}
	}
	for _, w := range b.all() {
		add(*w)
	}
	if round {
		for _, p := range b.Build {
			add(p.All)
		}
	}
	return other
}
