package prep

import (
	"fmt"
	"math"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/curdling"
	"sipsum/internal/embedded"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// advice gives a figure of data/curdling.csv: what is known of when milk curdles.
func advice(name string) float64 { return curdlingFacts()[name] }

var curdlingFacts = sync.OnceValue(func() map[string]float64 {
	table := map[string]float64{}
	for _, row := range embedded.Rows("curdling.csv") {
		table[row.Text("name")] = row.Number("value")
	}
	return table
})

// adviseAcid tells what to expect of curdling by acid: the usual practice, and
// outside it what is known. Milk is the mass of the dairy rows in grams.
func adviseAcid(pot *ledger.Pot, milk, celsius float64) []string {
	acid := 0.0
	for row := range pot.Rows {
		if !isDairy(pot.Rows[row]) {
			acid += pot.CentralOf(row, constituent.OrganicAcids)
		}
	}
	usual := acid >= advice("practice acid")*milk
	notes := []string{adviseHeat(celsius, usual)}
	if !usual {
		notes = append(notes, fmt.Sprintf(
			"the other ingredients bring about %.2g g of known acid to a kilogram of milk, less than the %.2g g of the usual practice: it may not curdle, or only in part; casein gathers below about pH %.1f at %.0f °C and pH %.1f at %.0f °C",
			unit.Kilo*acid/milk, unit.Kilo*advice("practice acid"), advice("cool pH"), advice("cool"), advice("warm pH"), advice("warm")))
	}
	return notes
}

func adviseHeat(celsius float64, usual bool) string {
	low, high := advice("practice low"), advice("practice high")
	const practice = "(common practice, no source)"
	switch {
	case math.IsNaN(celsius):
		return fmt.Sprintf("no temperature is stated: in practice milk at %.0f to %.0f °C curdles almost at once if there is acid enough %s", low, high, practice)
	case celsius >= advice("hot"):
		return fmt.Sprintf("at %.0f °C or more, held some minutes, whey proteins come down with the casein: the whey holds less protein", advice("hot"))
	case celsius > high:
		return fmt.Sprintf("hotter than the usual %.0f to %.0f °C: expect a tight, grainy curd at once %s; from about %.0f °C whey proteins come down too", low, high, practice, advice("hot"))
	case celsius < low:
		return fmt.Sprintf("cooler than the usual %.0f to %.0f °C: expect a slow, fine curd that needs more acid (about pH %.1f at %.0f °C, pH %.1f at %.0f °C) and clouds the filter", low, high, advice("warm pH"), advice("warm"), advice("cool pH"), advice("cool"))
	case usual:
		return "expect it to curdle almost at once; let it rest about 45 minutes and drain it through paper, twice if it is cloudy " + practice
	}
	return fmt.Sprintf("%.0f °C is the usual temperature %s", celsius, practice)
}

// Parting is what it tells of a pot that acid parted its milk: then its pH was at or below
// the one at which casein curdles at that temperature. It is an upper limit and no more:
// the acids of the pot say how far below.
type Parting struct {
	AtMost    []float64 // the pH, a column: anywhere from Low to High
	Low, High float64
	Source    string
}

// curdlingPH bounds the pH at which the casein of milk curdles at a temperature in °C
// (data/curdling_proteins.csv); with NaN, at any temperature of that table.
func curdlingPH(celsius float64) (low, high float64, source string) {
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
	p.Low, p.High, p.Source = curdlingPH(celsius)
	p.AtMost = f.draw("curdling pH", factor{p.Low + half*(p.High-p.Low), p.Low, p.High})
	return p
}
