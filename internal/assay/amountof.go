package assay

import (
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
)

// AmountOf gives a constituent of the serving for a card, in the vocabulary's
// unit at central values: the known part;
// the known part with the most that the unknown parts could be (NaN where one
// has no bound); and whether anything is known.
func (a *Assay) AmountOf(id constituent.ID) (mean, withBounds float64, known bool) {
	c := constituent.Must(id)
	bound, unknown := composition.MostOf(a.Serving, id)
	mean = a.Serving.Central(id) * c.PerGram
	return mean, mean + bound*c.PerGram, mean > 0 || len(unknown) < len(a.Serving.Rows) // a part of a total may be known
}

// Used tells which components are in the drink, by name.
func (a *Assay) Used() map[string]bool {
	used := map[string]bool{}
	for _, item := range a.Items {
		for _, name := range item.Path {
			used[name] = true
		}
	}
	return used
}
