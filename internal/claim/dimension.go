package claim

import (
	"strings"

	"sipsum/internal/solution"
	"sipsum/internal/unit"
)

// dimension is what a figure is of: powers of grams, millilitres and kilojoules, of a degree
// Brix, of a pH, of a sweetness and of a place among foods.
type dimension struct{ gram, ml, kJ, brix, pH, sweet, place int }

// The dimensions of figures.
var (
	plain         = dimension{}
	ofMass        = dimension{gram: 1}
	ofVolume      = dimension{ml: 1}
	ofEnergy      = dimension{kJ: 1}
	ofBrix        = dimension{brix: 1}
	ofPH          = dimension{pH: 1}
	ofSweetness   = dimension{sweet: 1}
	ofPlace       = dimension{place: 1}
	concentration = dimension{gram: 1, ml: -1}
)

func (d dimension) times(e dimension, sign int) dimension {
	return dimension{
		d.gram + sign*e.gram, d.ml + sign*e.ml, d.kJ + sign*e.kJ, d.brix + sign*e.brix, d.pH + sign*e.pH, d.sweet + sign*e.sweet, d.place + sign*e.place,
	}
}

// said names a dimension, with an example of a figure in it.
func (d dimension) said() string {
	switch d {
	case plain:
		return "a number without a unit"
	case ofMass:
		return "a mass (12 g)"
	case ofVolume:
		return "a volume (60 ml)"
	case ofEnergy:
		return "an energy (90 kJ)"
	case ofBrix:
		return "degrees Brix (14)"
	case ofPH:
		return "a pH (3.8)"
	case ofSweetness:
		return "a sweetness, as sucrose (9 %, or 9 g/100 ml)"
	case ofPlace:
		return "a place among foods (10)"
	case concentration:
		return "a mass in a volume (6 g/l)"
	}
	return "a product of several measures"
}

// takes tells whether a number that is written may be such a figure: a pH, degrees Brix and a place
// have no unit; of sucrose as sweet as a drink there are so many per cent, or grams in a volume.
func (d dimension) takes(l literal) bool {
	if l.bare {
		return d == ofBrix || d == ofPH || d == ofPlace
	}
	return d == ofSweetness && (l.is == plain || l.is == concentration)
}

// measure reads a unit: what it is of, and how many grams, millilitres or kilojoules it is.
func measure(word string) (dimension, float64, bool) {
	switch squeezed := strings.ReplaceAll(strings.ToLower(word), " ", ""); squeezed {
	case "":
		return plain, 1, true
	case "%", "%vol":
		m, _ := unit.FindMeasure("%")
		return plain, m.Factor, true
	case "kj":
		return ofEnergy, 1, true
	case "kcal":
		return ofEnergy, solution.KilojoulesOfAKilocalorie(), true
	case "°bx", "°brix", "ºbx", "ºbrix", "brix":
		return ofBrix, 1, true
	case "µg", "μg", "ug", "mcg":
		perGram, _ := unit.PerGram("µg")
		return ofMass, 1 / perGram, true
	}
	if over, under, divided := strings.Cut(word, "/"); divided {
		hundred := 1.0
		if rest, ok := strings.CutPrefix(under, "100"); ok {
			hundred, under = unit.Hundred, strings.TrimSpace(rest)
		}
		a, x, okA := measure(over)
		b, y, okB := measure(under)
		return concentration, x / (hundred * y), okA && okB && a == ofMass && b == ofVolume
	}
	m, ok := unit.FindMeasure(word)
	switch {
	case ok && m.Kind == unit.Mass:
		return ofMass, m.Factor, true
	case ok && m.Kind == unit.Volume && m.Spread == 0:
		return ofVolume, m.Factor, true
	}
	return plain, 0, false
}
