package acid

// Capacity gives the buffer capacity at a pH: mol of strong base per kg of
// solvent and unit of pH.
func (s *Solver) Capacity(sol *Solution, pH float64, near State) (float64, error) {
	const half = 1e-3 // pH; the curve is smooth on this scale
	above, err := s.Base(sol, pH+half, near)
	if err != nil {
		return 0, err
	}
	below, err := s.Base(sol, pH-half, near)
	return (above - below) / (2 * half), err
}
