package sheet

import (
	"slices"
	"sync"

	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/nutritionclaim"
	"sipsum/internal/unit"
)

// leastRetention is the least share of a vitamin that any published factor of cooking leaves:
// data/retention.csv. Minerals leave with the water that is poured off, and none is here.
var leastRetention = sync.OnceValue(func() map[constituent.ID]float64 {
	least := map[constituent.ID]float64{}
	of := Groups()[slices.IndexFunc(Groups(), func(g Group) bool { return g.Name == vitamins })]
	vitamin := func(id constituent.ID) bool {
		return slices.ContainsFunc(of.Lines, func(l GroupLine) bool { return l.ID == id })
	}
	for _, row := range embedded.Rows("retention.csv") {
		for _, column := range row.Columns() {
			c, ok := constituent.Find(column)
			if !ok || !vitamin(c.ID) {
				continue
			}
			if percent, ok := row.Optional(column); ok {
				share, have := least[c.ID]
				if now := percent / unit.Hundred; !have || now < share {
					least[c.ID] = now
				}
			}
		}
	}
	return least
})

// vitamins is their group in groups.csv.
const vitamins = "Vitamins and others"

// boiled reports whether anything in the drink was heated in a way that follows no factor: a
// reduction keeps its vitamins in the ledger, which a pot does not, and heat by time all but
// vitamin C.
func boiled(a *assay.Assay) bool {
	for _, steps := range stepsOf(a) {
		if slices.ContainsFunc(steps, func(s drink.Step) bool { h, ok := s.(*drink.Heat); return ok && h.Stated() }) {
			return true
		}
	}
	return took(a, "reduce", "caramelise")
}

// lose lowers the lower ends of what heat destroys: a claim of a boiled drink holds only with
// the least that any dish keeps.
func lose(of nutritionclaim.Amounts) {
	for id, share := range leastRetention() {
		if f, ok := of[id]; ok {
			f.Low *= share
			of[id] = f
		}
	}
}
