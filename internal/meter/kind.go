package meter

import (
	"sync"

	"sipsum/internal/embedded"
)

// kind is what is known of instruments of a kind: a row of data/meter_kinds.csv.
type kind struct {
	unit       string
	resolution float64 // of the display
	noise      float64 // standard deviation of one reading
	zero       float64 // half of the range of one that nobody is said to have checked
	slope      float64 // half of the range of what it shows too much, as a share
	due        int     // days until the next check
	class      string  // of OIML R 76, where none is stated
	source     string
}

var kinds = sync.OnceValue(func() map[string]kind {
	all := map[string]kind{}
	for _, row := range embedded.Rows("meter_kinds.csv") {
		all[row.Text("kind")] = kind{
			unit: row.Text("unit"), resolution: row.Number("resolution"), noise: row.Number("noise"), zero: row.Number("zero"), slope: row.Number("slope"),
			due: row.Whole("due"), class: row.Text("class"), source: row.Text("source"),
		}
	}
	return all
})

// Unit gives the unit in which instruments of a kind are read.
func Unit(of string) string { return kinds()[of].unit }

var rules = sync.OnceValue(func() map[string]float64 {
	all := map[string]float64{}
	for _, row := range embedded.Rows("meter_rules.csv") {
		all[row.Text("rule")] = row.Number("value")
	}
	return all
})

// rule gives a row of data/meter_rules.csv; it panics if there is none.
func rule(name string) float64 {
	x, ok := rules()[name]
	if !ok {
		panic("meter: meter_rules.csv has no row " + name)
	}
	return x
}

// unadjusted gives a row of data/burette.csv of a pH meter that nobody adjusted.
func unadjusted(what string) (value, sd float64) {
	for _, row := range embedded.Rows("burette.csv") {
		if row.Text("what") == what+" of a meter that nobody adjusted" {
			return row.Number("value"), row.Number("sd")
		}
	}
	panic("meter: burette.csv has no " + what + " of a meter that nobody adjusted")
}
