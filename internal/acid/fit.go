package acid

import (
	"errors"
	"math"
)

// Titration is a bench titration of a liquid with a strong base (or acid).
type Titration struct {
	Celsius    float64
	Solvent    float64 // kg of solvent in the sample
	Background float64 // ½Σz²n of the sample's strong ions, mol per kg of solvent, as far as they are known
	Points     []Reading
}

// Reading is one point: what had been added so far, and the pH then.
type Reading struct {
	Base    float64 // mol of strong base; negative for a strong acid
	Solvent float64 // kg of water that came with it
	PH      float64
}

// Spectrum is a fitted buffer: what a liquid's titration says about it, per kg
// of its solvent.
type Spectrum struct {
	Sites      []float64 // mol/kg by Index; only sites are filled
	Strong     float64   // charge that balances them, mol/kg
	Background float64   // ½Σz²n of the strong ions, mol/kg: at least what Strong needs
	Lowest     float64   // pH that were titrated: the spectrum says nothing beyond
	Highest    float64
	Worst      float64 // largest miss of the curve, pH
}

var errTitration = errors.New("a titration needs at least three points of rising pH and rising base")

// Fit finds the buffer spectrum of a titration: site amounts, none negative, and
// a balancing charge with
//
//	strong + base + [H⁺] − [OH⁻] − Σ nᵢ·αᵢ(pH) = 0
//
// at each point (αᵢ: share of site i that has lost its proton), in least squares
// of pH: each point's charge is divided by the buffer capacity there, that of
// the readings first and of the fit itself in the later rounds. Where the points
// do not decide, neighbouring sites are kept alike.
func Fit(t Titration) (Spectrum, error) {
	if err := t.check(); err != nil {
		return Spectrum{}, err
	}
	s, err := NewSolver(t.Celsius)
	if err != nil {
		return Spectrum{}, err
	}
	out := Spectrum{Lowest: t.Points[0].PH, Highest: t.Points[len(t.Points)-1].PH, Background: t.Background}
	for range fitRounds { // the ionic strength of each point needs the fit
		out.Sites, out.Strong = s.fitOnce(t, out)
		out.Background = max(t.Background, math.Abs(out.Strong)/2)
	}
	out.Worst, err = out.worst(t)
	return out, err
}

const (
	fitRounds = 8
	likeness  = 0.01 // weight of "neighbours alike" against a pH unit, relative to the largest buffer capacity
)

func (t Titration) check() error {
	const fewest = 3
	if len(t.Points) < fewest || !(t.Solvent > 0) {
		return errTitration
	}
	for i, p := range t.Points {
		if math.IsNaN(p.PH+p.Base+p.Solvent) || i > 0 && (p.PH <= t.Points[i-1].PH || p.Base <= t.Points[i-1].Base) {
			return errTitration
		}
	}
	return nil
}

// slope gives the base per pH around point i, mol.
func (t Titration) slope(i int) float64 {
	before, after := t.Points[max(i-1, 0)], t.Points[min(i+1, len(t.Points)-1)]
	return (after.Base - before.Base) / (after.PH - before.PH)
}

// fitOnce solves the least squares with the ionic strength of the last fit.
func (s *Solver) fitOnce(t Titration, last Spectrum) ([]float64, float64) {
	site0 := int(table().site0)
	sites := len(All()) - site0
	columns := sites + 2 // the charge is free in sign: one column up, one down
	var a [][]float64
	var b []float64
	steepest := 0.0
	for i := range t.Points {
		steepest = max(steepest, t.slope(i))
	}
	for i, p := range t.Points {
		water := t.Solvent + p.Solvent
		anions := math.Abs(last.Strong*t.Solvent + p.Base) // they balance the charge
		ionic := (last.Background*t.Solvent + math.Abs(p.Base)/2 + anions/2) / water
		s.gamma.at(&s.medium.activity, min(ionic, s.limit))
		h := math.Pow(10, -p.PH)
		proton, hydroxide := s.waterIons(h)
		capacity := water * math.Ln10 * (proton + hydroxide)
		row := make([]float64, columns)
		for j := range sites {
			row[j] = t.Solvent * bareShare(s.medium.acids[site0+j], h, &s.gamma.ions[common])
			if last.Sites != nil {
				capacity += math.Ln10 * last.Sites[site0+j] * row[j] * (1 - row[j]/t.Solvent)
			}
		}
		if last.Sites == nil {
			capacity = t.slope(i)
		}
		weight := 1 / capacity
		for j := range sites {
			row[j] *= weight
		}
		row[sites], row[sites+1] = -weight*t.Solvent, weight*t.Solvent
		a = append(a, row)
		b = append(b, weight*(p.Base+water*(proton-hydroxide)))
	}
	for j := 1; j+1 < sites; j++ {
		row := make([]float64, columns)
		w := likeness * t.Solvent / steepest
		row[j-1], row[j], row[j+1] = w/2, -w, w/2
		a = append(a, row)
		b = append(b, 0)
	}
	x := nonNegative(a, b)
	amounts := make([]float64, len(All()))
	copy(amounts[site0:], x[:sites])
	return amounts, x[sites] - x[sites+1]
}

// bareShare gives the share of a monoprotic site that has lost its proton.
func bareShare(a mediumAcid, h float64, g *gammas) float64 {
	protonated := a.forms[1].beta * h * g.pow(a.bare*a.bare)
	return 1 / (1 + protonated)
}

// Solution gives the titrated liquid in kg of its solvent.
func (f Spectrum) Solution(kg float64) *Solution {
	sol := New(kg)
	for i, n := range f.Sites {
		sol.Acids[i] = n * kg
	}
	sol.Strong = f.Strong * kg
	sol.Background = f.Background * kg
	return sol
}

// worst compares the fitted liquid's own curve with the readings.
func (f Spectrum) worst(t Titration) (float64, error) {
	s, err := NewSolver(t.Celsius)
	if err != nil {
		return 0, err
	}
	worst, near := 0.0, State{}
	for _, p := range t.Points {
		sol := f.Solution(t.Solvent)
		sol.Solvent += p.Solvent
		sol.Strong += p.Base
		sol.Background += math.Abs(p.Base) / 2
		if near, err = s.Solve(sol, near); err != nil {
			return 0, err
		}
		worst = max(worst, math.Abs(near.PH-p.PH))
	}
	return worst, nil
}
