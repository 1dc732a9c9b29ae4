package caution

import (
	"sipsum/internal/allergen"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// Input is what cautions are worked out from.
type Input struct {
	Rules     string // cautions of other rules are left out
	Name      string // of the drink
	Items     []allergen.Item
	Parts     []Part // house-made components; that without a name is the drink
	ServingG  float64
	ServingMl float64                            // 0 if the density is not known
	ServedAt  float64                            // °C; 0 if not stated
	Amounts   map[constituent.ID]estimate.Amount // of a serving, in the unit of the vocabulary
	ABV       float64                            // % by volume; NaN if not known
	ABVMost   float64                            // the most that it can be; 0 if nobody says

	Brought  map[constituent.ID][]food.ID // the foods that are known to bring some
	Unstated map[constituent.ID][]food.ID // those of which nobody says how much they hold
	Poured   map[food.ID]Mass
}

// Part is what is made by itself: a component, or the drink.
type Part struct {
	Name          string // empty: the drink
	Steps         []string
	Techniques    []string // in the words of the drink file
	Vessel        string
	PHLow, PHHigh float64 // NaN: nobody knows
	PHRead        bool    // by a meter, not from the composition
}

// Mass is how much of a food the lines of a file pour, in g.
type Mass struct{ Serving, Batch float64 }

// Caution is one thing that may hurt somebody.
type Caution struct {
	Code    string
	Text    string
	Source  string
	Because string
	Who     string // whom it concerns; empty: nobody in particular
	Rank    int    // 1 may kill, 5 is of law and label
	TooMuch string // of what surely more is in it than may be; empty: of nothing
}

// bases are what an amount may be per, beside a serving: so many ml, or so many g.
var bases = map[string]struct{ ml, g float64 }{
	"100 ml": {ml: unit.Hundred}, "100 g": {g: unit.Hundred}, "litre": {ml: perThousand}, "kg": {g: perThousand},
}

// per gives the amount on a basis. Without a volume there is no amount per litre.
func (in Input) per(id constituent.ID, basis string) (estimate.Amount, bool) {
	a, ok := in.Amounts[id]
	if basis == "serving" {
		return a, ok
	}
	of, size := bases[basis], in.ServingMl
	if of.g > 0 {
		size = in.ServingG
	}
	if size <= 0 {
		return estimate.Amount{}, false
	}
	return a.Times((of.ml + of.g) / size), ok
}
