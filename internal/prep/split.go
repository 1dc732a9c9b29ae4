package prep

import (
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// Kept is the share of a constituent, and of its parts, that split keeps.
type Kept struct {
	ID    constituent.ID
	Share []float64 // a column
}

// Split keeps the stated shares. What is not named stays whole, or, when a mass
// is collected, stays in one share so that the mass comes out. It is an error to
// collect more than there is, or less than the named parts.
func Split(pot *ledger.Pot, keep []Kept, collect []float64) (Outcome, error) {
	m := &stated{keep: keep, others: make([]float64, pot.N)}
	estimate.Fill(m.others, 1)
	if collect != nil {
		if err := m.solve(pot, collect); err != nil {
			return Outcome{}, err
		}
	}
	return Outcome{Lost: apply(pot, m), Notes: []string{"split by the designer's own shares"}}, nil
}

// solve finds the share of everything that is not named.
func (m *stated) solve(pot *ledger.Pot, collect []float64) error {
	named, others := make([]float64, pot.N), make([]float64, pot.N)
	for row := range pot.Rows {
		for _, col := range pot.Columns.Below(constituent.Mass) {
			share := m.named(pot.Columns.List[col])
			for d, x := range pot.Cell(row, col) {
				if share == nil {
					others[d] += x
				} else {
					named[d] += x * share[d]
				}
			}
		}
	}
	switch {
	case collect[0] > named[0]+others[0]:
		return unlike("collect %s g: at most %s g are there", collect[0], named[0]+others[0])
	case collect[0] < named[0]:
		return unlike("collect %s g: the parts that are kept by name already weigh %s g", collect[0], named[0])
	}
	for d := range m.others {
		if others[d] > 0 {
			m.others[d] = min(max((collect[d]-named[d])/others[d], 0), 1)
		}
	}
	return nil
}

type stated struct {
	keep   []Kept
	others []float64
}

// named gives the stated share of a constituent: its own, else that of the
// nearest parent; nil if none is stated.
func (m *stated) named(c *constituent.Constituent) []float64 {
	for id := c.ID; id != "" && id != constituent.Mass; id = constituent.Must(id).Parent {
		for _, k := range m.keep {
			if k.ID == id {
				return k.Share
			}
		}
	}
	return nil
}

func (m *stated) Share(_ ledger.Row, c *constituent.Constituent, share []float64) {
	if s := m.named(c); s != nil {
		copy(share, s)
		return
	}
	copy(share, m.others)
}

// split reads the shares that the designer states.
func (a at) split(s *drink.Split) (Outcome, error) {
	keep := make([]Kept, len(s.Keep))
	for i, k := range s.Keep {
		keep[i] = Kept{ID: constituent.ID(k.Tag), Share: a.share(&k.Share, k.Tag)}
	}
	return Split(a.pot, keep, a.amount(s.Collect, "collect"))
}
