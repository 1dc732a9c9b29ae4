package jsonreport

import (
	"strings"

	"sipsum/internal/food"
	"sipsum/internal/ingredientlist"
)

// ingredients is the list of ingredients under one set of rules, the most first.
type ingredients struct {
	Heading  string       `json:"heading"`
	List     []ingredient `json:"list"`
	NotEaten []ingredient `json:"not_eaten"`
	Note     string       `json:"note,omitempty"`
	Source   string       `json:"source"`
	Status   string       `json:"status"`
}

// ingredient is a food, or a component with what it is made of. What of its name is to be
// emphasised stands in allergens.
type ingredient struct {
	Name      string       `json:"name"`
	Food      string       `json:"food,omitempty"`
	Grams     number       `json:"grams"`
	Allergens []string     `json:"allergens"`
	Of        []ingredient `json:"of,omitempty"`
}

func ingredientsOf(l ingredientlist.List) ingredients {
	return ingredients{l.Heading, each(l.Ingredients, ingredientOf), each(l.NotEaten, ingredientOf), l.Note, l.Source, l.Status}
}

func ingredientOf(x ingredientlist.Ingredient) ingredient {
	in := ingredient{Grams: number(x.Grams), Allergens: []string{}}
	if x.Food != (food.ID{}) {
		in.Food = x.Food.String()
	}
	var name strings.Builder
	for _, part := range x.Name {
		name.WriteString(part.Text)
		if part.Strong {
			in.Allergens = append(in.Allergens, part.Text)
		}
	}
	in.Name = name.String()
	if len(x.Of) > 0 {
		in.Of = each(x.Of, ingredientOf)
	}
	return in
}
