package sheet

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ladder"
)

// Ingredient is what one food brings of a constituent, through every pot, under the name by
// which a line tells it from the others.
type Ingredient struct {
	composition.Ingredient
	Name string // as its table or its owner has it
	Word string // as a bar calls it: "passion fruit juice"; of a substance that brings itself: "pure citric acid"
	Pure bool   // it is the constituent, poured as such
}

// pure is said of a substance that brings itself, and charge of a gas that does.
const (
	pure   = "pure "
	charge = "the charge"
)

// The is the word with its article: "the lemon juice", and "what a ferment made" as it stands.
func (i Ingredient) The() string { return ladder.The(i.Word) }

// Ingredients tells which foods of a serving bring how much of a constituent, the most first.
func Ingredients(of *Sheet, c *constituent.Constituent) []Ingredient {
	return briefing{of}.ingredients(composition.SortOf(of.Assay.Serving, c), c)
}

// ingredients names the foods that bring a sort; c is nil where it is no constituent.
func (s briefing) ingredients(of composition.Sort, c *constituent.Constituent) []Ingredient {
	pot := s.Assay.Serving
	words := s.words()
	var list []Ingredient
	for _, i := range (&composition.Meter{Brief: !s.Assay.Want.Intervals}).Ingredients(pot, of) {
		in := Ingredient{i, cmp.Or(i.Food.Name(), i.Food.ID.String()), words[i.Food.ID], false}
		if in.Pure = c != nil && i.Food.Chemical && strings.EqualFold(ladder.Head(i.Food.Name()), WordsFor(c)); in.Pure {
			in.Word = pure + WordsFor(c)
			if c.ID == constituent.CarbonDioxide {
				in.Word = charge
			}
		}
		list = append(list, in)
	}
	return list
}

// inWords puts words in the place of the codes of a drink's foods.
func (s briefing) inWords(text string) string {
	words := s.words()
	ids := slices.Collect(maps.Keys(words))
	slices.SortFunc(ids, func(a, b food.ID) int { // milk-whole before milk
		return cmp.Or(cmp.Compare(len(b.String()), len(a.String())), cmp.Compare(a.String(), b.String()))
	})
	for _, id := range ids {
		text = strings.ReplaceAll(text, id.String(), words[id])
	}
	return text
}
