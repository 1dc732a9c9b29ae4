package prep

import (
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/unit"
)

// ferment reads what 100 g of the pot hold afterwards.
func (a at) ferment(s *drink.Ferment) (Outcome, error) {
	var after []Afterwards
	for _, figure := range s.Figures {
		id := constituent.ID(figure.Tag)
		if err := canStay(figure); err != nil {
			return Outcome{}, err
		}
		factor, _ := unit.Convert(figure.Unit, "g")
		q := figure.Quantity
		if figure.State == drink.Below { // anything up to the limit
			q.Number, q.Half = figure.Limit/2, figure.Limit/2
		}
		after = append(after, Afterwards{ID: id})
		if figure.State == "" || figure.State == drink.Below {
			after[len(after)-1].Per100g = a.figure(&q, factor, figure.Tag)
		}
	}
	if err := a.Hold(s.Figures); err != nil {
		return Outcome{}, err
	}
	products, perGram := a.Drawn(FermentProducts())
	unnamed := Unnamed{Products: products, PerGram: perGram, Path: a.Path}
	if s.Brix == nil && s.ABV == nil {
		return Ferment(a.pot, after, unnamed)
	}
	return a.fermentRead(s, after, unnamed)
}

// fermented lists what the figures of a ferment name, and what is not named.
func fermented(s *drink.Ferment) []constituent.ID {
	made := []constituent.ID{constituent.MassOther}
	if s.Brix != nil || s.ABV != nil {
		made = append(made, constituent.Alcohol)
	}
	for _, figure := range s.Figures {
		if id := constituent.ID(figure.Tag); fermentable(id) {
			made = append(made, id)
		}
	}
	return made
}

// fermentable reports whether ferment can state a constituent: alcohol, a sugar
// or the sugars, an acid, glycerol.
func fermentable(id constituent.ID) bool {
	c, ok := constituent.Find(string(id))
	if !ok || c.ID != id {
		return false
	}
	if c.Kind != constituent.Leaf {
		return id == constituent.Sugar
	}
	return id == constituent.Alcohol || id == "GLYRL" || c.Parent == constituent.OrganicAcids || c.Parent == constituent.Sugar
}
