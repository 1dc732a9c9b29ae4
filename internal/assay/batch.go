package assay

import (
	"fmt"
	"math"

	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// noteBatches says which components the drink takes more of than their recipes make, and which it
// takes none of. A component is scaled to what the build takes, so that the figures hold either way:
// what has to be known is how much of it to make.
func (a *Assay) noteBatches(list []*made) {
	takes := map[string]float64{"": 1} // how often the recipe of each is made; "" is the drink
	for i := len(list) - 1; i >= 0; i-- {
		for _, u := range list[i].uses { // outer ones before those that they hold
			takes[u.of] += takes[list[i].name] * u.share[0]
		}
	}
	for _, m := range list[:len(list)-1] {
		if times, makes := takes[m.name], m.pot.Mass()[0]; unit.Over(times, 1) {
			a.Notes = append(a.Notes, note.Note{Kind: "batch", Text: fmt.Sprintf("%s: the recipe makes %s g, the drink takes %s g: multiply the batch by %s",
				m.name, note.Number(makes), note.Number(times*makes), note.Grams(math.Ceil(times*timesTo)/timesTo))})
		}
	}
	for _, c := range a.recipe.Unused {
		a.Notes = append(a.Notes, note.Note{Kind: "unused", Text: c + ": nothing pours it, so that nothing of it is in the drink; pour it, or take it out"})
	}
}

// timesTo is how a batch is multiplied: in tenths, and rather too much than too little.
const timesTo = 10
