package chemistry

import (
	"math"
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/composition"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// CurvePoint is one point of a titration curve at central values, without gas.
type CurvePoint struct {
	PH   float64
	Base float64 // mmol of strong base in 100 g of the liquid; negative: of acid
}

// curveStep is the distance of the points of a curve, in pH: a printed curve needs no
// finer one.
const curveStep = 0.5

// vague is the width of the interval of an acidity, over its mean, at which doses counted
// from it mean nothing.
const vague = 1.0

// nothing is what rounding leaves of ions that cancel, in mmol/l.
const nothing = 1e-6

// buffer works out how a pot resists acid and base: its capacity and strong ions over
// the draws, its curve and doses at central values.
func (c *Chemistry) buffer(lab *acidity.Laboratory, in acidity.Ions, pot *ledger.Pot, pH []float64, sure acidity.Surely) error {
	m, mass, volume := &composition.Meter{}, pot.Mass(), lab.Gauge.Volume(pot)
	capacity, strong := make([]float64, in.N), make([]float64, in.N)
	err := in.Each(func(s *acid.Solver, sol *acid.Solution, near, _ acid.State, d int) error {
		perKg, err := s.Capacity(sol, pH[d], near)
		if err != nil {
			return err
		}
		const milli = 1000
		litres := volume[d] / acidity.PerLitre
		capacity[d] = milli * perKg * sol.Solvent / litres
		strong[d] = milli * sol.StrongIonDifference() * sol.Solvent / litres
		if math.Abs(strong[d]) < nothing {
			strong[d] = 0
		}
		return nil
	})
	if err != nil {
		return err
	}
	c.Capacity = drawn(m, capacity, "mmol/(l·pH)")
	c.StrongIons = drawn(m, strong, "mmol/l")
	if len(in.Titrated) > 0 {
		c.StrongIons.withhold("a titration tells how charge changes, not how much of it there is")
	}

	s, err := acid.NewSolver(acidity.MeterCelsius)
	if err != nil {
		return err
	}
	still := acid.New(0)
	in.Fill(still, 0)
	if err := acidity.Degas(s, still, acid.State{}); err != nil {
		return err
	}
	own, err := s.Solve(still, acid.State{})
	if err != nil {
		return err
	}
	first, last := in.Span(own.PH)
	if c.Curve, err = curve(s, still, own, first, last, mass[0]); err != nil {
		return err
	}
	if ta := c.Acidity[0].Per100g; sure.PH && ta.Why == "" && ta.High-ta.Low < vague*ta.Mean {
		c.Doses, err = doses(s, still, in, mass[0], c.Acidity[0].Per100g.Mean)
	}
	return err
}

// curve gives a liquid's titration from one pH to another, at its own and at every
// whole and half pH between; none where there is nothing between.
func curve(s *acid.Solver, sol *acid.Solution, own acid.State, first, last, grams float64) ([]CurvePoint, error) {
	if last-first < curveStep/2 {
		return nil, nil
	}
	at := []float64{first}
	for next := math.Ceil((first+curveStep/2)/curveStep) * curveStep; next < last-curveStep/2; next += curveStep {
		if math.Abs(next-own.PH) > curveStep/2 {
			at = append(at, next)
		}
	}
	at = append(at, last)
	if own.PH > first && own.PH < last {
		at = append(at, own.PH)
		slices.Sort(at)
	}
	near, points := own, make([]CurvePoint, len(at))
	for i, pH := range at {
		state, err := s.Titrate(sol, pH, near)
		if err != nil {
			return nil, err
		}
		near = state
		const milli = 1000
		points[i] = CurvePoint{PH: pH}
		if pH != own.PH {
			points[i].Base = milli * state.Base * sol.Solvent * unit.Hundred / grams
		}
	}
	return points, nil
}
