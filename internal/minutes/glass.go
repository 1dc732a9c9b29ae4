package minutes

import (
	"sipsum/internal/acidity"
	"sipsum/internal/chemistry"
	"sipsum/internal/drink"
	"sipsum/internal/ledger"
)

// Glass is a glass as it is poured.
type Glass struct {
	Drink     *drink.Drink
	Pot       *ledger.Pot // what is liquid of a serving
	Lab       *acidity.Laboratory
	Chemistry *chemistry.Chemistry // of the pot
	Bottled   func(row int) bool   // the gas of a row comes out of a bottle that somebody else has filled

	// Water pours melted ice into a pot, in grams.
	Water func(pot *ledger.Pot, grams []float64)
}

// Course is how a glass goes.
type Course struct {
	Times []float64 // min after the pour, ascending; the first is 0
	Axes  []Axis    // what there is to tell, in the order of the page
	Clock *Clock    // nil: no step says how long it takes
	Rates []Rate    // by which it was calculated
	// Unpaid: more ice is stated to melt than the heat of drink and room can melt; it is the heat that counts.
	Unpaid bool
	Why    string // there is nothing to tell: it is no liquid
}

// The axes by their keys in documents.
const (
	Temperature = "temperature"
	Gas         = "co2"
	Brix        = "brix"
	Acidity     = "titratable_acidity"
	PH          = "ph"
	Melted      = "melted"
)

// Units are those of the axes.
var Units = map[string]string{Temperature: "°C", Gas: "g/l", Brix: "°Bx", Acidity: "g/100 g", PH: "pH", Melted: "g"}

// Axis is a figure over time.
type Axis struct {
	Key    string
	Points []chemistry.Estimate // by time
	Moves  bool                 // a point is not as at the pour
	Write  string               // what to write in the drink file, where a point is withheld for want of it; empty: nothing
}

// Axis gives one by its key; nil if the drink has none.
func (c *Course) Axis(key string) *Axis {
	for i := range c.Axes {
		if c.Axes[i].Key == key {
			return &c.Axes[i]
		}
	}
	return nil
}

// Known reports whether all of an axis is told.
func (a *Axis) Known() bool {
	for _, p := range a.Points {
		if p.Why != "" {
			return false
		}
	}
	return true
}

// Last gives the last point.
func (a *Axis) Last() chemistry.Estimate { return a.Points[len(a.Points)-1] }
