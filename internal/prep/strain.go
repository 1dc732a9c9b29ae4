package prep

import (
	"encoding/csv"
	"fmt"
	"strconv"
	"sync"

	"sipsum/data"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// Media are the filters that strain and press know.
var Media = []string{"cloth", "paper", "metal"}

// passed is one row of data/phases.csv: the share of a phase that passes.
type passed struct {
	share, low, high float64
	source           string
}

type passedKey struct{ phase, group, through string }

var phases = sync.OnceValue(func() map[passedKey]passed {
	file, err := data.FS.Open("phases.csv")
	if err != nil {
		panic("prep: " + err.Error())
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic("prep: phases.csv: " + err.Error())
	}
	table := map[passedKey]passed{}
	for _, row := range rows[1:] {
		var n [3]float64
		for i := range n {
			if n[i], err = strconv.ParseFloat(row[3+i], 64); err != nil {
				panic(fmt.Sprintf("prep: phases.csv: %v: not a number", row))
			}
		}
		table[passedKey{row[0], row[1], row[2]}] = passed{n[0], n[1], n[2], row[6]}
	}
	return table
})

// Strain lets the pot run through a filter and collects grams (a column) of
// what passes. It is an error to collect more than passes.
func Strain(pot *ledger.Pot, collect []float64, through string, f Factors) (Outcome, error) {
	m := &filter{through: through, factors: f, drawn: map[passedKey][]float64{}}
	liquor := make([]float64, pot.N)
	mass := pot.Columns.Below(constituent.Mass)
	share := make([]float64, pot.N)
	m.part = make([]float64, pot.N)
	fill(m.part, 1)
	for row := range pot.Rows {
		for _, col := range mass {
			m.Share(pot.Rows[row], pot.Columns.List[col], share)
			for d, x := range pot.Cell(row, col) {
				liquor[d] += x * share[d]
			}
		}
	}
	if collect[0] > liquor[0] {
		return Outcome{}, impossible("collect %.4g g: only about %.4g g pass through %s", collect[0], liquor[0], through)
	}
	part := make([]float64, pot.N)
	for d := range part {
		if liquor[d] > 0 {
			part[d] = min(collect[d]/liquor[d], 1)
		}
	}
	m.part = part
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
		col = m.factors.Column(key.phase+"/"+key.group, estimate.Input{Central: rule.share, Shape: rangeShape(rule), Low: rule.low, High: rule.high})
		m.drawn[key] = col
	}
	for d := range share {
		share[d] *= col[d]
	}
}

func rangeShape(p passed) estimate.Shape {
	if p.low == p.high {
		return estimate.Exact
	}
	return estimate.Uniform
}
