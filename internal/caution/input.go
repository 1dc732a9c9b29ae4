package caution

import (
	"math"

	"sipsum/internal/allergen"
	"sipsum/internal/constituent"
	"sipsum/internal/unit"
)

// Amount is how much of a constituent is in one serving, in the unit of the
// vocabulary.
type Amount struct {
	Mean       float64 // of the known part
	WithBounds float64 // with the most that the unknown parts could be; NaN if one has no bound
	High       float64 // the upper end of the interval of the known part; 0 if nobody says
	UpTo       float64 // the upper end of the interval with them; NaN if one has no bound, 0 if nobody says
	Known      bool    // false: nothing is known of it
}

// Input is what cautions are worked out from.
type Input struct {
	Rules     string // "eu", "us": cautions of other rules are left out
	Name      string // of the drink
	Items     []allergen.Item
	Steps     []string // keywords of the steps of all components and of the finish
	ServingG  float64
	ServingMl float64 // 0 if the density is not known
	Amounts   map[constituent.ID]Amount
	ABV       float64 // % by volume; NaN if not known
	ABVMost   float64 // the most that it can be; 0 if nobody says
}

// Caution is one thing that may hurt somebody. Its form in JSON is that of
// sipsum.allergens/1.
type Caution struct {
	Code    string `json:"code"`
	Text    string `json:"text"`
	Source  string `json:"source"`
	Because string `json:"because"`
}

// per gives the amount on a basis: "serving", "100 ml" or "100 g". Without a
// volume there is no amount per 100 ml.
func (in Input) per(id constituent.ID, basis string) (Amount, bool) {
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
		return Amount{}, false
	}
	a.Mean *= unit.Hundred / size
	a.WithBounds *= unit.Hundred / size
	a.High *= unit.Hundred / size
	a.UpTo *= unit.Hundred / size
	return a, ok
}

// complete reports whether nothing of the amount is unknown.
func (a Amount) complete() bool { return a.Known && a.WithBounds <= a.Mean }

// most is the most that there can be; NaN if nothing bounds it.
func (a Amount) most() float64 { return max(a.WithBounds, a.UpTo, a.knownMost()) }

// knownMost is the most that the known part can be.
func (a Amount) knownMost() float64 {
	if !a.Known {
		return 0
	}
	return max(a.Mean, a.High)
}

// bounded reports whether it is known how much it can be at most.
func (a Amount) bounded() bool { return !math.IsNaN(a.WithBounds) }
