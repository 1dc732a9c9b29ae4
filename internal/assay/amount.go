package assay

import (
	"math"

	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

var sqrt3 = math.Sqrt(3)

// amounts turns written amounts into columns of base units.
type amounts struct {
	seed  uint64
	n     int
	scale *unit.Amount // the bar's scale; nil: the decimals written

	journal *journal
}

// column gives an amount that a hand measures, in its base unit (g, ml or a
// share).
func (a amounts) column(amount unit.Amount, path string) []float64 {
	col := a.draw(amount, path)
	a.journal.write(Hand, path, col)
	return col
}

// draw gives a written amount in its base unit.
//
// "a ± b" is rectangular on [a − b, a + b]; "± b sd" is normal, cut at
// 0. Without ±, half a unit of the last digit, of the scale for masses; a bar
// measure has the spread of its filling instead.
func (a amounts) draw(amount unit.Amount, path string) []float64 {
	central := amount.Base()
	in := estimate.Input{Central: central, Shape: estimate.Uniform, Stream: estimate.KeyOf(a.seed, "amount", path)}
	half := amount.Half * amount.Measure.Factor
	switch {
	case amount.Sigma:
		in.Shape, in.SD, in.Low, in.High = estimate.Normal, half, 0, math.Inf(1)
	case half > 0:
	case amount.Measure.Spread > 0:
		half = central * amount.Measure.Spread
	default:
		half = a.resolution(amount) / 2
	}
	if in.Shape == estimate.Uniform {
		in.Low, in.High = central-half, central+half // not below zero: a ± greater than its amount is refused, and so is nothing
	}
	col := make([]float64, a.n)
	in.Fill(col)
	return col
}

// resolution gives the step of what weighed an amount. Where the bar's scale would show
// nothing, something finer weighed it, as fine as it is written.
func (a amounts) resolution(amount unit.Amount) float64 {
	if a.scale != nil && amount.Measure.Kind == unit.Mass && amount.Base() >= a.scale.Base()/2 {
		return a.scale.Base()
	}
	return amount.Resolution()
}

// spread gives the standard deviation of a written amount in its base unit.
func (a amounts) spread(amount unit.Amount) float64 {
	half := amount.Half * amount.Measure.Factor
	switch {
	case amount.Sigma:
		return half
	case half > 0:
		return half / sqrt3
	}
	return a.resolution(amount) / 2 / sqrt3
}

// grams gives the mass of an ingredient line whose amount is not a share.
func (a amounts) grams(in ingredient) []float64 {
	col := make([]float64, a.n)
	if in.line.Portion != "" {
		fill(col, in.line.Count)
	} else {
		col = a.column(in.line.Amount, in.line.Path)
	}
	each := make([]float64, a.n)
	sd := in.gramsSD
	if !food.Stated(sd) {
		sd = 0
	}
	// A food has one density, whoever pours it: the stream is the food's.
	name := "density"
	if in.line.Portion != "" {
		name = "portion/" + in.line.Portion
	}
	estimate.Input{
		Central: in.grams, Shape: estimate.Lognormal, SD: sd,
		Stream: estimate.KeyOf(a.seed, name, in.profile.Food.ID.String()),
	}.Fill(each)
	a.journal.write(Tables, name+" of "+in.profile.Food.ID.String(), each)
	for d := range col {
		col[d] *= each[d]
	}
	return col
}

// quantity gives a quantity that the designer states, such as a per cent, times
// factor.
func (a amounts) quantity(q drink.Quantity, factor float64, path string) []float64 {
	col := a.drawQuantity(q, factor, path)
	a.journal.write(Hand, path, col)
	return col
}

func (a amounts) drawQuantity(q drink.Quantity, factor float64, path string) []float64 {
	half := q.Half
	if half == 0 {
		half = math.Pow(10, -float64(q.Decimals)) / 2
	}
	low := q.Number - half
	if q.Number >= 0 { // only a temperature can be negative
		low = max(low, 0)
	}
	central, high, most := q.Number, q.Number+half, math.Inf(1)
	if q.Unit == "%" {
		most = 1 / percent // no share is more than all
	}
	switch {
	case q.Number >= most && q.Half == 0:
		low, high = most, most // "100 %" is all of it: nobody rounds to that
	case q.Number == 0 && q.Half == 0 && q.Unit != "°C":
		low, high = 0, 0 // and "0" is nothing, but of a temperature
	// guard: a share is at most all
	case high > most:
		high = most
		if central = min(central, most); !q.Sigma {
			central = (low + high) / 2 // the middle of what can be
		}
	}
	in := estimate.Input{
		Central: central * factor, Shape: estimate.Uniform,
		Low: low * factor, High: high * factor,
		Stream: estimate.KeyOf(a.seed, "amount", path),
	}
	if q.Sigma {
		in.Shape, in.SD, in.Low, in.High = estimate.Normal, q.Half*factor, 0, most*factor
	}
	col := make([]float64, a.n)
	in.Fill(col)
	return col
}

func fill(col []float64, x float64) {
	for d := range col {
		col[d] = x
	}
}
