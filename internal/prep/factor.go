package prep

import (
	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// Factors draws the uncertain factors of a step: each has a stream of its own
// under the step's path.
type Factors struct {
	estimate.Ensemble
	Path string // the step's stable path
}

// Factor draws one factor.
func (f Factors) Factor(name string, in estimate.Input) []float64 {
	in.Stream = f.Stream("step", f.Path, name)
	col := f.Column(in)
	f.Journal.Write(estimate.Steps, f.Path+": "+name, col)
	return col
}

// draw draws a factor of a table over its range.
func (f Factors) draw(name string, x factor) []float64 {
	shape := estimate.Uniform
	if x.low == x.high {
		shape = estimate.Exact
	}
	return f.Factor(name, estimate.Input{Central: x.value, Shape: shape, Low: x.low, High: x.high})
}

// factor is a figure of a table of steps: its central value and the range over
// which it is rectangular.
type factor struct{ value, low, high float64 }

// factorOf reads a factor whose central value stands in a column of this name.
func factorOf(row embedded.Row, column string) factor {
	return factor{value: row.Number(column), low: row.Number("low"), high: row.Number("high")}
}

// nearest finds the entry of a constituent, else of its nearest parent below the
// mass.
func nearest[T any](c *constituent.Constituent, of func(constituent.ID) (T, bool)) (T, bool) {
	for id := c.ID; id != "" && id != constituent.Mass; id = constituent.Must(id).Parent {
		if found, ok := of(id); ok {
			return found, true
		}
	}
	var none T
	return none, false
}

// passing gives the mass that a model keeps, without changing the pot.
func passing(pot *ledger.Pot, m ledger.Model) []float64 {
	sum, share := make([]float64, pot.N), make([]float64, pot.N)
	for row := range pot.Rows {
		for _, col := range pot.Columns.Below(constituent.Mass) {
			if !pot.Has(row, col) {
				continue
			}
			m.Share(pot.Rows[row], pot.Columns.List[col], share)
			for d, x := range pot.Cell(row, col) {
				sum[d] += x * share[d]
			}
		}
	}
	return sum
}

// partOf gives a ÷ b, at most 1: the part of a liquor that is collected.
func partOf(a, b []float64) []float64 {
	part := make([]float64, len(a))
	for d := range part {
		if b[d] > 0 {
			part[d] = min(a[d]/b[d], 1)
		}
	}
	return part
}
