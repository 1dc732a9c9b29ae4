package assay

import (
	"math"
	"slices"

	"sipsum/internal/composition"
	"sipsum/internal/note"
	"sipsum/internal/recipe"
)

// noteFoods tells how foods entered: borrowed, derived, out of balance.
func (a *Assay) noteFoods() {
	for _, p := range a.recipe.Profiles {
		if !slices.ContainsFunc(a.Items, func(it recipe.Item) bool { return it.Food.ID == p.Food.ID }) {
			continue // of a component that the drink does not use
		}
		for _, n := range p.Notes {
			a.Notes = append(a.Notes, note.Note{Kind: n.Kind, Constituent: n.Constituent, Foods: []string{p.Food.ID.String()}, Text: a.recipe.Called[recipe.PartID{Food: p.Food.ID}] + ": " + n.Text})
		}
	}
}

// noteUnknowns tells, for each constituent that the drink reports, which foods
// leave it unknown.
func (a *Assay) noteUnknowns() {
	foods := composition.FoodsOf(a.Serving)
	for _, f := range a.PerServing {
		if !f.Partial {
			continue
		}
		_, rows := a.Serving.Bound(f.Constituent.ID)
		n := note.Note{Kind: "unknown", Constituent: f.Constituent.ID}
		for _, row := range rows {
			if !slices.Contains(n.Foods, foods[row]) {
				n.Foods = append(n.Foods, foods[row])
			}
		}
		n.Text = f.Constituent.Name + " is not known in every food"
		if math.IsNaN(f.UpTo) {
			n.Text += "; nothing bounds it"
		} else {
			n.Text += ": up to " + note.Number(f.UpTo) + " " + f.Unit + " a serving"
		}
		a.Notes = append(a.Notes, n)
	}
}
