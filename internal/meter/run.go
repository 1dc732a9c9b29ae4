package meter

import (
	"math"
	"slices"

	"sipsum/internal/drink"
	"sipsum/internal/estimate"
)

// Run is the instruments of one calculation: what each is off by, draw by draw, the same for all its readings.
type Run struct {
	drink *drink.Drink
	ens   estimate.Ensemble
	drawn map[string]*drawn // by name
	found []Found
}

// parameters are what an instrument is off by: its zero, its slope, and the walk since its check in units of its
// standard deviation.
const parameters = 3

// drawn is an instrument with its draws: how far each parameter lies from its central value.
type drawn struct {
	*State
	deviation [parameters][]float64
	spread    [parameters][parameters]float64 // their covariance
}

// NewRun draws the instruments of a drink; nil if its shelf has none.
func NewRun(d *drink.Drink, ens estimate.Ensemble) *Run {
	if len(d.Meters) == 0 {
		return nil
	}
	return &Run{drink: d, ens: ens, drawn: map[string]*drawn{}}
}

// of gives an instrument of the run.
func (r *Run) of(m *drink.Meter) *drawn {
	if x := r.drawn[m.Name]; x != nil {
		return x
	}
	x := &drawn{State: Of(m)}
	l := x.line
	normal := func(what string) []float64 {
		return r.ens.Column(estimate.Input{Shape: estimate.Normal, SD: 1, Low: math.Inf(-1), High: math.Inf(1), Stream: r.ens.Stream("meter", m.Name, what)})
	}
	zero, slope := normal("zero"), normal("slope")
	x.deviation = [parameters][]float64{zero, slope, normal("walk")}
	alone, with := math.Sqrt(l.slopeVar), 0.0
	if l.zeroVar > 0 {
		with = l.shared / math.Sqrt(l.zeroVar)
		alone = math.Sqrt(max(l.slopeVar-with*with, 0))
	}
	for d := range zero {
		slope[d] = with*zero[d] + alone*slope[d]
		zero[d] *= math.Sqrt(l.zeroVar)
	}
	x.spread = [parameters][parameters]float64{{l.zeroVar, l.shared, 0}, {l.shared, l.slopeVar, 0}, {0, 0, 1}}
	r.drawn[m.Name] = x
	return x
}

// Of gives the instrument that took a reading, a key of measured; nil: nobody says which it was.
func (r *Run) Of(m *drink.Measured, key string) *Reader {
	if r == nil {
		return nil
	}
	meter := r.drink.MeterOf(m, key)
	if meter == nil {
		return nil
	}
	return &Reader{r.of(meter), m.DayOf(key)}
}

// Reader is an instrument on the day of a reading.
type Reader struct {
	*drawn
	day int
}

// Name is what the bar calls it.
func (x *Reader) Name() string { return x.Meter.Name }

// to gives by how much each parameter changes what is shown at a reading.
func (x *Reader) to(shown float64) [parameters]float64 {
	return [parameters]float64{1, shown - x.line.Middle, x.walk * x.age(x.day)}
}

// Off gives what is shown too much where the instrument shows so much, draw by draw.
func (x *Reader) Off(shown float64) []float64 {
	central, _ := x.line.at(shown)
	to := x.to(shown)
	off := make([]float64, len(x.deviation[0]))
	for d := range off {
		off[d] = central
		for i, t := range to {
			off[d] += t * x.deviation[i][d]
		}
	}
	return off
}

// U gives the standard uncertainty of Off.
func (x *Reader) U(shown float64) float64 {
	to, sum := x.to(shown), 0.0
	for i, a := range to {
		for j, b := range to {
			sum += a * b * x.spread[i][j]
		}
	}
	return math.Sqrt(max(sum, 0))
}

// Steeper gives by how much more an instrument shows where there is more than its central values have it, draw by draw.
func (x *Reader) Steeper() []float64 { return slices.Clone(x.deviation[1]) }
