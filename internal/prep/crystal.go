package prep

import (
	"fmt"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// solubility is a point of data/solubility.csv: grams of sucrose in 100 g of
// water, saturated.
type solubility struct{ celsius, sucrose float64 }

var sucroseSolubility = sync.OnceValue(func() []solubility {
	var table []solubility
	for _, row := range embedded.Rows("solubility.csv") {
		table = append(table, solubility{row.Number("celsius"), row.Number("sucrose_per_100g_water")})
	}
	return table
})

// Saturated gives grams of sucrose in a gram of water at saturation, linear
// between the points of the table and constant beyond its ends.
func Saturated(celsius float64) float64 {
	table := sucroseSolubility()
	if celsius <= table[0].celsius {
		return table[0].sucrose / unit.Hundred
	}
	for i, p := range table[1:] {
		if q := table[i]; celsius <= p.celsius {
			return (q.sucrose + (p.sucrose-q.sucrose)*(celsius-q.celsius)/(p.celsius-q.celsius)) / unit.Hundred
		}
	}
	return table[len(table)-1].sucrose / unit.Hundred
}

// Crystallises warns of a syrup that holds more sucrose for its water than
// dissolves at its keeping temperature. Limits: other sugars lower the solubility
// of sucrose a little and slow the crystals down; alcohol is not allowed for.
func Crystallises(pot *ledger.Pot, celsius float64) (note string, warn bool) {
	sucrose, water := pot.Central(constituent.Sucrose), pot.Central(constituent.Water)
	if water <= 0 || sucrose/water <= Saturated(celsius) {
		return "", false
	}
	return fmt.Sprintf("%.0f g of sucrose to 100 g of water: above what dissolves at %.3g °C (%.0f g), so it will crystallise", unit.Hundred*sucrose/water, celsius, unit.Hundred*Saturated(celsius)), true
}
