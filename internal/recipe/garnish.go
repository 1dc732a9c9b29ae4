package recipe

import (
	"strconv"

	"sipsum/internal/drink"
)

// Garnish is one line of the garnish, for all servings together. What is not eaten counts
// for the allergens and for nothing else.
type Garnish struct {
	PartID
	Name   string
	Amount string // as the file has it
	Eaten  bool
}

// Garnish lists the garnish in the order of the file.
func (r *Recipe) Garnish() []Garnish {
	var list []Garnish
	for _, line := range r.Drink.Garnish {
		g := Garnish{Amount: line.Amount.String(), Eaten: line.Eaten}
		if line.Portion != "" {
			g.Amount = strconv.FormatFloat(line.Count, 'g', -1, 64) + " × " + line.Portion
		}
		g.PartID = r.PartOf(line)
		g.Name = r.Called[g.PartID]
		list = append(list, g)
	}
	return list
}

// PartOf gives what a line pours.
func (r *Recipe) PartOf(line drink.Line) PartID {
	in := r.Lines[line.Path]
	if in.Component != nil {
		return PartID{Component: in.Component.Name}
	}
	return PartID{Food: in.Profile.Food.ID}
}
