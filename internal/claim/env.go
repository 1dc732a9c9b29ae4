package claim

import "sipsum/internal/constituent"

// Env is a drink as far as claims ask of it.
type Env interface {
	// Amount is what a part of a serving holds of a constituent: grams, or kJ of energy. Its error
	// says which parts there are.
	Amount(c *constituent.Constituent, of Part) (Figure, error)

	// Property is what the drink is as a liquid.
	Property(p Property) (Figure, error)

	// Rank is at which place a food of a table stands among the foods of that table by what 100 g hold of
	// a constituent, the first with the most.
	Rank(c *constituent.Constituent, food string) (Figure, error)

	// Contains reports whether an allergen is declared; where it is not, why nobody can tell.
	Contains(allergen string) (declared bool, why Gap, err error)
}

// Figure is a figure of a drink in its draws, the central value first.
type Figure struct {
	Known []float64 // with what is unknown at its least
	Gaps  []Gap     // what is unknown, each once

	Unknown bool // nothing at all is known: Known is the least that it could be, and no figure
}

// Gap is something of a figure that nobody knows.
type Gap struct {
	Key    string    // tells it from all others of the drink
	Most   []float64 // what it adds at its most, by draw or one number for all; +Inf where nothing bounds it
	What   string    // in words: "malic acid of core:oat-drink"
	Loose  bool      // Most is what nature allows, far beyond what anybody would expect: it decides, and is no figure
	Settle string    // the line that would settle it
	Where  string    // where the line goes
}

// Property is a property of a liquid.
type Property string

// The properties.
const (
	Mass     Property = "mass"      // g of a serving
	Volume   Property = "volume"    // ml of a serving
	PH       Property = "ph"        // at serving temperature
	Acidity  Property = "ta"        // g/ml, as citric acid
	Brix     Property = "brix"      // °Bx
	BrixAcid Property = "brix_acid" // °Bx over g/100 g
	Strength Property = "abv"       // share by volume

	Sweetness Property = "sweetness" // g/ml of sucrose as sweet as it
)

// PartSort is what a part is named by.
type PartSort string

// The sorts of parts. Named is looked for among components, then ingredients, then kinds.
const (
	Whole        PartSort = ""
	Named        PartSort = "part"
	OfComponent  PartSort = "component"
	OfIngredient PartSort = "ingredient"
	OfKind       PartSort = "kind"
)

// Part is a part of a serving.
type Part struct {
	Sort PartSort
	Name string
	Rest bool // all but it
}
