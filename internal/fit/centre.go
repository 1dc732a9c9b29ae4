package fit

import (
	"context"
	"math"
	"slices"

	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/optimise"
)

// parts are how far the limits of ready targets are drawn in, of the way to their middle, one after the other until all
// holds surely: our own bounds, each is a search of its own.
var parts = []float64{0.1, 0.25, 0.5, 0.75}

// centred looks for an answer that stands less near to the limits of ready targets. What is just met at central values
// is missed in half of the draws: the limits are drawn in towards the middle, and of the answers that meet what was
// asked, with no less of a goal, the one counts that holds in most draws.
func (j *judge) centred(ctx context.Context, p optimise.Problem, found optimise.Solution, res *Result) (optimise.Solution, error) {
	room := j.room()
	if !found.Met || !slices.ContainsFunc(room, func(x float64) bool { return x > 0 }) {
		return found, nil
	}
	before, err := before(ctx, j)
	if err != nil {
		return found, err
	}
	was := claims.NewGlass(before, j.Declared)
	sure, may, err := j.chance(ctx, was, found.At)
	if surely, _ := claim.Sides(sure); err != nil || surely {
		return found, err
	}
	least := [2]float64{sure, may}
	best, runs, offset := found, found.Runs, slices.Clone(j.offset)
	defer func() { j.offset = offset }()
	p.Brief = true
	for _, part := range parts {
		if surely, _ := claim.Sides(sure); surely { // no farther than it takes
			break
		}
		for k := range offset {
			j.offset[k] = offset[k] + part*room[k]
		}
		next, err := optimise.Solve(ctx, p)
		if err != nil {
			return found, err
		}
		runs += next.Runs
		if !next.Met { // nor are narrower ones
			break
		}
		a, err := j.withDraws(ctx, next.At)
		if err != nil {
			return found, err
		}
		if next.Point, err = j.read(a); err != nil {
			return found, err
		}
		if next.Met = met(next.Point); !next.Met || nearer(found.Point, next.Point) {
			continue
		}
		holds, might, err := j.chance(ctx, was, next.At)
		if err != nil {
			return found, err
		}
		if oftener(holds, might, sure, may) {
			best, sure, may = next, holds, might
		}
	}
	best.Runs = runs
	if !slices.Equal(best.At, found.At) { // that nothing moves less was found of narrower limits
		best.Proven, best.Beside, res.Least = false, false, least
	}
	return best, nil
}

// oftener reports whether chances are better, as far as they are told.
func oftener(sure, may, thanSure, thanMay float64) bool {
	a, b := ofAHundred(sure), ofAHundred(thanSure)
	return a > b || a == b && ofAHundred(may) > ofAHundred(thanMay)
}

// room is, by condition, how far it is from its limit to what it is to be: of what is kept to the figure as it is
// written, of what moves to half as much more as is asked. None of what somebody wrote.
func (j *judge) room() []float64 {
	room := make([]float64, len(j.conditions))
	for k, c := range j.conditions {
		if c.of == nil || j.aims[c.aim].Says == "" {
			continue
		}
		x, below, ok := c.of.Limit()
		if !ok {
			continue
		}
		r := j.aims[c.aim].Ready
		share := r.Least // of the figure as it is written, at which the limit lies
		if below {
			share = r.Most
		}
		room[k] = math.Abs(x/share) * math.Abs(1-share)
		if !r.Kept {
			room[k] /= 2
		}
	}
	return room
}

// chance is in which share of the draws all ready targets hold at a point, and the glass.
func (j *judge) chance(ctx context.Context, was *claims.Glass, at []float64) (sure, may float64, err error) {
	a, err := j.withDraws(ctx, at)
	if err != nil {
		return 0, 0, err
	}
	var all together
	g := claims.NewGlass(a, j.Declared)
	for _, x := range j.aims {
		if x.Says == "" {
			continue
		}
		holds, err := beside(x.Whole().Subject(), x.Ready, was, g)
		if err != nil {
			return 0, 0, err
		}
		all.add(holds)
	}
	if j.Drink.Glass != nil {
		all.add(j.within(a))
	}
	sure, may = all.shares()
	return sure, may, nil
}
