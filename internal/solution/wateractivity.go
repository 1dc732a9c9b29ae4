package solution

import (
	"math"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/source"
)

// norrishConstant is a row of data/solution_norrish.csv.
type norrishConstant struct {
	k    float64
	seen bool // in print
}

var norrish = sync.OnceValue(func() map[constituent.ID]norrishConstant {
	constants := map[constituent.ID]norrishConstant{}
	for _, row := range embedded.Rows("solution_norrish.csv") {
		constants[constituent.ID(row.Text("constituent"))] = norrishConstant{row.Number("k"), !source.IsFromMemory(row.Text("source"))}
	}
	return constants
})

// RestsOnMemory reports whether the water activity of a mixture of masses in grams
// rests on constants that nobody has seen in print: those of a twentieth or more of
// what is dissolved, by amount.
func RestsOnMemory(grams map[constituent.ID]float64) bool {
	const weighty = 0.05
	all, unseen := 0.0, 0.0
	for _, c := range dissolved() {
		n := grams[c.ID] / c.Molar
		all += n
		if k, ok := norrish()[c.ID]; ok && !k.seen {
			unseen += n
		}
	}
	return unseen > 0 && unseen >= weighty*all
}

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
		pull += math.Sqrt(norrish()[c.ID].k) * n
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
