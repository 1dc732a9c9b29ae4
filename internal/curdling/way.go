package curdling

import (
	"cmp"
	"errors"
	"slices"
	"sync"

	"sipsum/internal/unit"
)

// Kind is what a way out changes.
type Kind string

// The kinds.
const (
	LessSour Kind = "less sour"
	MoreMilk Kind = "more milk"
	Cooler   Kind = "cooler"
	Buffer   Kind = "buffer"
)

// Way is the smallest change of one thing that keeps the drink smooth.
type Way struct {
	Kind
	Salt    *Salt   // of Buffer
	Grams   float64 // taken from the sour part, or added as milk or salt
	Celsius float64 // of the pour: of Cooler the new one
	PH      float64 // then, at central values
	Smooth  float64 // then
	Change  float64 // how much changes, as a share of the drink's mass
}

// mostMilk is as far as more milk is looked for: beyond it is another drink.
const mostMilk = 4.0

// perDegree is what a degree of the pour counts against the mass of the drink in
// the ranking, our choice: from ice to boiling is all of it.
const perDegree = 0.01

// Ways gives the ways out, the smallest change first: none if the drink is smooth
// as it stands, or if nothing within reach helps.
func (m *Mixture) Ways() ([]Way, error) {
	j, err := m.judge()
	if err != nil {
		return nil, err
	}
	now, err := j.cell(m.asItStands())
	if err != nil || now.Verdict == Smooth {
		return nil, err
	}
	trials := m.trials()
	found, faults := make([]*Way, len(trials)), make([]error, len(trials))
	var side sync.WaitGroup
	for i, t := range trials {
		side.Go(func() { found[i], faults[i] = m.try(t) })
	}
	side.Wait()
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	var ways []Way
	for _, w := range found {
		if w != nil {
			ways = append(ways, *w)
		}
	}
	slices.SortStableFunc(ways, func(a, b Way) int { return cmp.Compare(a.Change, b.Change) })
	return ways, nil
}

// trial changes one thing by a size between 0 and most.
type trial struct {
	most float64
	make func(size float64) change
	way  func(size float64) Way
}

func (m *Mixture) trials() []trial {
	stands, grams := m.asItStands(), m.grams(m.asItStands())
	list := []trial{
		{1, func(size float64) change {
			c := stands
			c.dose = 1 - size
			return c
		}, func(size float64) Way {
			taken := size * m.Sour.at(0)
			return Way{Kind: LessSour, Grams: taken, Celsius: m.Celsius, Change: taken / grams}
		}},
		{mostMilk - 1, func(size float64) change {
			c := stands
			c.milk = 1 + size
			return c
		}, func(size float64) Way {
			added := size * m.Milk.at(0)
			return Way{Kind: MoreMilk, Grams: added, Celsius: m.Celsius, Change: added / grams}
		}},
		{max(m.Celsius-m.Protein.Coldest(), 0), func(size float64) change {
			c := stands
			c.celsius -= size
			return c
		}, func(size float64) Way {
			return Way{Kind: Cooler, Celsius: m.Celsius - size, Change: size * perDegree}
		}},
	}
	for _, s := range Salts() {
		list = append(list, trial{s.most, func(size float64) change {
			c := stands
			c.salt, c.perKg = s, size
			return c
		}, func(size float64) Way {
			return Way{Kind: Buffer, Salt: s, Grams: size * grams / unit.Kilo, Celsius: m.Celsius, Change: size / unit.Kilo}
		}})
	}
	return list
}

// try finds the smallest size that is smooth, to a hundredth of the most; a larger
// size is never less smooth. It gives nil where the most is not smooth.
func (m *Mixture) try(t trial) (*Way, error) {
	j, err := m.judge()
	if err != nil {
		return nil, err
	}
	const fine = 0.01
	lo, hi := 0.0, t.most
	best, err := j.cell(t.make(hi))
	if err != nil || best.Verdict != Smooth {
		return nil, err
	}
	for hi-lo > fine*t.most {
		mid := (lo + hi) / 2
		cell, err := j.cell(t.make(mid))
		if err != nil {
			return nil, err
		}
		if cell.Verdict == Smooth {
			hi, best = mid, cell
		} else {
			lo = mid
		}
	}
	w := t.way(hi)
	w.PH, w.Smooth = best.PH, best.Smooth
	return &w, nil
}
