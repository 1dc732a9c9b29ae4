package dosing

import (
	"math"

	"sipsum/internal/ledger"
)

// Search is a pot, what is poured into it, and the instrument that reads it.
type Search struct {
	Pot  *ledger.Pot
	Pour func(pot *ledger.Pot, grams []float64)   // pours a column of grams
	Read func(pot *ledger.Pot) ([]float64, error) // what the instrument reads; an error: it reads no such pot
	Most float64                                  // the largest dose, in grams
	Near float64                                  // a reading as near as this is the same
}

// Passed is the error of a reading that lies behind the pot: no dose leads to it.
type Passed struct {
	Now float64
	Led float64 // what the largest dose leads to
}

func (Passed) Error() string { return "the pot has passed it" }

// OutOfReach is the error of a reading that no dose reaches.
type OutOfReach struct {
	Now     float64
	Nearest float64 // the reading that comes nearest
	Dose    float64 // at which it does
}

func (OutOfReach) Error() string { return "no dose reaches it" }

// Twice is the error of a reading that two doses make.
type Twice struct{ First, Second float64 }

func (Twice) Error() string { return "two doses make it" }

// point is a dose and how far the pot is then from what is wanted.
type point struct{ dose, off float64 }

const (
	decades   = 6
	perDecade = 8
)

// Central gives the dose at central values.
func (s Search) Central(want float64) (float64, error) {
	one := s
	one.Pot = s.Pot.First(1).Copy()
	read := func(dose float64) (float64, error) {
		got, err := one.at([]float64{dose})
		if err != nil {
			return 0, err
		}
		return got[0] - want, nil
	}
	now, err := read(0)
	if err != nil {
		return 0, err
	}
	if math.Abs(now) <= s.Near {
		return 0, nil
	}
	seen := []point{{0, now}}
	for i := range decades*perDecade + 1 {
		dose := s.Most * math.Pow(10, float64(i)/perDecade-decades)
		off, err := read(dose)
		if err != nil {
			break // no instrument reads on
		}
		seen = append(seen, point{dose, off})
	}
	crossed := crossings(seen)
	switch len(crossed) {
	case 0:
		return 0, beyond(seen, want)
	case 1:
		return s.between(read, seen[crossed[0]-1], seen[crossed[0]])
	}
	first, err := s.between(read, seen[crossed[0]-1], seen[crossed[0]])
	if err != nil {
		return 0, err
	}
	second, err := s.between(read, seen[crossed[1]-1], seen[crossed[1]])
	if err != nil {
		return 0, err
	}
	return 0, Twice{first, second}
}

// crossings gives the places before which what was wanted has been passed.
func crossings(seen []point) (at []int) {
	for i := 1; i < len(seen); i++ {
		if math.Signbit(seen[i-1].off) != math.Signbit(seen[i].off) {
			at = append(at, i)
		}
	}
	return at
}

// beyond tells why nothing of what was seen is what was wanted.
func beyond(seen []point, want float64) error {
	nearest := seen[0]
	for _, p := range seen[1:] {
		if math.Abs(p.off) < math.Abs(nearest.off) {
			nearest = p
		}
	}
	now := want + seen[0].off
	// A dose that hardly matters may lead a little towards it: that is no way there.
	if nearest.dose == 0 || math.Abs(nearest.off) > (1-leastWay)*math.Abs(seen[0].off) {
		return Passed{now, want + seen[len(seen)-1].off}
	}
	return OutOfReach{Now: now, Nearest: want + nearest.off, Dose: nearest.dose}
}

// leastWay is the share of the way to a reading that a dose has to go to lead there at all.
const leastWay = 0.01

// between finds the dose between two that lie on both sides.
func (s Search) between(read func(float64) (float64, error), a, b point) (float64, error) {
	f := falsi{a: a, b: b}
	for range mostSteps {
		if f.near(centralSlack * s.Near) {
			break
		}
		next := f.next()
		off, err := read(next)
		if err != nil {
			return 0, err
		}
		f.take(point{next, off})
	}
	return f.best().dose, nil
}

const (
	mostSteps    = 60
	drawSteps    = 14
	centralSlack = 1e-6 // of what counts as the same
)

// Draws gives the dose that each draw would want for its own reading; column 0 is given.
func (s Search) Draws(want []float64, central float64) ([]float64, error) {
	n := len(want)
	one := s
	one.Pot = s.Pot.First(n).Copy()
	low, high := make([]float64, n), make([]float64, n)
	const wide = 16
	for d := range high {
		high[d] = min(wide*central, s.Most)
	}
	near, err := one.at(low)
	if err != nil {
		return nil, err
	}
	far, err := one.at(high)
	if err != nil {
		return nil, err
	}
	search := make([]falsi, n)
	for d := range search {
		search[d] = falsi{a: point{0, near[d] - want[d]}, b: point{high[d], far[d] - want[d]}}
	}
	next := make([]float64, n)
	for range drawSteps {
		done := true
		for d := range search {
			next[d] = search[d].best().dose
			if search[d].apart() && !search[d].near(s.Near) {
				next[d], done = search[d].next(), false
			}
		}
		if done {
			break
		}
		got, err := one.at(next)
		if err != nil {
			return nil, err
		}
		for d := range search {
			if search[d].apart() && !search[d].near(s.Near) {
				search[d].take(point{next[d], got[d] - want[d]})
			}
		}
	}
	dose := make([]float64, n)
	for d := range dose {
		dose[d] = search[d].best().dose
	}
	dose[0] = central
	return dose, nil
}

// at reads a copy of the pot with doses in it.
func (s Search) at(doses []float64) ([]float64, error) {
	pot := s.Pot.Copy()
	s.Pour(pot, doses)
	return s.Read(pot)
}

// falsi is a bracket that closes on a root.
type falsi struct {
	a, b    point
	weighed float64 // what the end that stayed counts as; 0: as it is
	stayed  int     // which end stayed: -1 a, 1 b, 0 neither
}

// apart reports whether the ends lie on both sides.
func (f *falsi) apart() bool { return math.Signbit(f.a.off) != math.Signbit(f.b.off) }

// best is the end that is nearer.
func (f *falsi) best() point {
	if math.Abs(f.a.off) <= math.Abs(f.b.off) {
		return f.a
	}
	return f.b
}

func (f *falsi) near(slack float64) bool { return math.Abs(f.best().off) <= slack }

// next is where the chord of the ends, the one that stayed counted for half, meets zero.
func (f *falsi) next() float64 {
	a, b := f.a.off, f.b.off
	if f.stayed < 0 {
		a *= f.weighed
	} else if f.stayed > 0 {
		b *= f.weighed
	}
	return f.a.dose + (f.b.dose-f.a.dose)*a/(a-b)
}

// take puts a point in the place of the end on its side.
func (f *falsi) take(p point) {
	const half = 0.5
	stayed := -1
	if math.Signbit(p.off) == math.Signbit(f.a.off) {
		f.a, stayed = p, 1
	} else {
		f.b = p
	}
	if f.stayed == stayed {
		f.weighed *= half
	} else {
		f.stayed, f.weighed = stayed, 1
	}
}
