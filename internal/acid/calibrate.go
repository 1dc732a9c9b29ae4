package acid

import "math"

// Calibrate adds the strong ion that a solution lacks to have a measured pH: the
// minerals that its table left out, or the acid. The amount (mol of charge per
// kg of solvent; negative for a missing anion) tells how far composition and
// reading were apart. Blends conserve it.
func (s *Solver) Calibrate(sol *Solution, pH float64) (float64, error) {
	missing, err := s.Base(sol, pH, State{})
	if err != nil {
		return 0, err
	}
	sol.Strong += missing * sol.Solvent
	sol.Background += math.Abs(missing) * sol.Solvent / 2
	return missing, nil
}
