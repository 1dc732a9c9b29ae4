package acid

import "math"

// startMetals guesses the free metals: those of a similar solution, else all.
func (s *Solver) startMetals(near State) {
	for m, total := range s.metal {
		s.free[m] = total
		if near.Free[m] > 0 {
			s.free[m] = min(near.Free[m], total)
		}
	}
}

const (
	metalTol  = 1e-15 // mol/kg, and relative to the total
	longest   = 2.0   // nat, the longest Newton step of ln[M]
	lastStep  = 1e-8  // nat; the error after a Newton step is of the order of its square
	metalTurn = 100
)

// exp is the exponential function; of small numbers, which most steps are, by the head of its series,
// beyond which nothing is left to rounding.
func exp(x float64) float64 {
	const small = 1e-3
	if math.Abs(x) > small {
		return math.Exp(x)
	}
	return 1 + x*(1+x/2*(1+x/3*(1+x/4)))
}

// shareMetals finds the free metals at which each metal's free and paired parts
// make its total. With u = ln[M] the totals are the gradient of a convex
// function, so Newton steps of limited length reach the only solution.
func (s *Solver) shareMetals() error {
	if s.metal[Calcium] == 0 && s.metal[Magnesium] == 0 {
		return nil
	}
	for range metalTurn {
		miss, curve := s.free, s.free
		mixed := 0.0
		for i := range s.active {
			a := &s.active[i]
			if !a.binds {
				continue
			}
			ca, mg := s.free[Calcium]*a.paired[Calcium].w, s.free[Magnesium]*a.paired[Magnesium].w
			scale := a.perWeight(a.single.w + ca + mg)
			ca, mg = ca*scale, mg*scale
			miss[Calcium] += ca
			miss[Magnesium] += mg
			curve[Calcium] += ca - ca*ca/a.total
			curve[Magnesium] += mg - mg*mg/a.total
			mixed -= ca * mg / a.total
		}
		done := true
		for m, total := range s.metal {
			miss[m] -= total
			done = done && math.Abs(miss[m]) <= metalTol*(1+percent*total)
		}
		if done {
			return nil
		}
		var step [metals]float64
		switch a, b := curve[Calcium], curve[Magnesium]; {
		case a > 0 && b > 0:
			det := a*b - mixed*mixed
			step[Calcium] = (b*miss[Calcium] - mixed*miss[Magnesium]) / det
			step[Magnesium] = (a*miss[Magnesium] - mixed*miss[Calcium]) / det
		case a > 0:
			step[Calcium] = miss[Calcium] / a
		default:
			step[Magnesium] = miss[Magnesium] / b
		}
		for m := range step {
			if s.metal[m] > 0 {
				s.free[m] *= exp(-min(max(step[m], -longest), longest))
			}
		}
		if math.Abs(step[Calcium]) <= lastStep && math.Abs(step[Magnesium]) <= lastStep {
			return nil
		}
	}
	return errStuck
}
