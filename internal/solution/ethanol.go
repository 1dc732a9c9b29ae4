package solution

import (
	"sync"

	"sipsum/internal/embedded"
)

var ethanolTerms = sync.OnceValue(func() []float64 {
	var terms []float64
	for _, row := range embedded.Rows("solution_ethanol.csv") {
		terms = append(terms, row.Number("coefficient_kg_m3"))
	}
	return terms
})

// EthanolDensity gives g/ml at 20 °C of ethanol and water, by the mass fraction
// of ethanol (OIML R 22):
//
//	ρ₂₀ = Σ A_k·p^(k−1)
func EthanolDensity(fraction float64) float64 {
	const kgPerM3 = 1000 // in a g/ml
	return horner(ethanolTerms(), fraction) / kgPerM3
}

// waterDensity gives g/ml of water at 20 °C.
func waterDensity() float64 { return EthanolDensity(0) }

// Excess gives how many ml more a liquid takes up than the sum of its
// constituents' specific volumes (data/specific_volumes.csv), from grams of
// water, of dissolved sugars and of ethanol: the apparent volumes of sugar and
// ethanol change with strength as in the sucrose table and in OIML R 22. Sugar
// and ethanol are taken each with all the water, as if the other were absent.
// Sugar beyond HighestSucrose counts as at HighestSucrose.
func Excess(water, sugars, ethanol float64) float64 {
	sum := 0.0
	if sugars > 0 && water > 0 { // dry sugar is no solution; neat ethanol is a liquid all the same
		w := min(sugars/(sugars+water), HighestSucrose/percent)
		sum += sugars * (apparent(SucroseDensity(percent*w), w) - specificVolumes()["SUGAR"].MlPerGram)
	}
	if ethanol > 0 {
		p := ethanol / (ethanol + water)
		sum += ethanol * (apparent(EthanolDensity(p), p) - specificVolumes()["ALC"].MlPerGram)
	}
	return sum
}

// apparent gives the ml that a gram of solute adds to its water, from the density
// of the solution and its mass fraction.
func apparent(density, fraction float64) float64 {
	return (1/density - (1-fraction)/waterDensity()) / fraction
}
