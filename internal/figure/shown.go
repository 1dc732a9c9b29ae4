package figure

import (
	"math"

	"sipsum/internal/composition"
	"sipsum/internal/estimate"
)

// Shown is a figure as it is written.
type Shown struct {
	Number         string // "10.5", "< 0.001"; of what nobody knows: "unknown"
	AtLeast        bool   // the number is what is known; of the rest nobody has a figure
	Unknown        bool   // there is no number
	Least          bool   // there is, and less than anybody weighs
	Unit           string
	Low, High      string // its ends; both empty where they print alike
	UpTo, UpToUnit string // its upper end with what is unknown at its most; empty where nothing bounds it
}

// negligible is the coverage below which limits alone do not count as knowing
// something: our own bound.
const negligible = 0.01

// Hollow reports whether a result is as good as unknown: nothing is known of it,
// or only limits that are lost beside what the unknown parts could be.
func Hollow(r composition.Result) bool {
	return r.Unknown || r.Partial && r.State >= estimate.Trace && r.Coverage < negligible
}

// None reports whether it is known that there is none.
func None(r composition.Result) bool { return !r.Partial && !r.Unknown && r.Mean == 0 && r.High == 0 }

// minute reports whether all of a known interval would print as zero to the last place that
// is worth printing in the finest unit: what arithmetic leaves, or less than anybody weighs.
func minute(r composition.Result) bool {
	return !r.Unknown && max(math.Abs(r.Mean), math.Abs(r.Low), math.Abs(r.High)) < LeastPrinted
}

// LeastPrinted is the size below which nothing is printed: our own bound.
const LeastPrinted = 0.0005

// Least stands for what is minute: a trace is not zero.
const Least = "< 0.001"

// Smaller are the units that a figure too small for its own is printed in, and Thousand how many
// of the smaller make one.
var Smaller = map[string]string{"g": "mg", "mg": "µg"}

// Thousand of a smaller unit are in one.
const Thousand = 1000

// Finer gives a result in the largest smaller unit, and how many of them make one
// of its own, in which not all of its interval is less than two thousandths.
func Finer(r composition.Result) (composition.Result, float64) {
	const tooSmall, tooLarge = 0.002, 100
	factor := 1.0
	for {
		unit, ok := Smaller[r.Unit]
		if !ok || Hollow(r) || r.High <= 0 || max(r.Mean, r.High) >= tooSmall {
			return r, factor
		}
		if factor > 1 && r.Partial && r.UpTo >= tooLarge { // what is beside it would be a row of digits
			return r, factor
		}
		r.Unit = unit
		for _, x := range []*float64{&r.Mean, &r.SD, &r.Low, &r.High, &r.WithBounds, &r.UpTo} {
			*x *= Thousand
		}
		factor *= Thousand
	}
}

// degrees is the unit of what has no end at zero: 0 °C is a temperature like others.
const degrees = "°C"

// Of writes a result.
func Of(r composition.Result) Shown {
	stated := r
	r, _ = Finer(r)
	last := Place(r.Mean, r.SD, MostDigits)
	if Hollow(r) || r.Partial && minute(r) {
		return unknown(stated, last)
	}
	if minute(r) && !None(r) && r.Unit != degrees {
		return Shown{Number: Least, Least: true, Unit: r.Unit}
	}
	if r.Unit != degrees && Smaller[r.Unit] == "" && math.Abs(r.Mean) < LeastPrinted && !None(r) { // its interval would begin at a row of zeros
		if r.Partial {
			return unknown(stated, last)
		}
		number := Least
		if r.High >= 2*LeastPrinted {
			number = "< " + Upward(r.High, FirstPlace(LeastPrinted))
		}
		return Shown{Number: number, Least: true, Unit: r.Unit}
	}
	s := Shown{Number: Rounded(r.Mean, last), Unit: r.Unit, AtLeast: r.Partial}
	if s.Low, s.High = Rounded(r.Low, last), Rounded(r.High, last); s.Low == s.High {
		s.Low, s.High = "", ""
	}
	if r.Partial {
		s.UpTo, s.UpToUnit = Bound(r, last)
	}
	return s
}

func unknown(r composition.Result, last int) Shown {
	s := Shown{Number: "unknown", Unknown: true}
	s.UpTo, s.UpToUnit = Bound(r, last)
	return s
}

// Bound writes the most that a result could be (composition.Result.UpTo), to the place of the
// figure beside it; empty if nothing bounds it. Where no figure stands beside it the unit may be
// a finer one.
func Bound(r composition.Result, last int) (text, unit string) {
	if math.IsNaN(r.UpTo) {
		return "", ""
	}
	if Alone(r) {
		most, unit := r.UpTo, r.Unit
		for Smaller[unit] != "" && most < LeastPrinted {
			most, unit = most*Thousand, Smaller[unit]
		}
		most = max(most, LeastPrinted)
		return Upward(most, FirstPlace(most)), unit
	}
	return Upward(max(r.UpTo, mustParse(Rounded(r.High, last))), last), r.Unit // not below the end as it is printed
}

// Alone reports whether a bound stands without a figure beside it.
func Alone(r composition.Result) bool { return Hollow(r) || minute(r) }

// Percent writes a share in whole hundredths; what is there is never 0, and less than all is
// never 100.
func Percent(share float64) string {
	const hundred, tiny = 100, 0.5
	switch {
	case math.IsNaN(share):
		return "?"
	case share*hundred < tiny:
		return "< 1 %"
	case share*hundred > hundred-tiny && share < 1:
		return "> 99 %"
	}
	return Rounded(share*hundred, 0) + " %"
}
