package caution

import (
	"sipsum/internal/allergen"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/unit"
)

// Input is what cautions are worked out from.
type Input struct {
	Rules     string // cautions of other rules are left out
	Name      string // of the drink
	Items     []allergen.Item
	Steps     []string // keywords of the steps of all components and of the finish
	ServingG  float64
	ServingMl float64                            // 0 if the density is not known
	Amounts   map[constituent.ID]estimate.Amount // of a serving, in the unit of the vocabulary
	ABV       float64                            // % by volume; NaN if not known
	ABVMost   float64                            // the most that it can be; 0 if nobody says
}

// Caution is one thing that may hurt somebody.
type Caution struct {
	Code    string
	Text    string
	Source  string
	Because string
}

// per gives the amount on a basis: "serving", "100 ml" or "100 g". Without a
// volume there is no amount per 100 ml.
func (in Input) per(id constituent.ID, basis string) (estimate.Amount, bool) {
	a, ok := in.Amounts[id]
	size := 0.0
	switch basis {
	case "serving":
		return a, ok
	case "100 ml":
		size = in.ServingMl
	case "100 g":
		size = in.ServingG
	}
	if size <= 0 {
		return estimate.Amount{}, false
	}
	return a.Times(unit.Hundred / size), ok
}
