package sheet

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/drink"
)

// Our own bounds: the lines that are tried to mend something, the build's first, and the moves that are
// borne out by runs with draws, which take their time.
const (
	mostLines = 10
	mostMoves = 4
)

// mend finds the smallest change with which a wish comes true: the first that harms nothing else, else
// the one that harms least. nil: no run bears one out.
func (p *proposer) mend(w wish, keep []wish) (*Change, error) {
	margin := w.margin(p.s.Assay)
	if len(margin) == 0 {
		return nil, nil
	}
	moves, err := p.moves(p.lines(), func(before, after *assay.Assay) (float64, bool) {
		was, now := w.margin(before), w.margin(after)
		if len(was) == 0 || len(now) == 0 {
			return 0, false
		}
		return now[0] - was[0] - w.short(margin), true
	})
	if err != nil {
		return nil, err
	}
	want := assay.Want{Chemistry: w.liquid || slices.ContainsFunc(keep, func(k wish) bool { return k.liquid }), Draws: true}
	var best *Change
	for _, m := range moves[:min(len(moves), mostMoves)] {
		b, err := p.reach(m, bearing{want, w.holds})
		switch {
		case errors.Is(err, errNoMoreRuns):
			return best, nil
		case err != nil:
			return nil, err
		case b == nil:
			continue
		}
		c := p.change(w, m.line, b, keep)
		if best == nil || c.harms() < best.harms() {
			best = c
		}
		if best.harms() == 0 {
			break
		}
	}
	return best, nil
}

// lines are those whose amount may be changed, the build's first.
func (p *proposer) lines() []drink.Line {
	d := p.s.Assay.Drink
	lines := slices.Clone(d.Build)
	for i := range d.Components {
		lines = append(lines, d.Components[i].Ingredients...)
	}
	lines = p.written(lines)
	return lines[:min(len(lines), mostLines)]
}

// words are what a change is for, in words: what it mends by its name, and that it then holds.
func (w wish) words(after *assay.Assay) string {
	switch share := math.Floor(hundred * w.share(after)); w.kind {
	case ChangeGlass:
		return "it fits " + w.quote
	case ChangeRule:
		return fmt.Sprintf("then the rule %s passes, in %.0f of 100", w.quote, share)
	default:
		return fmt.Sprintf("then %s holds in %.0f of 100", w.quote, share)
	}
}
