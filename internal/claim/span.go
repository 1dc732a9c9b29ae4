package claim

import (
	"math"

	"sipsum/internal/unit"
)

// span is a figure in its draws with the unknown at the ends that make it least and most. A
// column of one number is the same in every draw. Where nothing is unknown both are one column.
type span struct{ low, high []float64 }

func exactly(x float64) span {
	col := []float64{x}
	return span{col, col}
}

func (s span) certain() bool { return &s.low[0] == &s.high[0] }

// length is how many draws two columns share: figures of chemistry have fewer.
func length(columns ...[]float64) int {
	n := 1
	for _, c := range columns {
		switch {
		case len(c) == 1:
		case n == 1:
			n = len(c)
		default:
			n = min(n, len(c))
		}
	}
	return n
}

func at(col []float64, d int) float64 {
	if len(col) == 1 {
		return col[0]
	}
	return col[d]
}

// by makes a column of two.
func by(a, b []float64, of func(x, y float64) float64) []float64 {
	out := make([]float64, length(a, b))
	for d := range out {
		out[d] = of(at(a, d), at(b, d))
	}
	return out
}

// joinedBy makes a span of two by a function that grows, or falls, with each of them all the way.
func joinedBy(a, b span, of func(x, y float64) float64, falls bool) span {
	if a.certain() && b.certain() {
		col := by(a.low, b.low, of)
		return span{col, col}
	}
	if falls { // with the second
		return span{by(a.low, b.high, of), by(a.high, b.low, of)}
	}
	return span{by(a.low, b.low, of), by(a.high, b.high, of)}
}

func plus(a, b span) span {
	return joinedBy(a, b, func(x, y float64) float64 { return x + y }, false)
}

func minus(a, b span) span {
	return joinedBy(a, b, func(x, y float64) float64 { return x - y }, true)
}

// product is that of two intervals: the least and the most of the four of their ends.
func product(a, b span, of func(x, y float64) float64) span {
	if a.certain() && b.certain() {
		col := by(a.low, b.low, of)
		return span{col, col}
	}
	n := length(a.low, a.high, b.low, b.high)
	s := span{make([]float64, n), make([]float64, n)}
	for d := range n {
		least, most := math.Inf(1), math.Inf(-1)
		for _, x := range [2]float64{at(a.low, d), at(a.high, d)} {
			for _, y := range [2]float64{at(b.low, d), at(b.high, d)} {
				z := of(x, y)
				if math.IsNaN(z) { // nothing times what nothing bounds
					z = 0
				}
				least, most = min(least, z), max(most, z)
			}
		}
		s.low[d], s.high[d] = least, most
	}
	return s
}

func times(a, b span) span { return product(a, b, func(x, y float64) float64 { return x * y }) }

// over divides. By what may be nothing the quotient may be anything.
func over(a, b span) span {
	s := product(a, b, func(x, y float64) float64 { return x / y })
	for d := range s.low {
		if at(b.low, d) <= 0 && at(b.high, d) >= 0 {
			if s.certain() {
				s = span{append([]float64(nil), s.low...), append([]float64(nil), s.high...)}
			}
			s.low[d], s.high[d] = math.Inf(-1), math.Inf(1)
		}
	}
	return s
}

// part of what has two parts: 0 of nothing.
func part(own, rest span) span {
	return joinedBy(own, rest, func(x, y float64) float64 {
		switch {
		case x <= 0:
			return 0
		case math.IsInf(x, 1) && math.IsInf(y, 1):
			return 1
		case math.IsInf(x, 1):
			return 1
		}
		return x / (x + y)
	}, true)
}

// judged is a condition in its draws: in which it is sure, in which it may be, and the margin by
// which it holds at both ends, in standard deviations of the draws where it has any.
type judged struct {
	sure, may []bool
	margin    span
}

// under judges a < b, or a <= b.
func under(a, b span, strictly bool) judged {
	m := minus(b, a)
	j := judged{make([]bool, len(m.low)), make([]bool, len(m.high)), m}
	for d := range m.low {
		j.sure[d] = reached(m.low[d], closeness(at(a.high, d), at(b.low, d)), strictly) // not if it is not a number
	}
	for d := range m.high {
		j.may[d] = math.IsNaN(m.high[d]) || reached(m.high[d], closeness(at(a.low, d), at(b.high, d)), strictly)
	}
	return j
}

// reached tells whether a margin is there, but for what arithmetic may miss.
func reached(margin, dust float64, strictly bool) bool {
	if strictly {
		return margin > dust
	}
	return margin >= -dust
}

// closeness is by how much arithmetic may miss two figures.
func closeness(x, y float64) float64 {
	most := max(math.Abs(x), math.Abs(y))
	if math.IsInf(most, 1) || math.IsNaN(most) {
		return 0
	}
	return unit.Closeness * most
}

func (j judged) not() judged {
	n := judged{make([]bool, len(j.may)), make([]bool, len(j.sure)), span{negative(j.margin.high), nil}}
	for d := range j.may {
		n.sure[d] = !j.may[d]
	}
	for d := range j.sure {
		n.may[d] = !j.sure[d]
	}
	if n.margin.high = n.margin.low; !j.margin.certain() {
		n.margin.high = negative(j.margin.low)
	}
	return n
}

func negative(col []float64) []float64 {
	out := make([]float64, len(col))
	for d, x := range col {
		out[d] = -x
	}
	return out
}

// with joins two conditions: both, or either. Their margins are compared in standard deviations.
func (j judged) with(k judged, both bool) judged {
	n := min(len(j.sure), len(k.sure))
	if len(j.sure) == 1 || len(k.sure) == 1 {
		n = max(len(j.sure), len(k.sure))
	}
	out := judged{make([]bool, n), make([]bool, n), span{}}
	of := func(list []bool, d int) bool { return list[min(d, len(list)-1)] }
	least := math.Min
	if !both {
		least = math.Max
	}
	for d := range n {
		if both {
			out.sure[d], out.may[d] = of(j.sure, d) && of(k.sure, d), of(j.may, d) && of(k.may, d)
		} else {
			out.sure[d], out.may[d] = of(j.sure, d) || of(k.sure, d), of(j.may, d) || of(k.may, d)
		}
	}
	out.margin = joinedBy(j.margin.inSpreads(), k.margin.inSpreads(), least, false)
	return out
}

// inSpreads gives a margin in standard deviations of its draws, so that margins of different
// things are told apart by how near they are; as it stands where it has no spread.
func (s span) inSpreads() span {
	sd := spread(s.low)
	if sd == 0 {
		return s
	}
	scaled := func(col []float64) []float64 {
		out := make([]float64, len(col))
		for d, x := range col {
			out[d] = x / sd
		}
		return out
	}
	if s.certain() {
		col := scaled(s.low)
		return span{col, col}
	}
	return span{scaled(s.low), scaled(s.high)}
}

// spread is the standard deviation of a column's draws; 0 where it has none or is not a number.
func spread(col []float64) float64 {
	if len(col) < 3 {
		return 0
	}
	n, sum, squares := float64(len(col)-1), 0.0, 0.0
	for _, x := range col[1:] {
		sum += x
	}
	for _, x := range col[1:] {
		squares += (x - sum/n) * (x - sum/n)
	}
	if sd := math.Sqrt(squares / (n - 1)); !math.IsNaN(sd) && !math.IsInf(sd, 0) {
		return sd
	}
	return 0
}
