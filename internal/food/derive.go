package food

import (
	"math"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
)

// conversion is one row of data/derive.csv: target = from · factor.
type conversion struct {
	target, from      constituent.ID
	factor, low, high float64
	source            string
}

var conversions = sync.OnceValue(func() []conversion {
	var all []conversion
	for _, row := range embedded.Rows("derive.csv") {
		all = append(all, conversion{
			target: constituent.ID(row.Text("target")), from: constituent.ID(row.Text("from")),
			factor: row.Number("factor"), low: row.Number("factor_low"), high: row.Number("factor_high"), source: row.Text("source"),
		})
	}
	return all
})

// derive fills cells that the table states under another convention. The rows
// of the file are tried in order; a published value always stands.
func (e *entry) derive() {
	for _, rule := range conversions() {
		target := constituent.Must(rule.target)
		v, ok := e.figures[rule.from]
		if !ok || e.published[target.Order] || !Stated(v.Amount) {
			continue
		}
		// A figure and its target may be kept in different units of mass.
		v.Amount *= rule.factor * target.PerGram / constituent.Must(rule.from).PerGram
		v.SD *= rule.factor * target.PerGram / constituent.Must(rule.from).PerGram
		cell, known := cellOf(e.Food, target, v)
		if !known {
			continue
		}
		// The factor's own range is rectangular (JCGM 100:2008, 4.3.7).
		width := cell.Amount * (rule.high - rule.low) / rule.factor
		cell.SD = math.Hypot(cell.SD, width/math.Sqrt(12))
		cell.State = max(cell.State, estimate.Calculated)
		cell.Why = string(rule.from) + " × " + trimmed(rule.factor) + ": " + rule.source
		e.Cells[target.Order], e.published[target.Order] = cell, true
		e.note("derived", rule.target, "its %s is worked out from its %s", target.Name, constituent.Must(rule.from).Name)
	}
}
