package assay

import (
	"fmt"

	"sipsum/internal/constituent"
	"sipsum/internal/liquid"
	"sipsum/internal/note"
	"sipsum/internal/solution"
)

// noteIce says of a drink that is served colder than it freezes that part of it is ice: what is
// given of it as a liquid is of all of it, melted.
func (a *Assay) noteIce() {
	const dust = 0.05 // °C, half of the last digit that is printed
	if a.Drink.At == nil || liquid.TooDry(a.Serving) != "" {
		return
	}
	grams := map[constituent.ID]float64{}
	for _, leaf := range a.Serving.Columns.List {
		grams[leaf.ID] = a.Serving.Central(leaf.ID)
	}
	if ice, ok := solution.FreezesAt(grams); ok && a.Drink.At.Number < ice-dust {
		a.Notes = append(a.Notes, note.Note{Kind: "ice", Text: fmt.Sprintf(
			"it freezes from about %.1f °C on: at %g °C part of it is ice, and its volume, density, pH and acidity are of all of it, melted", ice, a.Drink.At.Number)})
	}
}
