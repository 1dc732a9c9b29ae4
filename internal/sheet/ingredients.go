package sheet

import (
	"cmp"
	"strings"
	"unicode"

	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// Ingredient is what one food brings of a constituent, through every pot, under the name by
// which a line tells it from the others.
type Ingredient struct {
	composition.Ingredient
	Name string // as its table or its owner has it
	Word string // as a bar calls it: "passion fruit juice"; of a substance that brings itself: "added as such"
}

// asSuch is a substance that brings itself: no food brings it.
const asSuch = "added as such"

// Itself reports whether the ingredient is the constituent, poured as such.
func (i Ingredient) Itself() bool { return i.Word == asSuch }

// Ingredients tells which foods of a serving bring how much of a constituent, the most first.
func (s *Sheet) Ingredients(c *constituent.Constituent) []Ingredient {
	return s.ingredients(composition.SortOf(s.Assay.Serving, c), c)
}

// ingredients names the foods that bring a sort; c is nil where it is no constituent.
func (s *Sheet) ingredients(of composition.Sort, c *constituent.Constituent) []Ingredient {
	pot := s.Assay.Serving
	words := wordsOf(pot)
	var list []Ingredient
	for _, i := range (&composition.Meter{Brief: !s.Assay.Want.Intervals}).Ingredients(pot, of) {
		in := Ingredient{i, cmp.Or(i.Food.Name(), i.Food.ID.String()), words[i.Food.ID]}
		if c != nil && i.Food.Chemical && strings.EqualFold(head(i.Food.Name()), WordsFor(c)) {
			in.Word = asSuch
		}
		list = append(list, in)
	}
	return list
}

// wordsOf gives each food of a pot the shortest of its names that tells it from the others: what
// stands before the first comma, else its whole name, else that with its code.
func wordsOf(pot *ledger.Pot) map[food.ID]string {
	names := map[food.ID]string{}
	for _, r := range pot.Rows {
		names[r.Profile.Food.ID] = cmp.Or(r.Profile.Food.Name(), r.Profile.Food.ID.String())
	}
	words := map[food.ID]string{}
	for id, name := range names {
		words[id] = barWord(head(name))
		for other, as := range names {
			if other == id || !strings.EqualFold(head(as), head(name)) {
				continue
			}
			words[id] = barWord(clean.Name(name))
			if strings.EqualFold(as, name) {
				words[id] += " (" + clean.Name(id.String()) + ")"
				break
			}
		}
	}
	return words
}

// head is a name without what a table says of it: "Milk, whole" is milk.
func head(name string) string {
	name = clean.Name(name)
	for _, sign := range []string{", ", " (", " – "} {
		if before, _, found := strings.Cut(name, sign); found && before != "" {
			name = before
		}
	}
	return name
}

// barWord writes a name as it stands in a line, unless it holds a name of its own.
func barWord(name string) string {
	_, rest, _ := strings.Cut(name, " ")
	first, _, _ := strings.Cut(name, " ")
	inner := strings.TrimLeft(first, strings.ToUpper(first[:min(len(first), 1)]))
	if strings.IndexFunc(rest, unicode.IsUpper) >= 0 || strings.IndexFunc(inner, unicode.IsUpper) >= 0 {
		return name
	}
	return clean.LowerFirst(name)
}
