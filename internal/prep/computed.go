package prep

import (
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
)

// Computed reports whether this version calculates a step. A step that the
// grammar gains is refused until it stands here.
func Computed(step drink.Step) bool {
	switch step.(type) {
	case *drink.Reduce, *drink.Strain, *drink.Curdle, *drink.Brew, *drink.Steep, *drink.Add, *drink.Chill, *drink.Dilute,
		*drink.Invert, *drink.Hydrolyse, *drink.Ferment, *drink.Caramelise, *drink.Concentrate, *drink.Wash, *drink.Heat,
		*drink.Split, *drink.Carbonate, *drink.Measured:
		return true
	}
	return false
}

// Makes lists the constituents that a step may make where no food of the drink
// has them: the ledger needs a column for each.
func Makes(step drink.Step) []constituent.ID {
	switch s := step.(type) {
	case *drink.Invert:
		return []constituent.ID{constituent.Glucose, constituent.Fructose}
	case *drink.Hydrolyse:
		return []constituent.ID{constituent.Glucose, constituent.Galactose}
	case *drink.Brew, *drink.Steep, *drink.Strain, *drink.Curdle:
		return []constituent.ID{burnt}
	case *drink.Caramelise:
		return []constituent.ID{burnt, constituent.RestOf(constituent.OrganicAcids)}
	case *drink.Carbonate:
		return []constituent.ID{constituent.CarbonDioxide}
	case *drink.Ferment:
		made := []constituent.ID{constituent.MassOther}
		for _, figure := range s.Figures {
			if id := constituent.ID(figure.Tag); Fermentable(id) {
				made = append(made, id)
			}
		}
		return made
	}
	return nil
}

// Fermentable reports whether ferment can state a constituent: alcohol, a sugar
// or the sugars, an acid, glycerol.
func Fermentable(id constituent.ID) bool {
	c, ok := constituent.Find(string(id))
	if !ok || c.ID != id {
		return false
	}
	if c.Kind != constituent.Leaf {
		return id == constituent.Sugar
	}
	return id == constituent.Alcohol || id == "GLYRL" || c.Parent == constituent.OrganicAcids || c.Parent == constituent.Sugar
}
