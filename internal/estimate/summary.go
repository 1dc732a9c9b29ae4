package estimate

import (
	"math"
	"slices"
)

// The limits of every interval that sipsum prints: 5 % and 95 %, a 90 %
// interval.
const (
	LowShare  = 0.05
	HighShare = 0.95
)

// Summary is what is printed of a column.
type Summary struct {
	Mean float64 // column 0
	SD   float64 // of the draws
	Low  float64 // 5 % of the draws lie below; no more than the mean
	High float64 // 5 % of the draws lie above; no less than the mean
}

// Summarise reads a column. With no draws the interval is the central value.
func Summarise(col []float64) Summary {
	return summarise(col, make([]float64, len(col)))
}

// Summariser summarises many columns with one scratch buffer.
type Summariser struct{ scratch []float64 }

// Of summarises a column.
func (s *Summariser) Of(col []float64) Summary {
	if cap(s.scratch) < len(col) {
		s.scratch = make([]float64, len(col))
	}
	return summarise(col, s.scratch[:len(col)])
}

func summarise(col, scratch []float64) Summary {
	s, mean := moments(col)
	draws := col[1:]
	if s.SD == 0 {
		if len(draws) > 0 {
			s.Low, s.High = draws[0], draws[0]
		}
		return s.around()
	}
	work := scratch[:len(draws)]
	low, high := tails(work, draws, mean-s.SD, mean+s.SD)
	lowAt, highAt := place(len(draws), LowShare), place(len(draws), HighShare)
	highAt.index -= len(draws) - len(high)
	if lowAt.index+1 >= len(low) || highAt.index < 0 { // too lopsided
		copy(work, draws)
		s.Low, s.High = quantile(work, LowShare), quantile(work, HighShare)
		return s.around()
	}
	s.Low, s.High = lowAt.of(low), highAt.of(high)
	return s.around()
}

// tails gives the draws below and above two numbers: the ends of an interval are among them, and
// there are far fewer to put in order. They take the two ends of work.
func tails(work, draws []float64, below, above float64) (low, high []float64) {
	n, from := 0, len(work)
	for _, x := range draws {
		switch {
		case x < below:
			work[n] = x
			n++
		case x > above:
			from--
			work[from] = x
		}
	}
	return work[:n], work[from:]
}

// around lets an interval reach to its mean, which lies at the end of its draws where a
// reading is far from what its recipe explains, or reads none.
func (s Summary) around() Summary {
	// guard: an interval reaches its mean
	s.Low, s.High = min(s.Low, s.Mean), max(s.High, s.Mean)
	return s
}

// Moments gives the mean and the standard deviation of a column; the limits are
// the central value.
func Moments(col []float64) Summary {
	s, _ := moments(col)
	return s
}

// moments gives the mean of the draws too.
func moments(col []float64) (s Summary, mean float64) {
	s = Summary{Mean: col[0], Low: col[0], High: col[0]}
	draws := col[1:]
	if len(draws) == 0 {
		return s, s.Mean
	}
	n, sum := float64(len(draws)), 0.0
	constant := true
	for _, x := range draws {
		sum += x
		constant = constant && x == draws[0]
	}
	if constant {
		return s, draws[0]
	}
	squares := 0.0
	mean = sum / n
	for _, x := range draws {
		squares += (x - mean) * (x - mean)
	}
	s.SD = math.Sqrt(squares / max(n-1, 1))
	return s, mean
}

// quantile interpolates between order statistics (definition 7 of Hyndman and
// Fan 1996, Am. Stat. 50:361) of two draws or more, p below 1. It reorders x.
func quantile(x []float64, p float64) float64 { return place(len(x), p).of(x) }

// between is a place between two order statistics.
type between struct {
	index int     // of the lower
	part  float64 // of the way to the upper
}

// place gives that of a quantile among n draws.
func place(n int, p float64) between {
	at := p * float64(n-1)
	return between{int(at), at - float64(int(at))}
}

// of gives the number at a place of x, which it reorders.
func (b between) of(x []float64) float64 {
	i := b.index
	var lower, upper float64
	if i < len(x)/2 { // the neighbour is looked for on the shorter side
		upper = Smallest(x, i+1)
		lower = slices.Max(x[:i+1])
	} else {
		lower = Smallest(x, i)
		upper = slices.Min(x[i+1:])
	}
	return lower + b.part*(upper-lower)
}

// Smallest gives the k-th smallest element, from 0, and puts it at index k, smaller ones before and
// larger ones after it (Hoare's selection).
func Smallest(x []float64, k int) float64 {
	lo, hi := 0, len(x)-1
	for lo < hi {
		pivot := x[lo+(hi-lo)/2]
		i, j := lo, hi
		for i <= j {
			for x[i] < pivot {
				i++
			}
			for x[j] > pivot {
				j--
			}
			if i <= j {
				x[i], x[j] = x[j], x[i]
				i, j = i+1, j-1
			}
		}
		switch {
		case k <= j:
			hi = j
		case k >= i:
			lo = i
		default:
			return x[k]
		}
	}
	return x[k]
}
