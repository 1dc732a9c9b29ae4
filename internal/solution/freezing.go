package solution

import (
	"maps"
	"math"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// FreezingPoint gives the temperature in °C at which ice begins to form, from the
// water activity: there the activity of water equals that of ice,
//
//	ln a_w = (ΔH − ΔCp·T₀)/R·(1/T₀ − 1/T) + ΔCp/R·ln(T/T₀)
//
// with the heat of fusion ΔH and the change of heat capacity ΔCp at T₀ = 0 °C.
// It takes the activity at 25 °C as that at the freezing point; below −20 °C it
// is a guess. An activity of 0 or less freezes at no temperature: ok is false.
func FreezingPoint(aw float64) (celsius float64, ok bool) {
	const coldest, exact = 200.0, 1e-9 // K
	want := math.Log(aw)
	if !(want >= iceActivity(coldest)) || want > 0 {
		return 0, false
	}
	lo, hi := coldest, zeroCelsius
	for hi-lo > exact {
		if mid := (lo + hi) / 2; iceActivity(mid) < want {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi - zeroCelsius, true
}

// iceActivity gives ln of the water activity of ice at a temperature in kelvin.
func iceActivity(t float64) float64 {
	k := constants()
	heat, capacity, r := k["heat of fusion of water"], k["heat capacity change of fusion"], GasConstant()
	return (heat-capacity*zeroCelsius)/r*(1/zeroCelsius-1/t) + capacity/r*math.Log(t/zeroCelsius)
}

// FreezesAt gives the temperature in °C at which ice begins to form in a mixture of masses in
// grams. Alcohol and its water freeze as published (data/solution_ethanol_freezing.csv, straight
// between its rows); what else is dissolved lowers the activity of the water by as much more as
// it does without the alcohol. Beyond the last row, or without water, nobody knows: ok is false.
func FreezesAt(grams map[constituent.ID]float64) (celsius float64, ok bool) {
	sober := maps.Clone(grams)
	delete(sober, constituent.Alcohol)
	aw, ok := WaterActivity(sober)
	if !ok {
		return 0, false
	}
	alcohol, ok := ethanolFreezing(percent * grams[constituent.Alcohol] / (grams[constituent.Alcohol] + grams[constituent.Water]))
	if !ok {
		return 0, false
	}
	return FreezingPoint(min(aw*math.Exp(iceActivity(Kelvin(alcohol))), 1)) // of water alone it is 1, but for the last digit
}

var ethanolFreezes = sync.OnceValue(func() (points [][2]float64) {
	for _, row := range embedded.Rows("solution_ethanol_freezing.csv") {
		points = append(points, [2]float64{row.Number("percent"), row.Number("freezing_c")})
	}
	return points
})

// ethanolFreezing gives the freezing point of so many per cent by mass of ethanol in water.
func ethanolFreezing(percent float64) (celsius float64, ok bool) {
	list := ethanolFreezes()
	for i, above := range list[1:] {
		if below := list[i]; percent <= above[0] {
			return below[1] + (above[1]-below[1])*(percent-below[0])/(above[0]-below[0]), true
		}
	}
	return 0, false
}

// ColdestEthanol gives the lowest temperature in °C at which a mixture of ethanol and water was published to freeze
// (data/solution_ethanol_freezing.csv).
func ColdestEthanol() float64 {
	coldest := 0.0
	for _, point := range ethanolFreezes() {
		coldest = min(coldest, point[1])
	}
	return coldest
}

// HeatOfFusion is the heat that melts a mol of ice at 0 °C, in J.
func HeatOfFusion() float64 { return constants()["heat of fusion of water"] }
