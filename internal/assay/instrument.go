package assay

import (
	"encoding/csv"
	"strconv"
	"sync"

	"sipsum/data"
)

// instrument is how far a reading of one kind may be off: half of the range in
// the reading's unit, and half of the range as a share of the reading.
type instrument struct {
	half, relative float64
	unit           string
}

// halfAt is half of the range of a reading z.
func (i instrument) halfAt(z float64) float64 { return i.half + i.relative*z }

var instruments = sync.OnceValue(func() map[string]instrument {
	file, err := data.FS.Open("instruments.csv")
	if err != nil {
		panic("assay: " + err.Error())
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic("assay: instruments.csv: " + err.Error())
	}
	all := map[string]instrument{}
	for _, row := range rows[1:] {
		half, errHalf := strconv.ParseFloat(row[1], 64)
		relative, errRelative := strconv.ParseFloat(row[3], 64)
		if errHalf != nil || errRelative != nil {
			panic("assay: instruments.csv: " + row[0] + ": not a number")
		}
		all[row[0]] = instrument{half, relative, row[2]}
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
