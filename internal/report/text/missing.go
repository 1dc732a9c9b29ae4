package textreport

import (
	"cmp"
	"math"
	"slices"

	"sipsum/internal/clean"
	"sipsum/internal/composition"
)

// mostMissing is how many unknown things a sentence names: our own bound, more are a list.
const mostMissing = 3

// seeAssay names the page that has the whole of a list.
const seeAssay = ": sipsum assay"

// missing is something unknown, by its words.
type missing struct {
	words string
	composition.Result
}

// most is the most in grams that it can be; infinite if nothing bounds it.
func (m missing) most() float64 {
	if math.IsNaN(m.UpTo) {
		return math.Inf(1)
	}
	most := m.UpTo
	for unit := "g"; unit != m.Unit && smaller[unit] != ""; unit = smaller[unit] {
		most /= thousand
	}
	return most
}

// fewOf names the unknown things that may be most and counts the others, unless the page is
// the one that lists all; where says which page that is.
func (p *page) fewOf(list []missing, where string) string {
	short := !p.whole && len(list) > mostMissing+1 // one more is as short as its count
	if short {
		slices.SortStableFunc(list, func(a, b missing) int { return cmp.Compare(b.most(), a.most()) })
	}
	var words []string
	for i, m := range list {
		if i == mostMissing && short {
			words = append(words, grouped(len(list)-i)+" more"+where)
			break
		}
		words = append(words, m.words)
	}
	return clean.Listed(words)
}
