package optimise

// Minimise and ErrNone let tests set the simplex beside an independent solver.
var (
	Minimise = minimise
	ErrNone  = errNone
)
