package assay

import "sipsum/internal/food"

// Poured is a food as a line pours it, in grams at central values: whatever the steps leave
// of it, but of water and gas what is left.
type Poured struct {
	Component string // into which; empty: the drink
	Food      food.ID
	Batch     float64 // as the file writes it
	Serving   float64 // what of it goes into one serving
}

// pouredInto lists what was poured for a drink of so many servings.
func pouredInto(list []*made, serves int) []Poured {
	share := sharesOf(list, serves)
	var all []Poured
	for _, m := range list {
		for _, p := range m.yield.Weighed {
			if p.Food != nil {
				all = append(all, Poured{m.name, p.Food.ID, p.Grams, p.Grams * share[m.name]})
			}
		}
	}
	return all
}

// sharesOf tells which share of all that was made goes into one serving, by name: inner
// components stand before those that hold them.
func sharesOf(list []*made, serves int) map[string]float64 {
	share := map[string]float64{}
	for i := len(list) - 1; i >= 0; i-- {
		m := list[i]
		if m.name == "" {
			share[""] = 1 / float64(serves)
		}
		for _, u := range m.uses {
			share[u.of] += u.share[0] * share[m.name]
		}
	}
	return share
}
