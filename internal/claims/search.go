package claims

import (
	"context"
	"math"
	"slices"

	"sipsum/internal/claim"
	"sipsum/internal/food"
)

// search looks for a world in which a claim of a drink is false.
type search struct {
	Bench
	ctx   context.Context
	glass *Glass
	claim *claim.Claim
}

// holds judges the claim of the drink with levers set.
func (s search) holds(list []lever, at []float64) (o claim.Outcome, other *Glass, err error) {
	if err := s.runs.spend(); err != nil {
		return o, nil, err
	}
	d, stand := changed(s.Assay.Drink, list, at)
	a, err := s.Again(s.ctx, d, s.claim.OfLiquid())
	if err != nil {
		return o, nil, err
	}
	other = NewGlass(a, s.Declared)
	other.standFor = stand
	o, err = s.claim.Evaluate(other, nil)
	return o, other, err
}

// isFalse tells whether it is false there, whatever is unknown.
func (s search) isFalse(list []lever, at []float64) (bool, error) {
	o, _, err := s.holds(list, at)
	_, may := o.AtCentre()
	return err == nil && !may, err
}

// world finds the nearest world of some levers; nil if there is none.
func (s search) world(list []lever, margin []float64) (*World, error) {
	w, ok, err := claim.Nearest(ranges(list), margin, func(at []float64) (float64, error) {
		o, _, err := s.holds(list, at)
		if err != nil {
			return 0, err
		}
		if m := o.Margin[0]; m > 0 || !o.Central() {
			return m, nil
		}
		return math.SmallestNonzeroFloat64, nil // at the limit, and it counts as held
	})
	if err != nil || !ok {
		return nil, err
	}
	at := outwards(list, w.At)
	o, other, err := s.holds(list, at) // as it is told
	if err != nil || o.Central() {
		return nil, err
	}
	if _, may := o.AtCentre(); may { // what nobody knows is at the end that hurts
		if list, at, ok = s.glass.hurting(s.claim, o, other, list, at); !ok {
			return nil, errUnstated
		}
		if is, err := s.isFalse(list, at); err != nil || !is {
			return nil, err
		}
	}
	if list, at, err = s.needed(list, at); err != nil {
		return nil, err
	}
	return s.told(list, at), nil
}

// needed leaves out what a world does not need: without it the claim is false all the same, or as soon as
// the rest is hardly farther off.
func (s search) needed(list []lever, at []float64) ([]lever, []float64, error) {
	for i := len(list) - 1; i >= 0 && len(list) > 1; i-- {
		fewer, set := slices.Delete(slices.Clone(list), i, i+1), slices.Delete(slices.Clone(at), i, i+1)
		farther := slices.Clone(set)
		for k, l := range fewer {
			if x := l.column[0]; !math.IsNaN(x) {
				farther[k] = min(max(x+hardly*(set[k]-x), l.low), l.high)
			}
		}
		farther = outwards(fewer, farther)
		is, err := s.isFalse(fewer, farther)
		if err != nil {
			return nil, nil, err
		}
		if !is {
			continue
		}
		list, at = fewer, farther
		switch is, err = s.isFalse(fewer, set); {
		case err != nil:
			return nil, nil, err
		case is:
			at = set
		}
		i = len(list) // what was needed beside it may not be needed without
	}
	return list, at, nil
}

// outwards rounds what levers are set to.
func outwards(list []lever, at []float64) []float64 {
	out := make([]float64, len(at))
	for i, l := range list {
		out[i] = l.outwards(at[i])
	}
	return out
}

// told is a world as it is told.
func (s search) told(list []lever, at []float64) *World {
	world := &World{Distance: distance(list, at)}
	world.Drink, _ = changed(s.Assay.Drink, list, at)
	for i, l := range list {
		c := l.change(at[i])
		if l.food != nil && l.food.ID.Table != food.Own {
			c.Line = ownLine(l.food, valuesOf(l.food, list, at))
		}
		world.Changes = append(world.Changes, c)
	}
	return world
}

// distance is how far levers are from what they are taken to be; what nobody knows is nowhere.
func distance(list []lever, at []float64) float64 {
	var known []lever
	var set []float64
	for i, l := range list {
		if !math.IsNaN(l.column[0]) {
			known, set = append(known, l), append(set, at[i])
		}
	}
	if len(known) == 0 {
		return 0
	}
	return claim.Distance(ranges(known), set)
}
