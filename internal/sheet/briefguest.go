package sheet

import (
	"cmp"
	"slices"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/caution"
	"sipsum/internal/clean"
	"sipsum/internal/recipe"
)

// BriefGuest is what a guest must know, under all of the drink's rules together.
type BriefGuest struct {
	Rules      []string
	Contains   []string
	MayContain []string
	Check      []string // what somebody has to look at first
	OnTop      []Topping
	Cautions   []BriefCaution // the worst first
}

// Topping is a line of the garnish with its allergens.
type Topping struct {
	recipe.Garnish
	Allergens []string
}

// BriefCaution is a caution in a few words: a guest's, or for the kitchen where a guest has
// nothing to do with it.
type BriefCaution struct {
	caution.Caution
	Words   string // in a sentence; empty: for the kitchen, and nobody may die of it
	Short   string // in the fewest words
	Kitchen string // what the kitchen is told, in a sentence; empty: a guest is
}

// deadly is the rank of a caution that stands on every page, if only with its first sentence.
const deadly = 1

// inShort puts a caution into a few words. One that has none for a guest yet is told by its first
// sentence.
func inShort(c caution.Caution) BriefCaution {
	words, written := cardWords()["advice."+c.Code]
	first, _, _ := strings.Cut(c.Text, ". ")
	first = strings.TrimSuffix(first, ".") + "."
	b := BriefCaution{Caution: c, Words: words}
	switch {
	case c.TooMuch != "" && c.Rank != deadly: // of what may kill the whole sentence stands there
		b.Words = strings.TrimSpace(say("too much", clean.Name(c.TooMuch)) + " " + words)
	case words == "" && (!written || c.Rank == deadly):
		b.Words = first
	case words == "":
		b.Kitchen = first
		return b
	}
	if b.Short = cardWords()["brief."+c.Code]; b.Short == "" { // what stands before its reasons
		b.Short, _, _ = strings.Cut(b.Words, ": ")
		b.Short = clean.LowerFirst(strings.TrimSuffix(b.Short, "."))
	}
	return b
}

func (s briefing) guest() BriefGuest {
	if len(s.Allergens()) == 0 { // under no rules at all
		return BriefGuest{OnTop: Toppings(s.Sheet)}
	}
	all := s.Allergens()
	g := BriefGuest{
		Contains:   entryNames(all, func(d *Declaration) []allergen.Entry { return d.Contains }),
		MayContain: entryNames(all, func(d *Declaration) []allergen.Entry { return d.MayContain }),
		Check:      s.checks(all),
		OnTop:      Toppings(s.Sheet),
	}
	for _, d := range all {
		g.Rules = append(g.Rules, d.Rules)
	}
	for _, c := range s.Cautions() {
		g.Cautions = append(g.Cautions, inShort(c.Caution))
	}
	return g
}

// Toppings gives the garnish with the allergens that each line of it brings under any of the rules.
func Toppings(of *Sheet) []Topping {
	s := briefing{of}
	var list []Topping
	for _, on := range s.Assay.Garnish {
		top := Topping{Garnish: on}
		foods := s.foodsOf(on)
		top.Allergens = entryNames(s.Allergens(), func(d *Declaration) []allergen.Entry {
			return slices.DeleteFunc(slices.Clone(d.Contains), func(e allergen.Entry) bool {
				return !slices.ContainsFunc(e.From, func(f string) bool { return slices.Contains(foods, f) })
			})
		})
		list = append(list, top)
	}
	return list
}

// foodsOf gives the codes of the foods that a line of the garnish puts on top.
func (s briefing) foodsOf(g recipe.Garnish) []string {
	var ids []string
	for _, it := range s.Assay.Items {
		if within := g.Component != "" && slices.Contains(it.Path, g.Component); within || g.Component == "" && it.Food.ID == g.Food {
			ids = append(ids, it.Food.ID.String())
		}
	}
	return ids
}

// checks says what somebody has to look at first: foods that nobody has assessed together, and
// what a name leaves open one by one, by the word of the first rules that ask.
func (s briefing) checks(all []Declaration) []string {
	var list, open, asked []string
	for _, d := range all {
		for _, c := range d.Check {
			foods := s.foodNames(c.Foods)
			if c.Leaf == "" {
				for _, f := range foods {
					if !slices.Contains(open, f) {
						open = append(open, f)
					}
				}
				continue
			}
			if key := c.Leaf + " " + strings.Join(foods, " "); !slices.Contains(asked, key) {
				asked = append(asked, key)
				list = append(list, "To check: "+clean.Name(cmp.Or(c.Name, c.Leaf))+" in "+clean.Listed(foods))
			}
		}
	}
	if len(open) > 0 {
		list = append([]string{"Not assessed: " + clean.Listed(open)}, list...)
	}
	return list
}
