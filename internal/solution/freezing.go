package solution

import "math"

// FreezingPoint gives the temperature in °C at which ice begins to form, from the
// water activity: there the activity of water equals that of ice,
//
//	ln a_w = (ΔH − ΔCp·T₀)/R·(1/T₀ − 1/T) + ΔCp/R·ln(T/T₀)
//
// with the heat of fusion ΔH and the change of heat capacity ΔCp at T₀ = 0 °C.
// It takes the activity at 25 °C as that at the freezing point; below −20 °C it
// is a guess. An activity of 0 or less freezes at no temperature: ok is false.
func FreezingPoint(aw float64) (celsius float64, ok bool) {
	k := constants()
	heat, capacity, r := k["heat of fusion of water"], k["heat capacity change of fusion"], GasConstant()
	iceActivity := func(t float64) float64 {
		return (heat-capacity*zeroCelsius)/r*(1/zeroCelsius-1/t) + capacity/r*math.Log(t/zeroCelsius)
	}
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

// HeatOfFusion is the heat that melts a mol of ice at 0 °C, in J.
func HeatOfFusion() float64 { return constants()["heat of fusion of water"] }
