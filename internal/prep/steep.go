package prep

import (
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// Steep lays ingredients (a pot of their own) into the pot and takes them out
// again. What they give is by data/extraction.csv: coffee and tea by their
// entries, anything else by wide common practice. Collect is the mass of the
// liquor, nil if it was not weighed: then the pot loses nothing to what is taken
// out, which is said.
//
// It is an error to collect more than there is.
//
// Limits: time and temperature do not change the shares: the sources behind them
// are brews of one to a few minutes in hot water; cold and long steeps differ
// less than the ranges. Aroma is not modelled. A ferment that starts is not seen.
func Steep(pot, steeped *ledger.Pot, collect []float64, f Factors) (Outcome, error) {
	m := &infusion{
		extraction: newExtraction(filterStyle, f, func(group string) []float64 {
			return f.draw("yield/"+group, extractions()[extractKey{group, "*", yieldEntry}].factor)
		}),
		water: make([]float64, pot.N), part: whole(pot.N),
	}
	var out Outcome
	if collect == nil {
		out.note("the liquid that the solids hold back was not weighed and is not taken off: give collect")
		out.Lost = m.join(pot, steeped)
		return out, nil
	}
	m.water = whole(pot.N)
	liquor := passing(steeped, m)
	for d, x := range pot.Mass() {
		liquor[d] += x
	}
	if collect[0] > liquor[0] {
		return Outcome{}, impossible("collect %.4g g: pot and extract weigh about %.4g g", collect[0], liquor[0])
	}
	m.part = partOf(collect, liquor)
	m.water = m.part
	out.Lost = m.join(pot, steeped)
	return out, nil
}

// infusion keeps what the steeped ingredients give; of the liquor, part is
// collected.
type infusion struct {
	extraction
	water []float64
	part  []float64
}

func (m *infusion) join(pot, steeped *ledger.Pot) ledger.Lost {
	lost := steeped.Apply(m).Plus(pot.Apply(evenly(m.part)))
	pot.Join(steeped)
	return lost
}

func (m *infusion) Share(row ledger.Row, c *constituent.Constituent, share []float64) {
	if c.ID == constituent.Water {
		copy(share, m.water)
		return
	}
	by := m.fixed(row, c)
	if by == nil {
		by = m.entry(row, m.other(c))
	}
	for d := range share {
		share[d] = by[d] * m.part[d]
	}
}

func (m *infusion) other(c *constituent.Constituent) constituent.ID {
	if c.Kind == constituent.Rider {
		return ridersEntry
	}
	return solidsEntry
}

// evenly keeps one share of everything.
type evenly []float64

func (m evenly) Share(_ ledger.Row, _ *constituent.Constituent, share []float64) { copy(share, m) }
