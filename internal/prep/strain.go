package prep

import (
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/ledger"
)

// Media are the filters that strain and press know.
var Media = []string{"cloth", "paper", "metal"}

type passedKey struct{ phase, group, through string }

// phases is data/phases.csv: the share of a phase that passes a filter.
var phases = sync.OnceValue(func() map[passedKey]factor {
	table := map[passedKey]factor{}
	for _, row := range embedded.Rows("phases.csv") {
		table[passedKey{row.Text("phase"), row.Text("group"), row.Text("through")}] = factorOf(row, "share")
	}
	return table
})

// Strain lets the pot run through a filter and collects grams (a column) of
// what passes. It is an error to collect more than passes.
func Strain(pot *ledger.Pot, collect []float64, through string, f Factors) (Outcome, error) {
	m := &filter{through: through, factors: f, drawn: map[passedKey][]float64{}, part: whole(pot.N)}
	liquor := passing(pot, m)
	// guard: no more than passes
	if collect[0] > liquor[0] {
		return Outcome{}, impossible("collect %.4g g: only about %.4g g pass through %s", collect[0], liquor[0], through)
	}
	m.part = partOf(collect, liquor)
	return Outcome{Lost: pot.Apply(m)}, nil
}

// filter passes a share of each phase; of what passes, part is collected.
type filter struct {
	through string
	factors Factors
	drawn   map[passedKey][]float64
	part    []float64
}

func (m *filter) Share(row ledger.Row, c *constituent.Constituent, share []float64) {
	copy(share, m.part)
	key := passedKey{c.Phase, row.Profile.Food.Group, m.through}
	rule, ok := phases()[key]
	if !ok {
		key.group = "*"
		if rule, ok = phases()[key]; !ok {
			return // dissolved: it goes with the water
		}
	}
	col, ok := m.drawn[key]
	if !ok {
		col = m.factors.draw(key.phase+"/"+key.group, rule)
		m.drawn[key] = col
	}
	for d := range share {
		share[d] *= col[d]
	}
}
