package prep

import (
	"math"

	"sipsum/internal/food"
	"sipsum/internal/solution"
	"sipsum/internal/unit"
)

// WashedShare gives the share of a coffee's caffeine, or another small solute,
// that is in the cup, from the liquor by mass of the dose and the yield:
//
//	share = 1 − exp(−washout·liquor/dose), at most yield / immersion yield
//
// Liquor that flows through a bed washes out a fixed part of what is still there:
// shots of one, two and three times the dose (Schmieder et al. 2023) lie on the
// curve. In an immersion, grounds and cup hold one liquor: as much of the solute
// as of the solids is in the cup, and all the liquor would be the yield of a full
// immersion (Liang et al. 2021).
func WashedShare(liquor, yield, washout, immersion float64) float64 {
	return min(-math.Expm1(-washout*liquor), yield/immersion)
}

// SoluteShare gives the share of a tea's caffeine that is in the liquor when a
// yield of the solids is: both leave the leaf by first order, the caffeine faster
// by a factor,
//
//	share = 1 − (1 − yield / soluble)^factor
func SoluteShare(yield, soluble, factor float64) float64 {
	return 1 - math.Pow(1-min(yield/soluble, 1), factor)
}

// InfusedShare gives the share of a tea's caffeine that has left the leaf after a
// time (min) in water poured at a temperature (°C), by first order,
//
//	share = 1 − 2^(−a·t/half),   a = exp(−E/R·(1/T − 1/T₀))
//
// with the half-time in min in water poured at from, and E in kJ/mol; a half-time
// of 0 gives all at once. The water of a cup cools; the half-time is that of such
// a cup.
func InfusedShare(minutes, celsius, half, from, energy float64) float64 {
	if half == 0 {
		return 1
	}
	arrhenius := math.Exp(-energy * unit.Kilo / solution.GasConstant() * (1/kelvin(celsius) - 1/kelvin(from)))
	return 1 - math.Exp2(-arrhenius*minutes/half)
}

// washed gives the share of the small solutes of a food in a brew: of tea by the
// yield, of coffee by liquor and yield. The scatter from brew to brew is drawn.
func (f Factors) washed(of *food.Food, liquor, yield []float64) []float64 {
	group := of.Group
	col := f.draw("solute scatter/"+group, brewing("solute scatter "+group))
	if isLeaf(of) {
		soluble := f.draw("soluble share/"+group, brewing("soluble share "+group))
		for d := range col {
			col[d] *= SoluteShare(yield[d], soluble[d], brewing("solute exponent "+group).value)
		}
		return col
	}
	immersion := f.draw("immersion yield/"+group, brewing("immersion yield "+group))
	for d := range col {
		col[d] *= WashedShare(liquor[d], yield[d], brewing("washout "+group).value, immersion[d])
	}
	return col
}
