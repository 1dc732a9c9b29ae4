package meter

import (
	"math"

	"sipsum/internal/estimate"
)

// line is what an instrument shows too much, as it grows with what it shows: Zero + Slope·(x − Middle).
type line struct {
	Middle, Zero, Slope       float64
	zeroVar, slopeVar, shared float64 // of zero and slope: variances and covariance, widened for few repeats
	scatter                   float64 // s of one reading about it, with that of the kind
	free                      float64 // its degrees of freedom
}

// at gives what is shown too much where the instrument shows x, and its standard uncertainty.
func (l line) at(x float64) (off, u float64) {
	x -= l.Middle
	return l.Zero + l.Slope*x, math.Sqrt(max(l.zeroVar+2*x*l.shared+x*x*l.slopeVar, 0))
}

// point is what was found at one standard.
type point struct {
	x    float64   // what is shown where it is read
	off  []float64 // of each repeat
	typB float64   // standard uncertainty that all repeats share
}

// usual is what is known of instruments of a kind before one is checked.
type usual struct {
	scatter float64 // standard deviation of a reading
	free    float64 // how many repeats it is worth
	slope   float64 // standard deviation of the slope
}

// fit draws the line of points, with what is known of the kind beside them.
func fit(points []point, of usual) line {
	l := line{}
	n, params := 0.0, 1.0
	for _, p := range points {
		n += float64(len(p.off))
		l.Middle += p.x * float64(len(p.off))
		for _, d := range p.off {
			l.Zero += d
		}
	}
	l.Middle /= n
	l.Zero /= n
	squares := 0.0 // Σ(x − x̄)²
	for _, p := range points {
		squares += float64(len(p.off)) * (p.x - l.Middle) * (p.x - l.Middle)
		for _, d := range p.off {
			l.Slope += (p.x - l.Middle) * d
		}
	}
	if squares > 0 {
		l.Slope /= squares
		params = 2
	} else {
		l.Slope, l.slopeVar = 0, of.slope*of.slope
	}
	l.free = n - params + of.free
	sum := of.free * of.scatter * of.scatter
	for _, p := range points {
		for _, d := range p.off {
			sum += math.Pow(d-l.Zero-l.Slope*(p.x-l.Middle), 2)
		}
	}
	l.scatter = math.Sqrt(sum / l.free)
	s := l.scatter * estimate.Student(l.free)
	l.zeroVar = s * s / n
	if squares > 0 {
		l.slopeVar = s * s / squares
	}
	for _, p := range points { // what all repeats of a standard share
		weight := float64(len(p.off))
		toZero, toSlope := weight/n, 0.0
		if squares > 0 {
			toSlope = weight * (p.x - l.Middle) / squares
		}
		l.zeroVar += toZero * toZero * p.typB * p.typB
		l.slopeVar += toSlope * toSlope * p.typB * p.typB
		l.shared += toZero * toSlope * p.typB * p.typB
	}
	if squares > 0 {
		l.steady(of.slope)
	}
	return l
}

// steady joins the slope that was found with that of the kind, which is none within a standard deviation.
func (l *line) steady(slope float64) {
	if math.IsInf(slope, 1) {
		return
	}
	all := l.slopeVar + slope*slope
	toZero, toSlope := l.shared/all, l.slopeVar/all
	l.Zero -= toZero * l.Slope
	l.Slope -= toSlope * l.Slope
	l.zeroVar -= toZero * l.shared
	l.shared -= toZero * l.slopeVar
	l.slopeVar -= toSlope * l.slopeVar
}
