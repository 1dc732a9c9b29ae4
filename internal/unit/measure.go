package unit

import (
	"encoding/csv"
	"fmt"
	"strconv"
	"sync"

	"sipsum/data"
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

// FindMeasure gives a measure by its exact name.
func FindMeasure(name string) (Measure, bool) {
	for _, m := range Measures() {
		if m.Name == name {
			return m, true
		}
	}
	return Measure{}, false
}

func readMeasures() []Measure {
	file, err := data.FS.Open("units.csv")
	if err != nil {
		panic("unit: " + err.Error())
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic("unit: units.csv: " + err.Error())
	}
	measures := make([]Measure, 0, len(rows)-1)
	for _, row := range rows[1:] {
		m := Measure{Name: row[0], Kind: Kind(row[1]), Factor: mustNumber(row[2]), Source: row[5]}
		if row[3] != "" {
			m.Spread = mustNumber(row[3])
		}
		measures = append(measures, m)
	}
	return measures
}

func mustNumber(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(fmt.Sprintf("unit: units.csv: %q is not a number", text))
	}
	return v
}
