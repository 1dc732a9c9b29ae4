package amount

import (
	"math"

	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/unit"
)

// Sqrt3 is by what half of a rectangle is more than its standard deviation (JCGM 100:2008, 4.3.7).
var Sqrt3 = math.Sqrt(3)

// Stream is the kind of input (estimate.Ensemble.Only) that a hand measures.
const Stream = "amount"

// Amounts are amounts other than those written, by the path of what they are written at: a
// line, or an amount of a step.
type Amounts map[string]unit.Amount

// Hand turns written amounts into columns of base units.
type Hand struct {
	Ens   estimate.Ensemble
	Scale *unit.Amount // the bar's scale; nil: the decimals written
	Other Amounts      // in place of those written, by path
	Asked Amounts      // those written that somebody has asked for; nil: nobody cares

	Heard   Written // what was asked for as it is written, quantities too; nil: nobody cares
	Streams Streams // of what does not have the stream of its path
}

// Written is what is written, by path.
type Written map[string]string

// Streams names the streams of what is written, by path. What is not in it has the stream of its
// path.
type Streams map[string]string

// stream is the stream of what is written at a path.
func (h Hand) stream(path, written string) estimate.Key {
	if h.Heard != nil {
		h.Heard[path] = written
	}
	if name, ok := h.Streams[path]; ok {
		path = name
	}
	return h.Ens.Stream(Stream, path)
}

// Column gives an amount that a hand measures, in its base unit (g, ml or a
// share).
func (h Hand) Column(amount unit.Amount, path string) []float64 {
	if h.Asked != nil {
		h.Asked[path] = amount
	}
	if other, ok := h.Other[path]; ok {
		amount = other
	}
	col := h.Draw(amount, path)
	h.Ens.Journal.Write(estimate.Hand, path, col)
	return col
}

// Draw gives a written amount in its base unit.
//
// "a ± b" is rectangular on [a − b, a + b]; "± b sd" is normal, cut at
// 0. Without ±, half a unit of the last digit, of the scale for masses; a bar
// measure has the spread of its filling instead.
func (h Hand) Draw(amount unit.Amount, path string) []float64 {
	central := amount.Base()
	in := estimate.Input{Central: central, Shape: estimate.Uniform, Stream: h.stream(path, amount.String())}
	half := amount.Half * amount.Measure.Factor
	switch {
	case amount.Sigma:
		in.Shape, in.SD, in.Low, in.High = estimate.Normal, half, 0, math.Inf(1)
	case half > 0 || amount.Exact:
	case amount.Measure.Spread > 0:
		half = central * amount.Measure.Spread
	default:
		half = h.resolution(amount) / 2
	}
	if in.Shape == estimate.Uniform {
		in.Low, in.High = central-half, central+half // not below zero: a ± greater than its amount is refused, and so is nothing
	}
	return h.Ens.Column(in)
}

// resolution gives the step of what weighed an amount. Where the bar's scale would show
// nothing, something finer weighed it, as fine as it is written.
func (h Hand) resolution(amount unit.Amount) float64 {
	if h.Scale != nil && amount.Measure.Kind == unit.Mass && amount.Base() >= h.Scale.Base()/2 {
		return h.Scale.Base()
	}
	return amount.Resolution()
}

// Spread gives the standard deviation of a written amount in its base unit.
func (h Hand) Spread(amount unit.Amount) float64 {
	half := amount.Half * amount.Measure.Factor
	switch {
	case amount.Sigma:
		return half
	case half > 0 || amount.Exact:
		return half / Sqrt3
	}
	return h.resolution(amount) / 2 / Sqrt3
}

// Quantity gives a quantity that the designer states, such as a per cent, times
// factor.
func (h Hand) Quantity(q drink.Quantity, factor float64, path string) []float64 {
	col := h.DrawQuantity(q, factor, path)
	h.Ens.Journal.Write(estimate.Hand, path, col)
	return col
}

// DrawQuantity gives a quantity times factor without writing it down: a "±" as of an amount,
// within what can be. Nobody rounds to all or to nothing.
func (h Hand) DrawQuantity(q drink.Quantity, factor float64, path string) []float64 {
	half := q.Half
	if half == 0 && !q.Exact {
		half = math.Pow(10, -float64(q.Decimals)) / 2
	}
	low := q.Number - half
	if q.Number >= 0 && q.Unit != degrees { // only a temperature can be negative
		low = max(low, 0)
	}
	central, high, most := q.Number, q.Number+half, math.Inf(1)
	if q.Unit == "%" {
		most = 100 // no share is more than all
	}
	switch {
	case q.Number >= most && q.Half == 0:
		low, high = most, most // "100 %" is all of it: nobody rounds to that
	case q.Number == 0 && q.Half == 0 && q.Unit != degrees:
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
		Stream: h.stream(path, q.String()),
	}
	if q.Sigma {
		in.Shape, in.SD, in.Low, in.High = estimate.Normal, q.Half*factor, 0, most*factor
		if q.Number < 0 || q.Unit == degrees {
			in.Low = math.Inf(-1)
		}
	}
	return h.Ens.Column(in)
}

// degrees is the unit of what has no end at zero.
const degrees = "°C"

// HalfSD is the standard deviation of a stated ± (JCGM 100:2008, 4.3.7).
func HalfSD(q *drink.Quantity) float64 {
	if q.Sigma {
		return q.Half
	}
	return q.Half / Sqrt3
}
