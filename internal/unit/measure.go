package unit

import (
	"sync"

	"sipsum/internal/embedded"
)

// Kind tells what a measure measures.
type Kind string

// The kinds of measure that a recipe may use.
const (
	Mass   Kind = "mass"   // base unit g
	Volume Kind = "volume" // base unit ml
	Share  Kind = "share"  // base unit 1; of the mass of the same list
)

// Measure is one row of data/units.csv.
type Measure struct {
	Name   string
	Kind   Kind
	Factor float64 // base units (g, ml, 1) in one measure
	Spread float64 // relative half-width of its filling, 0 if it is an instrument
	Source string
}

// Measures gives the closed list of measures in the order of the file.
var Measures = sync.OnceValue(readMeasures)

var measureNames = sync.OnceValue(func() []string {
	var names []string
	for _, m := range Measures() {
		names = append(names, m.Name)
	}
	return names
})

// FindMeasure gives a measure by its name, in any usual case and form: mL, grams, dashes.
func FindMeasure(word string) (Measure, bool) {
	found, ok := find(word, measureNames())
	if !ok {
		return Measure{}, false
	}
	for _, m := range Measures() {
		if m.Name == found.unit {
			return m, true
		}
	}
	return Measure{}, false
}

func readMeasures() []Measure {
	var measures []Measure
	for _, row := range embedded.Rows("units.csv") {
		m := Measure{Name: row.Text("unit"), Kind: Kind(row.Text("kind")), Factor: row.Number("factor"), Source: row.Text("source")}
		m.Spread, _ = row.Optional("spread")
		measures = append(measures, m)
	}
	return measures
}
