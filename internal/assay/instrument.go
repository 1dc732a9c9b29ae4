package assay

import (
	"sync"

	"sipsum/internal/embedded"
)

// instrument is how far a reading of one kind may be off: half of the range in
// the reading's unit, and half of the range as a share of the reading.
type instrument struct {
	half, relative float64
	usual          float64 // what is taken for the reading where there is none; 0: nothing is
	unit           string
}

// halfAt is half of the range of a reading z.
func (i instrument) halfAt(z float64) float64 { return i.half + i.relative*z }

var instruments = sync.OnceValue(func() map[string]instrument {
	all := map[string]instrument{}
	for _, row := range embedded.Rows("instruments.csv") {
		usual, _ := row.Optional("usual")
		all[row.Text("reading")] = instrument{half: row.Number("half"), relative: row.Number("relative"), usual: usual, unit: row.Text("unit")}
	}
	return all
})

func mustInstrument(kind string) instrument {
	i, ok := instruments()[kind]
	if !ok {
		panic("assay: instruments.csv has no row " + kind)
	}
	return i
}

// The kinds of reading that condition a pot, and the instruments of a titration.
const (
	readMass     = "mass"
	readBrix     = "brix"
	readTDS      = "tds"
	readDensity  = "density"
	readABV      = "abv"
	readPH       = "ph"
	readTA       = "ta"
	readStrength = "strength"
	readSample   = "sample"
)
