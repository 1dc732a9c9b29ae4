package sheet

import (
	"sipsum/internal/drivers"
	"sipsum/internal/estimate"
)

// leastShare is the share of a spread from which an input is listed, not counted: our own
// bound, it would print as less than 1 %.
const leastShare = 0.005

// CauseShare is a cause of spread and its share.
type CauseShare struct {
	Cause estimate.Cause
	Share float64
}

// Causes gives the causes of a figure's spread that are worth a line, and the share that no
// single input explains, 0 if it is not worth one.
func Causes(d *drivers.Drivers) (list []CauseShare, rest float64) {
	for _, cause := range estimate.Causes {
		if share := d.Shares[cause]; share >= leastShare {
			list = append(list, CauseShare{cause, share})
		}
	}
	if d.Rest >= leastShare {
		rest = d.Rest
	}
	return list, rest
}

// Drivers gives the inputs that are worth a line, and how many more there are.
func Drivers(d *drivers.Drivers) (list []drivers.Driver, more int) {
	for _, in := range d.Inputs {
		if in.Share >= leastShare {
			list = append(list, in)
		} else {
			more++
		}
	}
	return list, more
}

// A list of readings to take is as long as anybody takes readings: our own bounds.
const (
	mostSuggestions = 10
	mostNarrowings  = 4
)

// worthReading is the least that a reading narrows something, to be taken: data/worth.csv.
var worthReading = drivers.Worth

// Suggestions gives the readings that are worth taking, each with what it narrows most by 1 %
// or more.
func (s *Sheet) Suggestions() []drivers.Suggestion {
	var list []drivers.Suggestion
	for _, g := range s.Assay.Suggestions {
		narrows := g.Narrows[:min(len(g.Narrows), mostNarrowings)]
		for i, n := range narrows {
			if n.By <= leastShare {
				narrows = narrows[:i]
				break
			}
		}
		if g.Narrows = narrows; len(narrows) > 0 && narrows[0].By >= worthReading() && len(list) < mostSuggestions {
			list = append(list, g)
		}
	}
	return list
}
