package sheet

import (
	"cmp"
	"maps"
	"slices"
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
	Word string // as a bar calls it: "passion fruit juice"; of a substance that brings itself: "pure citric acid"
	Pure bool   // it is the constituent, poured as such
}

// pure is said of a substance that brings itself, and charge of a gas that does.
const (
	pure   = "pure "
	charge = "the charge"
)

// The is the word with its article: "the lemon juice", and "what a ferment made" as it stands.
func (i Ingredient) The() string {
	if strings.HasPrefix(i.Word, "what ") {
		return i.Word
	}
	return "the " + i.Word
}

// Ingredients tells which foods of a serving bring how much of a constituent, the most first.
func Ingredients(of *Sheet, c *constituent.Constituent) []Ingredient {
	return briefing{of}.ingredients(composition.SortOf(of.Assay.Serving, c), c)
}

// ingredients names the foods that bring a sort; c is nil where it is no constituent.
func (s briefing) ingredients(of composition.Sort, c *constituent.Constituent) []Ingredient {
	pot := s.Assay.Serving
	words := wordsOf(pot)
	var list []Ingredient
	for _, i := range (&composition.Meter{Brief: !s.Assay.Want.Intervals}).Ingredients(pot, of) {
		in := Ingredient{i, cmp.Or(i.Food.Name(), i.Food.ID.String()), words[i.Food.ID], false}
		if in.Pure = c != nil && i.Food.Chemical && strings.EqualFold(head(i.Food.Name()), WordsFor(c)); in.Pure {
			in.Word = pure + WordsFor(c)
			if c.ID == constituent.CarbonDioxide {
				in.Word = charge
			}
		}
		list = append(list, in)
	}
	return list
}

// wordsOf gives each food of a pot the shortest of its names that tells it from the others: what
// stands before the first comma, else that with what follows ("brown sugar"), else its whole name,
// else that with its code.
func wordsOf(pot *ledger.Pot) map[food.ID]string {
	words, foods := map[food.ID]string{}, map[food.ID]*food.Food{}
	for _, r := range pot.Rows {
		foods[r.Profile.Food.ID] = r.Profile.Food
	}
	forms := []func(*food.Food) string{
		func(f *food.Food) string { return head(f.Name()) }, turned, (*food.Food).Name,
		func(f *food.Food) string { return f.Name() + " (" + f.ID.String() + ")" },
	}
	for _, form := range forms {
		alike := map[string]int{}
		for _, f := range foods {
			alike[strings.ToLower(form(f))]++
		}
		for id, f := range foods {
			if name := form(f); words[id] == "" && (name != "" && alike[strings.ToLower(name)] == 1) {
				words[id] = barWord(clean.Name(name))
			}
		}
	}
	for id := range foods {
		words[id] = cmp.Or(words[id], clean.Name(id.String()))
	}
	return words
}

// inWords puts words in the place of the codes of a drink's foods.
func (s briefing) inWords(text string) string {
	words := wordsOf(s.Assay.Serving)
	ids := slices.Collect(maps.Keys(words))
	slices.SortFunc(ids, func(a, b food.ID) int { // milk-whole before milk
		return cmp.Or(cmp.Compare(len(b.String()), len(a.String())), cmp.Compare(a.String(), b.String()))
	})
	for _, id := range ids {
		text = strings.ReplaceAll(text, id.String(), words[id])
	}
	return text
}

// turned is what a table says first of a food before its name: "Sugar, brown" is brown sugar.
func turned(f *food.Food) string {
	words := strings.Split(f.Name(), ", ")
	if len(words) < 2 || f.ID.Table == food.Own || strings.ContainsAny(words[1][:min(len(words[1]), 1)], "0123456789") {
		return f.Name()
	}
	return clean.LowerFirst(words[1]) + " " + clean.LowerFirst(words[0])
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
