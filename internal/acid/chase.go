package acid

import "math"

// jacobian tells how the balance of charges, and what the ionic strength misses, move with ln a(H⁺)
// and with the ionic strength.
type jacobian struct{ chargeX, chargeI, missX, missI float64 }

const (
	fewSteps = 12   // of a chase; most close in five or six
	apart    = 1e-4 // of the differences that a jacobian is taken from, in nat and of the ionic strength
)

// chase follows both unknowns at once from an equilibrium nearby, which lends its jacobian; each step makes
// that better (Broyden 1965, Math. Comp. 19:577). It ends where a solve of one inside the other ends; ok is
// false where it leaves the range of the activity model or does not close in a few steps.
func (s *Solver) chase(near State) (found State, ok bool) {
	if near.bend == (jacobian{}) {
		return State{}, false
	}
	x, ionic, j := -near.PH*math.Ln10, min(near.Ionic, s.limit), near.bend
	var byX, byI float64 // the last step
	for i := range fewSteps {
		if !(ionic > 0) || x < -highestPH*math.Ln10 || x > -lowestPH*math.Ln10 {
			return State{}, false
		}
		s.gamma.at(&s.medium.activity, ionic)
		at, err := s.balance(x)
		if err != nil {
			return State{}, false
		}
		miss := min(at.ionic, s.limit) - ionic
		if balanced := math.Abs(at.charge) <= max(chargeTol, stepTol*at.slope); balanced && math.Abs(miss) <= ionicTol {
			return State{PH: -x / math.Ln10, Ionic: at.ionic, Beyond: at.ionic > s.limit, Charge: at.charge, Free: s.free, bend: j}, true
		}
		if i > 0 {
			j.improve(at.charge, miss, byX, byI, near.Ionic)
		}
		j.chargeX = at.slope
		det := j.chargeX*j.missI - j.chargeI*j.missX
		byX = (j.chargeI*miss - j.missI*at.charge) / det
		byI = (j.missX*at.charge - j.chargeX*miss) / det
		x, ionic = x+byX, min(ionic+byI, s.limit)
	}
	return State{}, false
}

// improve makes a jacobian tell the step that was just done: what it should have brought to zero is left.
func (j *jacobian) improve(charge, miss, byX, byI, ionic float64) {
	relative := byI / ionic // so that both unknowns count alike
	square := byX*byX + relative*relative
	toX, toI := byX/square, relative/ionic/square
	j.chargeX, j.chargeI = j.chargeX+charge*toX, j.chargeI+charge*toI
	j.missX, j.missI = j.missX+miss*toX, j.missI+miss*toI
}

// bendAt takes the jacobian at an equilibrium of what is loaded, for others nearby, and leaves the solver
// there; zero where the solution leaves the activity model.
func (s *Solver) bendAt(state State) jacobian {
	x, step := -state.PH*math.Ln10, apart*state.Ionic
	if state.Beyond || state.Ionic+step >= s.limit {
		return jacobian{}
	}
	free := s.free
	s.gamma.at(&s.medium.activity, state.Ionic+step)
	up, errI := s.balance(x)
	s.gamma.at(&s.medium.activity, state.Ionic)
	sideways, errX := s.balance(x + apart)
	s.free = free
	own, err := s.balance(x)
	if err != nil || errX != nil || errI != nil {
		return jacobian{}
	}
	return jacobian{
		chargeX: own.slope, chargeI: (up.charge - own.charge) / step,
		missX: (sideways.ionic - own.ionic) / apart, missI: (up.ionic-own.ionic)/step - 1,
	}
}
