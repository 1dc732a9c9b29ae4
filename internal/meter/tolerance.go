package meter

import (
	"fmt"
	"math"
	"sync"

	"sipsum/internal/embedded"
	"sipsum/internal/note"
	"sipsum/internal/solution"
)

// Fault is how an instrument is out of tolerance, or wants a hand, and what to do.
type Fault struct{ What, Do, Source string }

func (f Fault) String() string { return f.What + ": " + f.Do }

const (
	phMeter = "pH meter"
	neutral = 7  // the pH in which an electrode gives no voltage
	usually = 25 // °C
	kelvin  = 273.15
	percent = 100
	milli   = 1000
)

// perPH is what one pH is in mV at a temperature in °C, by Nernst.
func perPH(celsius float64) float64 {
	return milli * math.Ln10 * solution.GasConstant() * (celsius + kelvin) / solution.FaradayConstant()
}

// electrode tells zero and slope of a pH electrode: as the meter tells them, else from what it showed of buffers.
func (s *State) electrode() {
	if s.Kind != phMeter {
		return
	}
	if len(s.Points) > 1 && apart(s.Points) {
		slope, shown := shownIn(neutral, s.Points)
		s.Slope, s.Zero = percent*slope, (neutral-shown)*perPH(usually)
	} else if len(s.Points) > 0 {
		s.Zero = -s.Points[0].Off * perPH(usually)
	}
	if s.Meter.Zero != nil {
		s.Zero = s.Meter.Zero.Number
	}
	if s.Meter.Slope != nil {
		s.Slope = s.Meter.Slope.Number
	}
}

// apart tells whether points lie apart.
func apart(points []Point) bool {
	for _, p := range points[1:] {
		if p.Known != points[0].Known {
			return true
		}
	}
	return false
}

// shownIn gives by how much more is shown where there is more, and what is shown where there is so much, by the least
// squares of all points alone: an electrode is judged by what it gave.
func shownIn(known float64, points []Point) (slope, shown float64) {
	var n, x, y, xx, xy float64
	for _, p := range points {
		w := float64(p.N)
		n, x, y = n+w, x+w*p.Known, y+w*p.Shown
		xx, xy = xx+w*p.Known*p.Known, xy+w*p.Known*p.Shown
	}
	slope = (n*xy - x*y) / (n*xx - x*x)
	return slope, y/n + slope*(known-x/n)
}

// tolerance is a row of data/meter_limits.csv.
type tolerance struct {
	kind, of, class string
	from, to, most  float64
	unit, source    string
}

var tolerances = sync.OnceValue(func() []tolerance {
	var all []tolerance
	for _, row := range embedded.Rows("meter_limits.csv") {
		from, _ := row.Optional("from")
		to, ok := row.Optional("to")
		if !ok {
			to = math.Inf(1)
		}
		all = append(all, tolerance{row.Text("kind"), row.Text("of"), row.Text("class"), from, to, row.Number("most"), row.Text("unit"), row.Text("source")})
	}
	return all
})

// tolerate holds an instrument to what is published of its kind. What it is out by widens it.
func (s *State) tolerate(k kind) {
	class := s.Class
	if class == "" {
		class = k.class
	}
	for _, t := range tolerances() {
		if t.kind != s.Kind || t.class != class {
			continue
		}
		switch t.of {
		case "error":
			s.tolerateErrors(t)
		case "zero":
			if math.Abs(s.Zero) > t.most {
				s.Faults = append(s.Faults, Fault{fmt.Sprintf("the electrode gives %s mV in pH 7, and ± %g mV is the most", note.Number(s.Zero), t.most), "clean it and leave it in storage solution, adjust it again, or replace it", t.source})
			}
		case "least slope":
			if s.Slope < t.most {
				s.Faults = append(s.Faults, Fault{fmt.Sprintf("the electrode has a slope of %s %% of Nernst, and %g %% is the least", note.Number(s.Slope), t.most), "replace it", t.source})
			}
		case "weak slope":
			if s.Slope < t.most {
				s.Advices = append(s.Advices, Fault{fmt.Sprintf("the electrode has a slope of %s %% of Nernst", note.Number(s.Slope)), fmt.Sprintf("below %g %% it wants to be cleaned", t.most), t.source})
			}
		case "most slope":
			if s.Slope > t.most {
				s.Advices = append(s.Advices, Fault{fmt.Sprintf("the electrode has a slope of %s %% of Nernst", note.Number(s.Slope)), fmt.Sprintf("above %g %% a buffer is not what it says: open fresh ones", t.most), t.source})
			}
		default:
			panic("meter: meter_limits.csv has a limit of " + t.of)
		}
	}
	s.widen()
}

// tolerateErrors holds what an instrument showed of its standards to the largest error that is allowed there.
func (s *State) tolerateErrors(t tolerance) {
	for i := range s.Points {
		p := &s.Points[i]
		most, at := t.most, math.Abs(p.Known)
		if t.unit == "division" {
			most, at = most*s.Step, at/s.Step
		}
		if at < t.from || at > t.to || at == t.from && t.from > 0 {
			continue
		}
		if p.Most = most; math.Abs(p.Off) > most*(1+rounding) {
			s.Faults = append(s.Faults, Fault{fmt.Sprintf("of %s it shows %s %s too much, and ± %s is the most", p.Text, note.Number(p.Off), s.Unit, note.Number(most)), "adjust it, or have it adjusted, and check it again", t.source})
		}
	}
}

// rounding is the part of a figure that adding and dividing floating point numbers loses.
const rounding = 1e-9

// widen lets an instrument that is out of tolerance be off by as much again as it was found to be, and an electrode
// as one that nobody adjusted.
func (s *State) widen() {
	if len(s.Faults) == 0 {
		return
	}
	s.line.zeroVar += s.line.Zero * s.line.Zero
	s.line.slopeVar += s.line.Slope * s.line.Slope
	if s.Kind == phMeter {
		_, zero := unadjusted("zero")
		_, slope := unadjusted("slope")
		s.line.zeroVar, s.line.slopeVar = max(s.line.zeroVar, zero*zero), max(s.line.slopeVar, slope*slope)
	}
}
