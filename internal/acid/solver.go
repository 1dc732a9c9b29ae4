package acid

import "math"

// Solver finds equilibria at one temperature. It owns the scratch that a solve
// needs, so that solves do not allocate; it may not be used by two goroutines
// at once.
type Solver struct {
	medium *medium
	limit  float64 // of the ionic strength in the activity model

	highestEthanol float64 // share of the solvent up to which it is known what ethanol does
	carboxylShift  float64 // of a pK by a per cent of ethanol

	gamma  coefficients // at the present ionic strength
	active []active
	spare  []form // forms changed by ethanol
	strong float64
	spread float64 // the strong ions' part of the ionic strength
	metal  [metals]float64
	free   [metals]float64
	x, h   float64 // ln a(H⁺) of the last balance, and a(H⁺)
}

// State is an equilibrium. The zero State means "none yet".
type State struct {
	PH     float64
	Ionic  float64         // ionic strength, mol/kg
	Beyond bool            // Ionic is beyond the activity model
	Charge float64         // what is left of the charge balance, mol/kg
	Base   float64         // strong base that was added to get there, mol/kg
	Free   [metals]float64 // metal that is paired with nothing, mol/kg

	bend jacobian // of a solve, for the next one nearby; zero of a titration
	turn float64  // of a titration, by its ionic strength: what the strength misses; 0: not known
}

// NewSolver gives a solver for a temperature; it fails outside the range of the
// constants.
func NewSolver(celsius float64) (*Solver, error) {
	m, err := mediumAt(celsius)
	if err != nil {
		return nil, err
	}
	return &Solver{
		medium: m, limit: constant("ionic strength limit"), gamma: newCoefficients(),
		active: make([]active, 0, len(m.acids)), x: math.NaN(),
		highestEthanol: constant("highest ethanol") / percent, carboxylShift: constant("carboxyl shift in ethanol"),
	}, nil
}

// The search runs over the activity of H⁺ between these pH. Tolerances are
// numerical: a solve ends when the charges balance to rounding.
const (
	lowestPH       = -2.0
	highestPH      = 16.0
	chargeTol      = 1e-14 // mol/kg
	stepTol        = 1e-14 // nat
	ionicTol       = 1e-13 // mol/kg
	lastTurn       = 1e-9  // mol/kg, the shortest step that tells a turn for others
	manyIterations = 200   // never met; a bracket halves in far fewer
	firstGuess     = 0.01  // mol/kg
	coldPH         = 4.0   // drinks are near it
)

// Solve finds the pH at which the charges cancel. near is an earlier State of a
// similar solution, or the zero State.
func (s *Solver) Solve(sol *Solution, near State) (State, error) {
	if err := s.load(sol); err != nil {
		return State{}, err
	}
	return s.find(near)
}

// find is Solve for what is loaded.
func (s *Solver) find(near State) (State, error) {
	x := -coldPH * math.Ln10
	if near.Ionic > 0 {
		x = -near.PH * math.Ln10
	}
	s.startMetals(near)
	if state, ok := s.chase(near); ok {
		return state, nil
	}
	state, err := s.settle(near.Ionic, 0, func(ionic float64) (balance, float64, error) {
		root, at, err := s.root(x, ionic)
		x = root
		return at, -root / math.Ln10, err
	})
	if err == nil {
		state.bend = s.bendAt(state)
	}
	return state, err
}

// Base gives the strong base (as its univalent salt's metal, mol per kg of
// solvent) that takes the solution to a pH; negative means strong acid.
// near is as in Solve. Water that comes with the base is left out.
func (s *Solver) Base(sol *Solution, pH float64, near State) (float64, error) {
	state, err := s.Titrate(sol, pH, near)
	return state.Base, err
}

// Titrate gives the equilibrium at a pH to which Base takes the solution. Of many
// solutions alike, the end of one titration is near that of the next.
func (s *Solver) Titrate(sol *Solution, pH float64, near State) (State, error) {
	if err := s.load(sol); err != nil {
		return State{}, err
	}
	s.startMetals(near)
	var base float64
	state, err := s.settle(near.Ionic, near.turn, func(ionic float64) (balance, float64, error) {
		s.gamma.at(&s.medium.activity, ionic)
		at, err := s.balance(-pH * math.Ln10)
		base = -at.charge
		at.ionic += math.Abs(base) / 2
		at.charge = 0
		return at, pH, err
	})
	state.Base = base
	return state, err
}

// settle finds the ionic strength that reproduces itself. The strength that an
// equilibrium gives is never below zero, and is cut at the limit, so the two
// ends bracket a fixed point; secants within the bracket close on it, the first with the turn of a
// similar solution, if there is one.
func (s *Solver) settle(ionic, turn float64, at func(float64) (balance, float64, error)) (State, error) {
	if ionic <= 0 {
		ionic = firstGuess
	}
	ionic = min(ionic, s.limit)
	lo, hi := 0.0, s.limit
	before, missBefore := math.NaN(), math.NaN()
	secant := turn
	for range manyIterations {
		found, pH, err := at(ionic)
		if err != nil {
			return State{}, err
		}
		miss := min(found.ionic, s.limit) - ionic
		if math.Abs(miss) <= ionicTol || hi-lo <= ionicTol {
			return State{PH: pH, Ionic: found.ionic, Beyond: found.ionic > s.limit, Charge: found.charge, Free: s.free, turn: turn}, nil
		}
		if miss > 0 {
			lo = ionic
		} else {
			hi = ionic
		}
		if math.Abs(ionic-before) > 0 { // not of the first
			secant = (miss - missBefore) / (ionic - before)
			if turn == 0 || math.Abs(ionic-before) > lastTurn {
				turn = secant
			}
		}
		next := ionic - miss/secant
		if !(next > lo && next < hi) {
			next = ionic + miss
		}
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		before, missBefore, ionic = ionic, miss, next
	}
	return State{}, errStuck
}

// root finds ln a(H⁺) at a fixed ionic strength, where the charge rises strictly
// with it: Newton steps, kept inside a bracket, which is halved whenever they do
// not shrink by half.
func (s *Solver) root(x, ionic float64) (float64, balance, error) {
	lo, hi := -highestPH*math.Ln10, -lowestPH*math.Ln10
	least, most := lo, hi
	s.gamma.at(&s.medium.activity, ionic)
	before := hi - lo
	for range manyIterations {
		at, err := s.balance(x)
		if err != nil {
			return 0, at, err
		}
		if at.charge < 0 {
			lo = x
		} else {
			hi = x
		}
		step := -at.charge / at.slope
		if math.Abs(at.charge) <= chargeTol || math.Abs(step) <= stepTol || hi-lo <= stepTol {
			if x-least <= stepTol || most-x <= stepTol {
				return 0, at, errBalance
			}
			return x, at, nil
		}
		if next := x + step; next > lo && next < hi && math.Abs(step) <= before/2 {
			x, before = next, math.Abs(step)
		} else {
			x, before = (lo+hi)/2, hi-lo
		}
	}
	return 0, balance{}, errStuck
}
