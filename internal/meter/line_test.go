package meter

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/estimate"
)

// nothing is known of the kind: the guide evaluates what was read alone.
var nothing = usual{slope: math.Inf(1)}

// JCGM 100:2008, H.3: a thermometer is compared with a standard at eleven temperatures. Table H.6 has what was read and
// the corrections, H.3.3 the results: y1 = −0.1712 °C and y2 = 0.002 18 with t0 = 20 °C, s(y1) = 0.0029 °C, s(y2) = 0.000 67,
// r(y1, y2) = −0.930, s = 0.0035 °C; H.3.4: b(30 °C) = −0.1494 °C with u = 0.0041 °C, ν = 9.
func TestALineIsThatOfTheGuide(t *testing.T) {
	read := []float64{21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511}
	corrections := []float64{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160}
	var points []point
	for i, x := range read {
		points = append(points, point{x: x, off: corrections[i : i+1]})
	}
	l := fit(points, nothing)
	assert.Equal(t, 9.0, l.free)
	assert.InDelta(t, 0.0035, l.scatter, 0.00005)
	assert.InDelta(t, 0.00218, l.Slope, 0.000005)
	wider := estimate.Student(9) // the guide states s, and leaves t to the interval
	at20, u20 := l.at(20)
	assert.InDelta(t, -0.1712, at20, 0.00005)
	assert.InDelta(t, 0.0029, u20/wider, 0.00005)
	assert.InDelta(t, 0.00067, math.Sqrt(l.slopeVar)/wider, 0.000005)
	assert.InDelta(t, -0.930, -(l.Middle-20)*math.Sqrt(l.slopeVar)/u20, 0.0005, "the correlation of both at 20 °C")
	at30, u30 := l.at(30)
	assert.InDelta(t, -0.1494, at30, 0.00005)
	assert.InDelta(t, 0.0041, u30/wider, 0.00005)
}

// JCGM 100:2008, 4.4.3: twenty temperatures, whose mean is 100.145 °C with s = 1.489 °C, so that u = 0.333 °C. Of one
// standard, 100 °C, that is what the thermometer is off by.
func TestRepeatsOfOneStandardAreItsMean(t *testing.T) {
	read := []float64{96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72}
	p := point{x: 100.145}
	for _, x := range read {
		p.off = append(p.off, x-100)
	}
	l := fit([]point{p}, usual{slope: 0.01})
	assert.InDelta(t, 0.145, l.Zero, 0.0005)
	assert.InDelta(t, 1.489, l.scatter, 0.0005)
	assert.InDelta(t, 0.333, math.Sqrt(l.zeroVar)/estimate.Student(19), 0.0005)
	assert.Zero(t, l.Slope)
	assert.InDelta(t, 0.01, math.Sqrt(l.slopeVar), 1e-12, "of one point nobody knows the slope")
}

// What all repeats of a standard share does not shrink with their number: a hundred readings of a weight that is
// off by 1 are no better than the weight (JCGM 100:2008, 5.1.2 and F.1.2.3).
func TestRepeatsDoNotMakeAStandardBetter(t *testing.T) {
	p := point{x: 200, typB: 1, off: make([]float64, 100)}
	_, u := fit([]point{p}, usual{}).at(200)
	assert.InDelta(t, 1, u, 1e-12)
	two := []point{{x: 0, typB: 1, off: make([]float64, 50)}, {x: 100, typB: 1, off: make([]float64, 50)}}
	l := fit(two, nothing)
	_, middle := l.at(50)
	_, end := l.at(100)
	assert.InDelta(t, 1/math.Sqrt2, middle, 1e-12, "between two standards their mean")
	assert.InDelta(t, 1, end, 1e-12, "at one of them itself")
}
