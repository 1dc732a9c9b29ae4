package prep

import (
	"math"

	"sipsum/internal/curdling"
)

// Parting is what it tells of a pot that acid parted its milk: then its pH was at or below
// the one at which casein curdles at that temperature. It is an upper limit and no more:
// the acids of the pot say how far below.
type Parting struct {
	AtMost    []float64 // the pH, a column: anywhere from Low to High
	Low, High float64
	Source    string
}

// CurdlingPH bounds the pH at which the casein of milk curdles at a temperature in °C
// (data/curdling_proteins.csv); with NaN, at any temperature of that table.
func CurdlingPH(celsius float64) (low, high float64, source string) {
	casein, ok := curdling.Find("casein")
	if !ok {
		panic("prep: curdling_proteins.csv lacks casein")
	}
	if !math.IsNaN(celsius) {
		b := casein.At(celsius)
		return b.Low, b.High, b.Source
	}
	cold, hot := casein.At(math.Inf(-1)), casein.At(math.Inf(1))
	return cold.Low, hot.High, hot.Source
}

// parting draws the pH at which milk parted.
func (f Factors) parting(celsius float64) *Parting {
	const half = 0.5
	p := &Parting{}
	p.Low, p.High, p.Source = CurdlingPH(celsius)
	p.AtMost = f.draw("curdling pH", factor{p.Low + half*(p.High-p.Low), p.Low, p.High})
	return p
}
