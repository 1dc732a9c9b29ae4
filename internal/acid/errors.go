package acid

import "errors"

var (
	errNoSolvent = errors.New("a solution without water has no pH")
	errAmounts   = errors.New("an amount is negative, infinite or not a number")
	errBalance   = errors.New("the charges cannot be balanced between pH −2 and 16: an ion is missing or in excess")
	errStuck     = errors.New("the equilibrium was not found (a fault of sipsum: please report the composition)")
)
