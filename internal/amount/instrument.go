package amount

import (
	"sync"

	"sipsum/internal/embedded"
)

// instrument is how far a reading of one kind may be off: half of the range in
// the reading's unit, and half of the range as a share of the reading.
type instrument struct {
	Half, relative float64
	Usual          float64 // what is taken for the reading where there is none; 0: nothing is
	Unit           string
}

// HalfAt is half of the range of a reading z.
func (i instrument) HalfAt(z float64) float64 { return i.Half + i.relative*z }

var instruments = sync.OnceValue(func() map[string]instrument {
	all := map[string]instrument{}
	for _, row := range embedded.Rows("instruments.csv") {
		usual, _ := row.Optional("usual")
		all[row.Text("reading")] = instrument{Half: row.Number("half"), relative: row.Number("relative"), Usual: usual, Unit: row.Text("unit")}
	}
	return all
})

// MustInstrument gives the instrument of a kind of reading.
func MustInstrument(kind string) instrument {
	i, ok := instruments()[kind]
	if !ok {
		panic("amount: instruments.csv has no row " + kind)
	}
	return i
}

// The kinds of reading that condition a pot, and the instruments of a titration.
const (
	ReadMass     = "mass"
	ReadBrix     = "brix"
	ReadTDS      = "tds"
	ReadDensity  = "density"
	ReadABV      = "abv"
	ReadPH       = "ph"
	ReadTA       = "ta"
	ReadStrength = "strength"
	ReadSample   = "sample"
	ReadOverrun  = "overrun"
	ReadBottle   = "bottle"
)
