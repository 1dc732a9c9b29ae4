package acid

import (
	"errors"
	"math"
)

// ErrOutOfReach means that no dose within the limit gives what was asked.
var ErrOutOfReach = errors.New("no dose up to the limit reaches it")

// Dose finds how much of a stock (in its own amounts: 1 means all of it) makes
// the mixture measure as wanted. measure must rise or fall steadily with the
// dose, as pH and titratable acidity do with added acid; the answer is exact to
// 1e-9 of the limit.
func Dose(sol, stock *Solution, limit, want float64, measure func(*Solution) (float64, error)) (float64, error) {
	mixed := New(0)
	at := func(dose float64) (float64, error) {
		mixed.Reset(0)
		mixed.Pour(sol, 1)
		mixed.Pour(stock, dose)
		got, err := measure(mixed)
		return got - want, err
	}
	first, err := at(0)
	if err != nil {
		return 0, err
	}
	last, err := at(limit)
	if err != nil {
		return 0, err
	}
	if first == 0 {
		return 0, nil
	}
	if math.Signbit(first) == math.Signbit(last) {
		return 0, ErrOutOfReach
	}
	const exact = 1e-9
	lo, hi := 0.0, limit
	for hi-lo > exact*limit {
		mid := (lo + hi) / 2
		miss, err := at(mid)
		if err != nil {
			return 0, err
		}
		if math.Signbit(miss) == math.Signbit(first) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2, nil
}
