package meter

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"sipsum/internal/estimate"
)

// line is what an instrument shows too much, as it grows with what it shows: Zero + Slope·(x − Middle).
type line struct {
	Middle, Zero, Slope       float64
	zeroVar, slopeVar, shared float64 // of zero and slope: variances and covariance, widened for few repeats
	scatter                   float64 // s of one reading about it; NaN: nobody repeated
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

// fit draws the line of points: of one point it has the slope of the kind, 0 within slopeU. usual is the
// scatter where nobody repeated.
func fit(points []point, usual, slopeU float64) line {
	l := line{scatter: math.NaN()}
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
		l.Slope = 0
		l.slopeVar = slopeU * slopeU
	}
	l.free = n - params
	s := usual
	if l.free > 0 {
		l.scatter = 0
		for _, p := range points {
			for _, d := range p.off {
				l.scatter += math.Pow(d-l.Zero-l.Slope*(p.x-l.Middle), 2)
			}
		}
		l.scatter = math.Sqrt(l.scatter / l.free)
		s = l.scatter * Student(l.free)
	}
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
	return l
}

// Student gives by how much a normal is widened to have the 90 % interval of Student's t with so many degrees of
// freedom (JCGM 100:2008, G.3).
func Student(free float64) float64 {
	return distuv.StudentsT{Sigma: 1, Nu: free}.Quantile(estimate.HighShare) / distuv.UnitNormal.Quantile(estimate.HighShare)
}
