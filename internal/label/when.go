package label

import (
	"regexp"
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/solution"
	"sipsum/internal/unit"
)

// condition is one word of a column "when": "always", "no-volume", "simplified", or a
// comparison of the strength in % vol ("abv>1.2"), of an amount in a serving ("FATRN<0.2")
// or of what another row prints ("saturates=0").
type condition struct {
	what  string
	sign  string // empty: a word alone
	limit float64
}

var comparison = regexp.MustCompile(`^([\w+-]+)(>=|<=|>|<|=)([0-9.]+)$`)

// words are the conditions that compare nothing.
var words = []string{"always", "no-volume", "simplified"}

func readConditions(r embedded.Row) []condition {
	var list []condition
	for word := range strings.FieldsSeq(r.Text("when")) {
		m := comparison.FindStringSubmatch(word)
		switch {
		case slices.Contains(words, word):
			list = append(list, condition{what: word})
		case m != nil:
			list = append(list, condition{what: m[1], sign: m[2], limit: number(m[3])})
		default:
			r.Fail("when: %q is no condition", word)
		}
	}
	return list
}

// hold reports whether all conditions hold of a drink. What nobody knows holds nothing.
func (r *ruleset) hold(list []condition, f Facts) bool {
	for _, c := range list {
		if !r.holds(c, f) {
			return false
		}
	}
	return true
}

func (r *ruleset) holds(c condition, f Facts) bool {
	switch c.what {
	case "always":
		return true
	case "no-volume":
		return f.ServingMl <= 0
	case "simplified":
		shape, _ := r.shape(f)
		return shape == Simplified
	case "abv":
		abv, ok := f.abv()
		return ok && compare(abv, c.sign, c.limit)
	}
	if l, ok := r.line(c.what); ok {
		p, known := r.printSum(r.sumOf(l, l.units[0], f), l, f)
		return known && compare(p.value, c.sign, c.limit) && (c.limit > 0 || p.zero)
	}
	amount, ok := f.Serving[constituent.Must(constituent.ID(c.what)).ID]
	return ok && amount.Known && compare(amount.Mean, c.sign, c.limit)
}

func compare(x float64, sign string, limit float64) bool {
	switch sign {
	case ">":
		return unit.Over(x, limit)
	case ">=":
		return unit.AtLeast(x, limit)
	case "<":
		return unit.Over(limit, x)
	case "<=":
		return unit.AtLeast(limit, x)
	}
	return unit.AtLeast(x, limit) && unit.AtLeast(limit, x)
}

func (r *ruleset) line(key string) (line, bool) {
	for _, l := range r.lines {
		if l.key == key {
			return l, true
		}
	}
	return line{}, false
}

// abvMost gives the end of the interval of the strength in % vol.
func (f Facts) abvMost() float64 {
	alcohol := f.Serving[constituent.Alcohol]
	return solution.ABV(max(alcohol.Mean, alcohol.KnownMost()), f.ServingMl)
}

// abv gives the strength in % vol; ok is false where nobody knows the alcohol or the volume.
func (f Facts) abv() (percent float64, ok bool) {
	alcohol := f.Serving[constituent.Alcohol]
	if !alcohol.Known || f.ServingMl <= 0 {
		return 0, false
	}
	return solution.ABV(alcohol.Mean, f.ServingMl), true
}
