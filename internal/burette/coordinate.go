package burette

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"sipsum/internal/estimate"
)

// coordinate is the scale on which a quantity's prior is normal.
type coordinate struct {
	form coordinateForm
	most float64 // of a quantity between none and its most
}

type coordinateForm uint8

const (
	plain   coordinateForm = iota // as it stands
	logs                          // positive: in logarithms
	between                       // between none and a most: the normal quantile of its share
)

// ends keeps a share off 0 and 1, where its normal quantile has no end: half of what a thousand
// draws tell.
const ends = 5e-4

// of gives a quantity on the scale.
func (c coordinate) of(x float64) float64 {
	switch c.form {
	case logs:
		return math.Log(x)
	case between:
		return distuv.UnitNormal.Quantile(min(max(x/c.most, ends), 1-ends))
	}
	return x
}

// holds reports whether there can be so much of a quantity.
func (c coordinate) holds(x float64) bool {
	switch c.form {
	case logs:
		return x > 0
	case between:
		return x > 0 && x < c.most
	}
	return true
}

// at gives the quantity at a place of the scale, and how fast it grows there.
func (c coordinate) at(z float64) (x, slope float64) {
	switch c.form {
	case logs:
		x = math.Exp(z)
		return x, x
	case between:
		return c.most * distuv.UnitNormal.CDF(z), c.most * distuv.UnitNormal.Prob(z)
	}
	return z, 1
}

// unknown is a quantity that the curve is asked for: its draws, and their scale.
type unknown struct {
	what   string
	column []float64
	coordinate
	z        []float64 // column on the scale
	mean, sd float64   // of the draws of z
}

// bent is the skewness of a column's logarithms below which it is of something that may be none:
// that of a rectangle from none is −2, of a lognormal 0.
const bent = -1.0

// newUnknown chooses the scale of a column: signed quantities as they stand, positive ones in
// logarithms, and those that may be none between none and their most.
func newUnknown(what string, column []float64, signed bool) unknown {
	u := unknown{what: what, column: column}
	if !signed {
		u.coordinate = positive(column)
	}
	u.z = make([]float64, len(column))
	for d, x := range column {
		u.z[d] = u.of(x)
	}
	u.mean, u.sd = stat.MeanStdDev(u.z[1:], nil)
	return u
}

// positive chooses the scale of what is never below none.
func positive(column []float64) coordinate {
	if estimate.Positive(column) && len(column)-1 > estimate.FewestDraws {
		draws := slices.Clone(column[1:])
		estimate.Logs(draws)
		if !(stat.Skew(draws, nil) < bent) { // of what is certain it is NaN
			return coordinate{form: logs}
		}
	}
	return coordinate{form: between, most: slices.Max(column)}
}

// certain is the standard deviation of a logarithm, of a share or over its own size below which
// a quantity is known: a hundredth of a per cent is finer than any burette.
const certain = 1e-4

// open reports whether a quantity is uncertain enough to be asked for.
func (u unknown) open() bool {
	if len(u.column)-1 < estimate.FewestDraws {
		return false
	}
	scale := 1.0
	if u.form == plain {
		scale = max(math.Abs(u.mean), math.SmallestNonzeroFloat64)
	}
	return u.sd > certain*scale
}
