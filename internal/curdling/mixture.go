package curdling

import (
	"errors"

	"sipsum/internal/acid"
	"sipsum/internal/unit"
)

// Part is a part of the drink, draw by draw; column 0 is central. The zero Part
// is absent.
type Part struct {
	Grams     []float64
	Solutions []*acid.Solution // of that mass
}

// Mixture is a drink that may curdle.
type Mixture struct {
	Protein *Protein
	Celsius float64 // of the pour
	Milk    Part
	Sour    Part
	Rest    Part // neither; may be absent
	// Place is where in its band the curdling pH lies in each draw, from 0 to 1;
	// column 0 is the middle.
	Place []float64
	// Lowest is the lowest pH that the ions of the milk part are known at: that of
	// its titration. Below it nothing is called smooth. 0 sets no limit.
	Lowest float64
}

// BenchCelsius is the temperature at which mixtures are solved: a meter's.
const BenchCelsius = 25.0

var errParts = errors.New("a curdle map needs a milk part and a sour part")

// change is a departure from the drink as it stands.
type change struct {
	dose    float64 // times the sour part
	milk    float64 // times the milk part
	celsius float64
	salt    *Salt
	perKg   float64 // g of salt per kg of the drink as it stands
}

func (m *Mixture) asItStands() change { return change{dose: 1, milk: 1, celsius: m.Celsius} }

// grams gives the mass of the drink at central values, the salt apart.
func (m *Mixture) grams(c change) float64 {
	return c.milk*m.Milk.at(0) + c.dose*m.Sour.at(0) + m.Rest.at(0)
}

func (p Part) at(draw int) float64 {
	if p.Grams == nil {
		return 0
	}
	return p.Grams[draw]
}

// shareOf gives the milk part's share of the mass when it is some times as much.
func (m *Mixture) shareOf(milk float64) float64 {
	c := m.asItStands()
	c.milk = milk
	return milk * m.Milk.at(0) / m.grams(c)
}

// judge solves a mixture's changes with one set of scratch. Mixtures that differ
// little are solved near one another.
type judge struct {
	*Mixture
	solver *acid.Solver
	mix    *acid.Solution
	own    acid.State   // of the last central draw
	ends   []acid.State // by draw: at its curdling pH
}

// whole reports whether there is something to curdle and something that sours it.
func (m *Mixture) whole() bool { return m.Milk.at(0) > 0 && m.Sour.at(0) > 0 }

func (m *Mixture) judge() (*judge, error) {
	if !m.whole() {
		return nil, errParts
	}
	s, err := acid.NewSolver(BenchCelsius)
	if err != nil {
		return nil, err
	}
	return &judge{Mixture: m, solver: s, mix: acid.New(0), ends: make([]acid.State, len(m.Place))}, nil
}

// pour pools the parts of a draw.
func (j *judge) pour(draw int, c change) *acid.Solution {
	j.mix.Reset(0)
	j.mix.Pour(j.Milk.Solutions[draw], c.milk)
	j.mix.Pour(j.Sour.Solutions[draw], c.dose)
	if j.Rest.Solutions != nil {
		j.mix.Pour(j.Rest.Solutions[draw], 1)
	}
	if c.salt != nil {
		j.mix.Pour(c.salt.perGram, c.perKg*j.grams(j.asItStands())/unit.Kilo)
	}
	return j.mix
}

// smooth gives the share of the draws that stay smooth.
func (j *judge) smooth(c change) (float64, error) {
	band := j.Protein.At(c.celsius)
	first := 0
	if len(j.Place) > 1 {
		first = 1 // column 0 is no draw
	}
	count := 0
	for d := first; d < len(j.Place); d++ {
		curdles := max(band.Low+j.Place[d]*(band.High-band.Low), j.Lowest)
		end, err := j.solver.Titrate(j.pour(d, c), curdles, j.ends[d])
		if err != nil {
			return 0, err
		}
		if j.ends[d] = end; end.Base < 0 { // acid would be needed to come down to it
			count++
		}
	}
	return float64(count) / float64(len(j.Place)-first), nil
}

// cell judges a change.
func (j *judge) cell(c change) (Cell, error) {
	var err error
	if j.own, err = j.solver.Solve(j.pour(0, c), j.own); err != nil {
		return Cell{}, err
	}
	smooth, err := j.smooth(c)
	return Cell{j.own.PH, smooth, verdictOf(smooth)}, err
}
