package solution

import (
	"math"
	"sync"

	"sipsum/internal/constituent"
)

var norrish = sync.OnceValue(func() map[constituent.ID]float64 {
	const file = "solution_norrish.csv"
	k := map[constituent.ID]float64{}
	for _, row := range dataRows(file) {
		k[constituent.ID(row[0])] = dataNumber(file, row[1])
	}
	return k
})

// WaterActivity gives the water activity at 25 °C of a mixture of masses in
// grams (Norrish 1966, with the roots of the constants added for mixtures):
//
//	a_w = x_w·exp(−(Σ √Kᵢ·xᵢ)²)
//
// x are mole fractions of water and of what is dissolved: sugars, polyols,
// acids, alcohol and the ions of salts; what has no row in
// data/solution_norrish.csv counts as ideal (K = 0). What has no formula
// (fibre, protein, unnamed sugars) is left out, so the true activity is lower:
// the safe side. A mixture without water has none: ok is false.
func WaterActivity(grams map[constituent.ID]float64) (aw float64, ok bool) {
	water := grams[constituent.Water] / constituent.Must(constituent.Water).Molar
	if water <= 0 {
		return 0, false
	}
	total, pull := water, 0.0
	for _, c := range dissolved() {
		n := grams[c.ID] / c.Molar
		total += n
		pull += math.Sqrt(norrish()[c.ID]) * n
	}
	pull /= total
	return water / total * math.Exp(-pull*pull), true
}

// dissolved lists what counts as particles in water, in vocabulary order.
var dissolved = sync.OnceValue(func() []*constituent.Constituent {
	ion := map[constituent.ID]bool{constituent.Sodium: true, "K": true, "CA": true, "MG": true, "CLD": true}
	var list []*constituent.Constituent
	for _, c := range constituent.All() {
		leaf := c.Kind == constituent.Leaf && c.Phase == "dissolved" && c.Molar > 0
		if leaf || ion[c.ID] {
			list = append(list, c)
		}
	}
	return list
})
