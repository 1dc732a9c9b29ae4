package foaming

import (
	"math"
	"slices"
	"sync"

	"sipsum/internal/embedded"
)

// What a condition is of, beside the constituents.
const (
	PH       = "pH"
	Alcohol  = "alcohol" // % vol
	Celsius  = "celsius"
	Overrun  = "overrun" // %
	Share    = "share"   // g of the food itself in 100 g
	notFound = "nothing found"
)

// Range is a published range. An end that is open is infinite.
type Range struct {
	From, To float64
	Says     string // of what lies within it
	Read     string // how: "seen", "at second hand"
	Source   string
}

// rule is one condition of a kind of foam.
type rule struct {
	of, unit string
	ranges   []Range // none: nobody has published any
	searched string  // where there is none: what was found instead
}

// rules are data/foams.csv by kind, in the order of the file.
var rules = sync.OnceValue(func() map[string][]rule {
	all := map[string][]rule{}
	for _, row := range embedded.Rows("foams.csv") {
		id, of := row.Text("kind"), row.Text("condition")
		if !slices.ContainsFunc(kinds(), func(k kind) bool { return k.id == id }) {
			row.Fail("no kind %s in foam_foods.csv", id)
		}
		i := slices.IndexFunc(all[id], func(r rule) bool { return r.of == of })
		if i < 0 {
			i = len(all[id])
			all[id] = append(all[id], rule{of: of, unit: row.Text("unit")})
		}
		r := &all[id][i]
		if row.Text("read") == notFound {
			r.searched = row.Text("source")
			continue
		}
		from, ok := row.Optional("from")
		if !ok {
			from = math.Inf(-1)
		}
		to, ok := row.Optional("to")
		if !ok {
			to = math.Inf(1)
		}
		if from > to || math.IsInf(from, -1) && math.IsInf(to, 1) {
			row.Fail("%s of %s: a range has an end, and rises", of, id)
		}
		r.ranges = append(r.ranges, Range{from, to, row.Text("says"), row.Text("read"), row.Text("source")})
	}
	return all
})

// Verdict is how a figure stands to the published ranges.
type Verdict string

// The verdicts.
const (
	Within   Verdict = "within"
	Outside  Verdict = "outside"
	Either   Verdict = "either" // its interval reaches over an end
	NotKnown Verdict = "not known"
	NoRange  Verdict = "no published range found"
)

// verdict holds an interval to ranges. A NaN is an end that nobody knows.
func verdict(low, high float64, ranges []Range) Verdict {
	switch {
	case len(ranges) == 0:
		return NoRange
	case math.IsNaN(low) && math.IsNaN(high):
		return NotKnown
	}
	if math.IsNaN(low) {
		low = math.Inf(-1)
	}
	if math.IsNaN(high) {
		high = math.Inf(1)
	}
	touched := false
	for _, r := range ranges {
		if low >= r.From && high <= r.To {
			return Within
		}
		touched = touched || low <= r.To && high >= r.From
	}
	if touched {
		return Either
	}
	return Outside
}
