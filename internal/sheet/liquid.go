package sheet

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/acidity"
	"sipsum/internal/chemistry"
	"sipsum/internal/composition"
)

// Form says how a figure of a liquid is meant to be written.
type Form int

const (
	Estimated   Form = iota // an estimate; the name says per what
	Metered                 // in its unit
	Densely                 // what matters is how far it is from water
	HardlyThere             // less than a burette reads
)

// LiquidRow is a figure of a liquid.
type LiquidRow struct {
	Name       string
	Form       Form
	Result     composition.Result
	FromMemory bool // what acts on it does so by a strength entered from memory: said once, of the pH that a meter reads
}

// Withheld is a figure that is not printed: what, why, what bounds it all the same, and the
// reading that would tell, by which instrument; no reading where none is a help.
type Withheld struct {
	What, Why, Bounds string
	Reading, Who      string
}

// Liquid is a liquid as a solution: figures, what is withheld, and further figures.
type Liquid struct {
	Rows     []LiquidRow
	Withheld []Withheld
	More     []LiquidRow
}

// titratable is what one thing is called everywhere: the end point, and as what it is counted,
// is said once (AcidityMeans).
const titratable = "titratable acidity"

// hiddenBrix is what acid hides from a refractometer before it is worth a line, °Bx: our own
// bound, the last digit that a pocket refractometer shows is a tenth.
const hiddenBrix = 0.05

// LiquidOf lists a liquid; whole adds its own temperature, the other end points of titration,
// and what only a page about the chemistry tells.
func LiquidOf(c *chemistry.Chemistry, whole bool) Liquid {
	var l Liquid
	memory, meter := len(c.Unseen) > 0, fmt.Sprintf("pH at %g °C", acidity.MeterCelsius)
	estimate := func(list *[]LiquidRow, name string, e chemistry.Estimate) {
		if e.Why == "" {
			*list = append(*list, LiquidRow{name, Estimated, e.Result, memory && name == meter})
		}
	}
	metered := func(name string, r composition.Result) { l.Rows = append(l.Rows, LiquidRow{name, Metered, r, false}) }
	if whole && c.Celsius != acidity.MeterCelsius {
		estimate(&l.Rows, fmt.Sprintf("pH at %g °C", c.Celsius), c.PH)
	}
	estimate(&l.Rows, meter, c.PHMeter)
	if c.Degassed.Unit != "" {
		estimate(&l.Rows, fmt.Sprintf("pH at %g °C, gas gone", acidity.MeterCelsius), c.Degassed)
	}
	for i, t := range c.Acidity {
		name := titratable
		if i > 0 {
			name = fmt.Sprintf("  to pH %.1f", t.EndPoint)
		}
		switch {
		case i > 0 && !whole:
		case t.Per100g.Why == "" && t.Per100g.High < chemistry.HardlySour:
			l.Rows = append(l.Rows, LiquidRow{name, HardlyThere, t.Per100g.Result, false})
		default:
			estimate(&l.Rows, name, t.Per100g)
		}
	}
	if c.TooDry == "" {
		metered("refractometer", c.Brix)
	}
	if whole && c.BrixCorrected.Mean-c.Brix.Mean >= hiddenBrix {
		estimate(&l.Rows, "with its acid, °Bx", c.BrixCorrected)
	}
	if c.Density.Mean > 0 {
		l.Rows = append(l.Rows, LiquidRow{"density at 20 °C", Densely, c.Density, false})
	}
	estimate(&l.Rows, "°Brix ÷ titratable acidity", c.BrixAcid)
	switch {
	case c.CO2.Mean > 0 && c.Water != nil: // most of it is bicarbonate
		metered("carbon dioxide, bound too", c.CO2)
	case c.CO2.Mean > 0:
		metered("carbon dioxide", c.CO2)
	}
	if w := c.Water; w != nil {
		metered("hardness, as CaCO₃", w.Hardness)
		metered("alkalinity, as CaCO₃", w.Alkalinity)
	}
	if whole && c.Capacity.Why == "" {
		estimate(&l.More, "buffer, a litre by one pH", c.Capacity)
		estimate(&l.More, "acid that minerals hold, /l", c.StrongIons)
	}
	l.Withheld = withheld(c)
	return l
}

// noBrix is what is withheld of what is no liquid.
const (
	noBrix      = "no °Brix and no density"
	noBrixAlone = "no °Brix" // its foods state their density
)

// withheld lists what is not printed of a liquid. An acidity that is withheld for the same
// reason as the pH is said once.
func withheld(c *chemistry.Chemistry) []Withheld {
	var list []Withheld
	if c.TooDry != "" {
		what := noBrix
		if c.Density.Mean > 0 {
			what = noBrixAlone
		}
		list = append(list, Withheld{What: what, Why: c.TooDry})
	}
	if e := c.PHMeter; e.Why != "" {
		list = append(list, readable(Withheld{"no pH", e.Why, boundsOf(e), "ph", "A meter tells"}))
	}
	if len(c.Acidity) > 0 {
		if first := c.Acidity[0]; first.Per100g.Why != "" && first.Per100g.Why != c.PHMeter.Why {
			list = append(list, readable(Withheld{"no " + titratable, first.Per100g.Why, "", "ta", "A burette tells"}))
		}
	}
	return list
}

// readable takes the reading away where none is a help: of what has been titrated the
// titration tells, and of what is dry nothing.
func readable(w Withheld) Withheld {
	if strings.Contains(w.Why, "was titrated") || strings.Contains(w.Why, "no water") {
		w.Reading, w.Who = "", ""
	}
	return w
}

// boundsOf says what bounds a pH that is withheld.
func boundsOf(e chemistry.Estimate) string {
	switch {
	case !math.IsNaN(e.Low) && !math.IsNaN(e.High):
		return fmt.Sprintf("; it is between %.1f and %.1f by what they say", e.Low, e.High)
	case !math.IsNaN(e.High):
		return fmt.Sprintf("; it is below %.2f", e.High)
	case !math.IsNaN(e.Low):
		return fmt.Sprintf("; it is above %.2f", e.Low)
	}
	return ""
}
