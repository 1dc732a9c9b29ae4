package solution

import (
	"encoding/csv"
	"strconv"
	"sync"

	"sipsum/data"
)

var constants = sync.OnceValue(func() map[string]float64 {
	file, err := data.FS.Open("constants.csv")
	if err != nil {
		panic("solution: " + err.Error())
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic("solution: constants.csv: " + err.Error())
	}
	values := map[string]float64{}
	for _, row := range rows[1:] {
		if values[row[0]], err = strconv.ParseFloat(row[1], 64); err != nil {
			panic("solution: constants.csv: " + row[0] + ": not a number")
		}
	}
	return values
})

// ABV gives the alcoholic strength by volume in per cent: the volume that the
// ethanol alone would take up at 20 °C, as a share of the liquid's volume. A
// volume of zero or less gives 0.
func ABV(ethanolGrams, volumeMl float64) float64 {
	if volumeMl <= 0 {
		return 0
	}
	const percent = 100
	return percent * ethanolGrams / constants()["ethanol density"] / volumeMl
}
