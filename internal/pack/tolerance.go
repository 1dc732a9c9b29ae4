package pack

import (
	"math"
	"strings"
	"sync"

	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// Tolerance is what a content may be around a declared figure, by the guidance of its rules.
type Tolerance struct {
	Amount      float64 // in the unit of the row
	Share       float64 // of the figure; one of the two is 0
	Least, Most bool    // which way the rules limit
	Source      string
	Status      string

	from      float64
	including bool
}

type toleranceKey struct{ rules, row string }

var tolerances = sync.OnceValue(func() map[toleranceKey][]Tolerance {
	found := map[toleranceKey][]Tolerance{}
	for _, r := range embedded.Rows("tolerances.csv") {
		side := r.Text("side")
		t := Tolerance{
			from: r.Number("from"), including: r.Text("including") == "yes",
			Least: side != "most", Most: side != "least", Source: r.Text("source"), Status: r.Text("status"),
		}
		t.Amount, _ = r.Optional("amount")
		if percent, ok := r.Optional("percent"); ok {
			t.Share = percent / unit.Hundred
		}
		for rules := range strings.FieldsSeq(r.Text("rules")) {
			for row := range strings.FieldsSeq(r.Text("rows")) {
				key := toleranceKey{rules, row}
				found[key] = append(found[key], t)
			}
		}
	}
	return found
})

// ToleranceOf gives the tolerance of a figure of a row in 100 g or 100 ml; ok is false where the
// rules say nothing.
func ToleranceOf(rules, row string, x float64) (t Tolerance, ok bool) {
	for _, t := range tolerances()[toleranceKey{rules, row}] {
		if t.including && unit.AtLeast(x, t.from) || !t.including && unit.Over(x, t.from) {
			return t, true
		}
	}
	return Tolerance{}, false
}

// Around gives what is accepted of a figure that was rounded from between low and high. A side
// that the rules leave open is infinite.
func (t Tolerance) Around(low, high float64) (least, most float64) {
	least, most = math.Inf(-1), math.Inf(1)
	if t.Least {
		least = max(low-t.Amount-t.Share*low, 0)
	}
	if t.Most {
		most = high + t.Amount + t.Share*high
	}
	return least, most
}

// Spread gives the standard deviation of a figure of which least to most is accepted; class is
// that of its class, for a side that is open, and limit the most that there can be.
func Spread(x, least, most, class, limit float64) float64 {
	z := math.Sqrt2 * math.Erfinv(share("inside the tolerance"))
	less, more := x-least, most-x
	if math.IsInf(less, 1) {
		less = z * class
	}
	if math.IsInf(more, 1) {
		more = z * class
	}
	return max(min(less, x)+min(more, max(limit-x, 0)), 0) / 2 / z
}

// Inside is the share of packs whose content is accepted, and who counted them.
func Inside() (inside float64, source string) {
	row := surveys()["inside the tolerance"]
	return row.value, row.source
}

// OtherFactors is the share of an energy by which other factors than the general ones may change
// it.
func OtherFactors() float64 { return share("energy by other factors") }

type survey struct {
	value  float64
	source string
}

var surveys = sync.OnceValue(func() map[string]survey {
	found := map[string]survey{}
	for _, r := range embedded.Rows("declared.csv") {
		found[r.Text("what")] = survey{r.Number("share"), r.Text("source")}
	}
	return found
})

func share(what string) float64 {
	s, ok := surveys()[what]
	if !ok {
		panic("pack: declared.csv lacks " + what)
	}
	return s.value
}
