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

// phases is data/phases.csv: the share of a phase that passes a filter. Of a group it may
// be one for all filters.
var phases = sync.OnceValue(func() map[passedKey]factor {
	table := map[passedKey]factor{}
	for _, row := range embedded.Rows("phases.csv") {
		table[passedKey{row.Text("phase"), row.Text("group"), row.Text("through")}] = factorOf(row, "share")
	}
	return table
})

// Strain lets the pot run through a filter and collects grams (a column) of
// what passes. It is an error to collect more than passes.
//
// A filter holds back what is not dissolved: pulp and fines, fat, the protein of pulp and
// curd. In a class of foods that holds its fibre and protein in solution (brewed coffee
// and tea, what a step has drawn out of a solid, wine, beer, honey, syrups) they pass.
//
// Limits: a paper takes up a little of what is dissolved too (colour, chlorogenic acids),
// which nobody has measured by constituent. Grounds or leaf that stand in the pot without
// a brew or a steep give nothing by this step: state how they were extracted first.
func Strain(pot *ledger.Pot, collect []float64, through string, f Factors) (Outcome, error) {
	m := &filter{through: through, factors: f, drawn: map[passedKey][]float64{}, part: whole(pot.N)}
	liquor := passing(pot, m)
	// guard: no more than passes
	if collect[0] > liquor[0] {
		return Outcome{}, unlike("collect %s g: only about %s g pass through %s", collect[0], liquor[0], through)
	}
	m.part = partOf(collect, liquor)
	return Outcome{Lost: apply(pot, m)}, nil
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
	key, ok := m.find(row, c.Phase)
	if !ok {
		return // dissolved: it goes with the water
	}
	col, ok := m.drawn[key]
	if !ok {
		col = m.factors.draw(key.phase+"/"+key.group, phases()[key])
		m.drawn[key] = col
	}
	for d := range share {
		share[d] *= col[d]
	}
}

// find gives the rule for a phase of a row: its class's for this filter or for all of
// them, else everybody's.
func (m *filter) find(row ledger.Row, phase string) (passedKey, bool) {
	class := row.Profile.Food.Group
	if row.Extracted {
		class = extract
	}
	for _, key := range []passedKey{{phase, class, m.through}, {phase, class, "*"}, {phase, "*", m.through}} {
		if _, ok := phases()[key]; ok {
			return key, true
		}
	}
	return passedKey{}, false
}

// extract is the class of data/phases.csv for what a brew or a steep has drawn out of a
// solid: it is in the liquid, whatever the solid was.
const extract = "extract"
