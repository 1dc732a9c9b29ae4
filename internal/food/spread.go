package food

import (
	"math"
	"strconv"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
)

// smallSample is the number of samples below which the class default is a floor
// for the spread that the samples themselves show.
const smallSample = 6

type spreadKey struct{ constituent, group string }

// classSpread is a row of data/spread.csv: relative standard deviations.
type classSpread struct {
	all     float64 // of a value whose source states none
	between float64 // between the samples of one source and those of another
}

var spreadDefaults = sync.OnceValue(func() map[spreadKey]classSpread {
	defaults := map[spreadKey]classSpread{}
	for _, row := range embedded.Rows("spread.csv") {
		defaults[spreadKey{row.Text("constituent"), row.Text("group")}] = classSpread{row.Number("relative_sd"), row.Number("between_sd")}
	}
	return defaults
})

// ClassSpread gives the relative standard deviation that a value of this
// constituent has in this food group when its source states none: the row of
// the constituent, else of a parent, else "*"; in each the group's row, else
// the group "*".
func ClassSpread(c *constituent.Constituent, group string) float64 {
	return classSpreadOf(c, group).all
}

func classSpreadOf(c *constituent.Constituent, group string) classSpread {
	defaults := spreadDefaults()
	chain := []string{string(c.ID)}
	for up := c.Parent; up != "" && up != constituent.Mass; up = constituent.Must(up).Parent {
		chain = append(chain, string(up))
	}
	for _, id := range append(chain, "*") {
		for _, g := range []string{group, "*"} {
			if sd, ok := defaults[spreadKey{id, g}]; ok {
				return sd
			}
		}
	}
	panic("food: spread.csv has no row for everything (*, *)")
}

// spreadOf gives the standard deviation of a value in its own unit, and whether
// it is the class default.
func spreadOf(f *Food, c *constituent.Constituent, v Value) (sd float64, class bool) {
	if f.Chemical || v.Amount == 0 {
		return 0, false
	}
	usual := classSpreadOf(c, f.Group)
	floor := v.Amount * usual.all
	own := None
	switch {
	case Stated(v.SD):
		own = min(v.SD, widest(v))
	case Stated(v.Low) && Stated(v.High) && v.N >= 2:
		own = (v.High - v.Low) / rangeDivisor(v.N)
	case Stated(v.Low) && Stated(v.High) && v.N == 0 && v.High > v.Low:
		return (v.High - v.Low) / math.Sqrt(12), false
	}
	if !Stated(own) {
		return floor, true
	}
	if v.N == 0 { // a designer's own ± stands
		return own, false
	}
	own = math.Hypot(own, v.Amount*usual.between)
	if v.N < smallSample && own < floor {
		return floor, true
	}
	return own, false
}

// widest is the largest standard deviation that n values between the stated
// least and greatest can have: (high − low)/2 · √(n/(n−1)) (Popoviciu 1935). Some
// tables print standard errors that exceed it.
func widest(v Value) float64 {
	if !Stated(v.Low) || !Stated(v.High) || v.N < 2 {
		return math.Inf(1)
	}
	n := float64(v.N)
	return (v.High - v.Low) / 2 * math.Sqrt(n/(n-1))
}

var divisors sync.Map // n → d₂(n): an integral, and tables repeat the same few n

func rangeDivisor(n int) float64 {
	if d, ok := divisors.Load(n); ok {
		return d.(float64)
	}
	d := estimate.RangeDivisor(n)
	divisors.Store(n, d)
	return d
}

func trimmed(x float64) string { return strconv.FormatFloat(x, 'g', 5, 64) }
