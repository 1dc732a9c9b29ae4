package meter

import (
	"math"

	"sipsum/internal/amount"
	"sipsum/internal/drink"
)

// State is how an instrument is, by its last check.
type State struct {
	*drink.Meter
	Unit    string
	Step    float64 // of its display
	Noise   float64 // standard deviation of one reading
	Shown   int     // how often it was read at its check
	Free    float64 // degrees of freedom of its scatter, with those of its kind
	Points  []Point
	Zero    float64 // mV of the electrode in pH 7; NaN: no electrode, or nobody knows
	Slope   float64 // of the electrode, % of Nernst; NaN likewise
	Faults  []Fault // by which it is out of tolerance
	Advices []Fault // and what is within it, and wants a hand
	Due     int     // the day of its next check; 0: nobody says when it was checked
	Every   int     // days between checks

	line line
	walk float64 // standard deviation of what it walks between two checks
}

// Point is what an instrument showed of a standard.
type Point struct {
	Text  string
	Known float64
	Shown float64 // mean of the repeats
	Off   float64
	U     float64 // standard uncertainty of the standard and of the display
	N     int
	Most  float64 // the largest error that is within tolerance; NaN: none is published for its kind
}

// Checked tells whether it was held to something known.
func (s *State) Checked() bool { return s.Shown > 0 }

// rectangle gives the standard deviation of a range of so much either way (JCGM 100:2008, 4.3.7).
func rectangle(half float64) float64 { return half / amount.Sqrt3 }

// Of assesses an instrument.
func Of(m *drink.Meter) *State {
	k := kinds()[m.Kind]
	s := &State{Meter: m, Unit: k.unit, Step: k.resolution, Zero: math.NaN(), Slope: math.NaN(), Every: k.due, walk: rectangle(k.zero)}
	if m.Resolution != nil {
		s.Step = m.Resolution.Number
	}
	if m.Checked > 0 {
		s.Due = m.Checked + k.due
	}
	of := usual{max(k.noise, s.Step/math.Sqrt(12)), rule("repeats of a kind"), rectangle(k.slope)}
	s.Noise = of.scatter
	var points []point
	for _, st := range m.Standards {
		p, told := s.held(st)
		points, s.Points = append(points, p), append(s.Points, told)
		s.Shown += len(p.off)
	}
	if len(points) == 0 {
		s.line = line{zeroVar: math.Pow(rectangle(k.zero), 2), slopeVar: of.slope * of.slope, Middle: middleOf(m.Kind)}
	} else {
		s.line = fit(points, of)
		s.Free, s.Noise = s.line.free, max(s.line.scatter, s.Step/math.Sqrt(12))
	}
	s.electrode()
	s.tolerate(k)
	return s
}

// middleOf is where a line has its zero of which nobody checked a point: in pH 7 an electrode gives no voltage.
func middleOf(kind string) float64 {
	if kind == phMeter {
		return neutral
	}
	return 0
}

// held holds what an instrument showed to what is known.
func (s *State) held(st drink.Standard) (point, Point) {
	known, half := st.Known.Number, st.Known.Half
	if half == 0 && !st.Known.Exact && known != 0 { // nothing, as water has of sugar, is nothing
		half = math.Pow10(-st.Known.Decimals) / 2
	}
	unsure := rectangle(half)
	if st.Known.Sigma {
		unsure = half
	}
	if b := bufferNamed(known); s.Kind == phMeter && b != nil {
		if st.Known.Half == 0 && !st.Known.Exact {
			unsure = rectangle(rule("buffer"))
		}
		if st.At != nil {
			known = b.warm(st.At.Number)
		} else {
			known, half = b.inABar()
			unsure = math.Hypot(unsure, rectangle(half))
		}
	}
	p := point{typB: math.Hypot(unsure, s.Step/math.Sqrt(12))}
	sum := 0.0
	for _, q := range st.Shown {
		p.off = append(p.off, q.Number-known)
		sum += q.Number
	}
	mean := sum / float64(len(st.Shown))
	p.x = mean
	return p, Point{Text: st.Text, Known: known, Shown: mean, Off: mean - known, U: p.typB, N: len(st.Shown), Most: math.NaN()}
}

// At gives what an instrument shows too much where it shows x on a day, and the standard uncertainty of that. Day 0:
// nobody says when.
func (s *State) At(x float64, day int) (off, u float64) {
	off, u = s.line.at(x)
	return off, math.Hypot(u, s.walk*s.age(day))
}

// age gives √(days since the check / days between checks).
func (s *State) age(day int) float64 {
	if day == 0 || s.Meter.Checked == 0 {
		return 1
	}
	return math.Sqrt(math.Abs(float64(day-s.Meter.Checked)) / float64(s.Every))
}

// Middle is where an instrument that nobody checked is told.
func (s *State) Middle() float64 { return s.line.Middle }
