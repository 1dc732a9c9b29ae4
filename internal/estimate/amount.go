package estimate

import "math"

// Amount is how much there is of something, as far as it is known: what a declaration or a
// caution is made of, at central values beside the ends of its interval.
type Amount struct {
	Mean       float64 // of the known part
	WithBounds float64 // with the most that the unknown parts could be; NaN if one has no bound
	High       float64 // the upper end of the interval of the known part; 0 if nobody says
	UpTo       float64 // the upper end of the interval with them; NaN if one has no bound, 0 if nobody says
	Known      bool    // false: nothing is known of it
}

// Times scales an amount: to another unit, or from a serving to 100 g.
func (a Amount) Times(factor float64) Amount {
	a.Mean *= factor
	a.WithBounds *= factor
	a.High *= factor
	a.UpTo *= factor
	return a
}

// Missing gives how much the unknown parts could be; NaN if nobody knows.
func (a Amount) Missing() float64 { return max(a.WithBounds-a.Mean, 0) }

// Complete reports whether nothing of the amount is unknown.
func (a Amount) Complete() bool { return a.Known && a.WithBounds <= a.Mean }

// Bounded reports whether it is known how much it can be at most.
func (a Amount) Bounded() bool { return !math.IsNaN(a.WithBounds) }

// KnownMost is the most that the known part can be.
func (a Amount) KnownMost() float64 {
	if !a.Known {
		return 0
	}
	return max(a.Mean, a.High)
}

// Most is the most that there can be; NaN if nothing bounds it.
func (a Amount) Most() float64 { return max(a.WithBounds, a.UpTo, a.KnownMost()) }
