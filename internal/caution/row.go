package caution

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/phrase"
	"sipsum/internal/unit"
)

// What a row of data/cautions.csv may measure.
const (
	nothing   = ""
	anAmount  = "amount"
	aMass     = "mass"
	aStrength = "abv"
	aPH       = "ph"
	anUnknown = "unknown"
)

// How a measure is compared with a limit.
const (
	over    = "over"
	atLeast = "at least"
	below   = "below"
	tell    = "tell" // the row speaks all the same, of what is over its limit first

	// What is over the limit, or reaches it, is more than anybody may pour: who makes the drink has
	// to decide.
	tooMuch     = "too much over"
	tooMuchFrom = "too much from"
)

// row is one caution and what brings it up.
type row struct {
	code        string
	rank        int
	rules       []string // empty = any
	when        []together
	measure     string
	of          constituent.ID // of an amount
	basis       string
	compare     string
	limit       float64
	unit        string
	with        []together  // what makes an amount plausible that is only possible; empty: anything
	exempt      phrase.List // words of the drink's name that lift it …
	exemptFoods []term      // … if every food that brings the constituent is one of these
	silences    []string    // codes
	who         string
	text        string
	source      string
}

var table = sync.OnceValue(func() []row {
	var all []row
	for _, f := range embedded.Rows("cautions.csv") {
		r := row{
			code: f.Text("code"), rank: f.Whole("rank"), rules: parted(f.Text("rules")), when: alternatives(f, "when"),
			measure: f.Text("measure"), of: constituent.ID(f.Text("of")), basis: f.Text("basis"), compare: f.Text("compare"), unit: f.Text("unit"),
			with: alternatives(f, "only_with"), exempt: phrase.Read(fold(f.Text("exempt_names"))), silences: parted(f.Text("silences")),
			who: f.Text("who"), text: f.Text("text"), source: f.Text("source"),
		}
		for _, other := range alternatives(f, "exempt_foods") {
			r.exemptFoods = append(r.exemptFoods, other...)
		}
		if r.measure != nothing && r.measure != anUnknown {
			r.limit = f.Number("limit")
		}
		if r.measure == anAmount && constituent.Must(r.of).Unit != r.unit {
			f.Fail("the limit is not in the unit of %s", r.of)
		}
		all = append(all, r)
	}
	return all
})

func parted(text string) []string {
	if text == "" {
		return nil
	}
	return strings.Split(text, "|")
}

// under reports whether the row is one of the rules.
func (r *row) under(rules string) bool { return len(r.rules) == 0 || slices.Contains(r.rules, rules) }

// overdoses reports whether a figure is more than may be poured.
func (r *row) overdoses(x float64) bool {
	return (r.compare == tell || r.compare == tooMuch || r.compare == tooMuchFrom) && r.exceeds(x)
}

// exceeds compares a figure with the limit.
func (r *row) exceeds(x float64) bool {
	switch r.compare {
	case below:
		return unit.Over(r.limit, x)
	case atLeast, tooMuchFrom:
		return unit.AtLeast(x, r.limit)
	}
	return unit.Over(x, r.limit)
}
