package prep

import (
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

type passedKey struct{ phase, group, through string }

// phases is data/phases.csv: the share of a phase that passes a filter. Of a group it may
// be one for all filters.
var phases = sync.OnceValue(func() map[passedKey]factor {
	table := map[passedKey]factor{}
	for _, row := range embedded.Rows("phases.csv") {
		if row.Text("share") == steepedShare {
			continue
		}
		table[passedKey{row.Text("phase"), row.Text("group"), row.Text("through")}] = factorOf(row, "share")
	}
	return table
})

// steepedShare marks the groups of data/phases.csv that a filter holds back whole, such as
// leaves: what passes of them is what the liquid has drawn out of them.
const steepedShare = "steeped"

var steepedGroups = sync.OnceValue(func() map[string]bool {
	groups := map[string]bool{}
	for _, row := range embedded.Rows("phases.csv") {
		if row.Text("share") == steepedShare {
			groups[row.Text("group")] = true
		}
	}
	return groups
})

// Strain lets the pot run through a filter and collects grams (a column) of
// what passes. It is an error to collect more than passes.
//
// A filter holds back what is not dissolved: pulp and fines, fat, the protein of pulp and
// curd. In a class of foods that holds its fibre and protein in solution (brewed coffee
// and tea, what a step has drawn out of a solid, wine, beer, honey, syrups) they pass.
// Leaves, grounds and spices stay; what they have given is that of a steep of unknown time.
//
// Limits: a paper takes up a little of what is dissolved too (colour, chlorogenic acids),
// which nobody has measured by constituent.
func Strain(pot *ledger.Pot, collect []float64, through string, f Factors) (Outcome, error) {
	m := newFilter(through, f)
	liquor := passing(pot, m)
	// guard: no more than passes
	if collect[0] > liquor[0] {
		return Outcome{}, unlike("collect %s g: only about %s g pass through %s", collect[0], liquor[0], through)
	}
	m.part = partOf(collect, liquor)
	out := Outcome{Lost: apply(pot, m)}
	m.extracted(pot)
	return out, nil
}

// filter passes a share of each phase; of what passes, part is collected.
type filter struct {
	extraction // of what stays whole in it
	through    string
	agent      bool // what it filters is what was stirred in to clarify
	passed     map[passedKey][]float64
	part       []float64
}

func newFilter(through string, f Factors) *filter {
	steeped := newExtraction(filterStyle, f, func(of *food.Food) []float64 { return immersed(of, Steeping{}, f) })
	return &filter{extraction: steeped, through: through, passed: map[passedKey][]float64{}, part: estimate.Constant(f.N, 1)}
}

// staysWhole reports whether a filter holds a row back whole.
func staysWhole(row ledger.Row) bool {
	of := row.Profile.Food
	return !row.Extracted && steepedGroups()[of.Group] && !drunkWhole(of)
}

// extracted marks the rows that stayed behind: what is left of them is in the liquid.
func (m *filter) extracted(pot *ledger.Pot) {
	for row, r := range pot.Rows {
		if staysWhole(r) {
			m.nameCarbohydrate(pot, row)
			ledger.Extract(pot, row)
		}
	}
}

func (m *filter) Share(row ledger.Row, c *constituent.Constituent, share []float64) {
	copy(share, m.part)
	if staysWhole(row) {
		if c.ID != constituent.Water {
			for d, s := range m.given(row, c) {
				if d < len(share) {
					share[d] *= s
				}
			}
		}
		return
	}
	key, ok := m.phase(row, c.Phase)
	if !ok {
		return // dissolved: it goes with the water
	}
	col, ok := m.passed[key]
	if !ok {
		col = m.factors.draw(key.phase+"/"+key.group, phases()[key])
		m.passed[key] = col
	}
	for d := range share {
		share[d] *= col[d]
	}
}

// phase gives the rule for a phase of a row: its class's for this filter or for all of
// them, else everybody's.
func (m *filter) phase(row ledger.Row, phase string) (passedKey, bool) {
	class := row.Profile.Food.Group
	switch {
	case row.Extracted:
		class = extract
	case m.agent:
		class = "agent"
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
