package label

import (
	"math"
	"strconv"
	"strings"
	"sync"

	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// Accepted is what an authority that checks a card accepts around a declared figure, by the
// guidance on tolerances of its rules. Low and High are as the rules print amounts.
type Accepted struct {
	Low, High string
	Source    string
	Status    string
}

// tolerance is a band of declared amounts, and what may lie between a card and an analysis.
type tolerance struct {
	from      band
	amount    float64            // in the unit of the row
	share     float64            // of the figure; one of the two is 0
	rowsRules map[[2]string]bool // rules and row
	cited
}

var tolerances = sync.OnceValue(func() []tolerance {
	var all []tolerance
	for _, r := range embedded.Rows("tolerances.csv") {
		t := tolerance{
			from:  band{from: r.Number("from"), including: r.Text("including") == "yes"},
			cited: citedBy(r), rowsRules: map[[2]string]bool{},
		}
		t.amount, _ = r.Optional("amount")
		if percent, ok := r.Optional("percent"); ok {
			t.share = percent / unit.Hundred
		}
		for rules := range strings.FieldsSeq(r.Text("rules")) {
			for row := range strings.FieldsSeq(r.Text("rows")) {
				t.rowsRules[[2]string{rules, row}] = true
			}
		}
		all = append(all, t)
	}
	return all
})

// acceptedOf gives what is accepted around a figure of a card; nil where the rules say nothing
// of the row, or the card declares no figure but words, or 0. The guidance is on what is in
// 100 g or 100 ml, and not on a serving.
//
// It widens the declared figure to all that rounds to it, read with one digit more (6.4 is
// 6.35 to 6.44), adds and takes off the tolerance, and rounds.
func (r *ruleset) acceptedOf(rules string, w *Working, f Facts) *Accepted {
	x, err := strconv.ParseFloat(w.Printed, 64)
	l, ok := r.line(w.Row)
	if err != nil || x <= 0 || !ok || w.Basis == PerServing {
		return nil
	}
	for _, t := range tolerances() {
		if !t.rowsRules[[2]string{rules, w.Row}] || !t.from.covers(x) {
			continue
		}
		digit, bands := math.Pow10(-decimals(w.Printed)), r.bandsOf(l.rounding, f)
		low, high := x-0.5*digit, x+0.4*digit
		low, high = low-t.amount-t.share*low, high+t.amount+t.share*high
		return &Accepted{Low: render(max(low, 0), bands).text, High: render(high, bands).text, Source: t.source, Status: t.status}
	}
	return nil
}
