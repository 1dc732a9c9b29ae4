package assay

import "sipsum/internal/food"

// Dose is how much of a food the lines of a file weigh in, in grams at central values:
// whatever the steps leave of it, but of water and gas what is left.
type Dose struct {
	Component string // into which; empty: the drink
	Food      food.ID
	Batch     float64 // as the file writes it
	Serving   float64 // what of it goes into one serving
}

// dosesOf lists what was weighed in for a drink of so many servings.
func dosesOf(list []*made, serves int) []Dose {
	share := sharesOf(list, serves)
	var all []Dose
	for _, m := range list {
		for _, w := range m.yield.Weighed {
			if w.Food != nil {
				all = append(all, Dose{m.name, w.Food.ID, w.Grams, w.Grams * share[m.name]})
			}
		}
	}
	return all
}

// sharesOf tells which share of all that was made goes into one serving, by name: inner
// components stand before those that hold them.
func sharesOf(list []*made, serves int) map[string]float64 {
	share := map[string]float64{"": 1 / float64(serves)}
	for i := len(list) - 1; i >= 0; i-- {
		for _, u := range list[i].uses {
			share[u.of] += u.share[0] * share[list[i].name]
		}
	}
	return share
}
