package solution

import (
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// Refraction is what one per cent by mass of a constituent adds to the soluble
// solids of a liquid, in per cent, and to a refractometer's reading, in °Brix.
type Refraction struct {
	Solids, SolidsSD float64
	Brix, BrixSD     float64
	Source           string
}

var refractions = sync.OnceValue(func() map[constituent.ID]Refraction {
	all := map[constituent.ID]Refraction{}
	for _, row := range embedded.Rows("refraction.csv") {
		all[constituent.ID(row.Text("constituent"))] = Refraction{
			Solids: row.Number("solids"), SolidsSD: row.Number("solids_sd"), Brix: row.Number("brix"), BrixSD: row.Number("brix_sd"), Source: row.Text("source"),
		}
	}
	return all
})

// strengthRefracts is what a refractometer reads of ethanol in water, by mass, in °Bx.
var strengthRefracts = sync.OnceValue(func() (points [][2]float64) {
	for _, row := range embedded.Rows("solution_ethanol_refraction.csv") {
		points = append(points, [2]float64{row.Number("percent"), row.Number("brix")})
	}
	return points
})

// RefractionExcess gives how much more a liquid reads on a refractometer, in per cent of a gram,
// than the sum of its constituents' refraction (data/refraction.csv), from grams of water and of
// ethanol: what a gram of ethanol refracts changes with its strength
// (data/solution_ethanol_refraction.csv, by the per cent, straight between its rows).
func RefractionExcess(water, ethanol float64) float64 {
	if ethanol <= 0 {
		return 0
	}
	list, p := strengthRefracts(), percent*ethanol/(ethanol+water)
	each := list[0][1] / list[0][0]
	for i, above := range list[1:] {
		if below := list[i]; p > below[0] {
			part := min((p-below[0])/(above[0]-below[0]), 1)
			low, high := below[1]/below[0], above[1]/above[0]
			each = low + part*(high-low)
		}
	}
	return ethanol * (each - refractions()[constituent.Alcohol].Brix)
}

// AcidRefractionExcess gives how much more citric acid reads than its row says, in per cent of a
// gram, from grams of it and of all that is neither water, alcohol nor it: the row is of juices,
// which are sweeter than sour, and alone in water it refracts more. What goes over from the one to
// the other is the acid that outweighs the others: our own bound, nobody has read mixtures between.
func AcidRefractionExcess(citric, others float64) float64 {
	return max(citric-others, 0) * (constants()["citric acid alone"] - refractions()[CitricAcid].Brix)
}

// CitricAcid is the acid of which both have been read.
const CitricAcid constituent.ID = "CITAC"

// RefractionOf gives the refraction of a mass-additive constituent: its own row
// or that of the nearest parent, and whose row it is.
func RefractionOf(id constituent.ID) (Refraction, constituent.ID) {
	for at := id; at != ""; at = constituent.Must(at).Parent {
		if r, ok := refractions()[at]; ok {
			return r, at
		}
	}
	panic("solution: " + string(id) + " is not part of the mass")
}
