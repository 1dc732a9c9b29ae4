package recipe

import "strconv"

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
		in := r.Lines[line.Path]
		g := Garnish{Amount: line.Amount.String(), Eaten: line.Eaten}
		if line.Portion != "" {
			g.Amount = strconv.FormatFloat(line.Count, 'g', -1, 64) + " × " + line.Portion
		}
		if in.Component != nil {
			g.Component = in.Component.Name
		} else {
			g.Food = in.Profile.Food.ID
		}
		g.Name = r.Called[g.PartID]
		list = append(list, g)
	}
	return list
}
