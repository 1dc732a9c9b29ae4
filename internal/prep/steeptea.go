package prep

import (
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// The rows of data/kinetics.csv that a kind of leaf has.
const (
	halfTime  = "infusion half-time "
	leastTime = "least infusion time "
)

// leafKind names how a food gives its small solutes: the food itself where
// data/kinetics.csv has a half-time for it, else its group.
func leafKind(of *food.Food) string {
	if _, own := kinetics()[halfTime+of.ID.String()]; own {
		return of.ID.String()
	}
	return of.Group
}

// drunkWhole reports whether a leaf is a powder that infuses at once and is drunk with what
// it was infused in.
func drunkWhole(of *food.Food) bool {
	half, own := kinetics()[halfTime+of.ID.String()]
	return own && half.high == 0
}

// infused gives the share of a tea's small solutes that its water has drawn.
func (f Factors) infused(of *food.Food, s Steeping) []float64 {
	k, kind := kinetics(), leafKind(of)
	s = f.usual(s)
	half, energy := f.draw(halfTime+kind, k[halfTime+kind]), f.draw("infusion activation energy", k["infusion activation energy"])
	col := make([]float64, f.N)
	for d := range col {
		col[d] = InfusedShare(s.Minutes[d], s.Celsius[d], half[d], k["infusion temperature"].value, energy[d])
	}
	return col
}

// usual draws what was not stated over what is usual.
func (f Factors) usual(s Steeping) Steeping {
	if s.Minutes == nil {
		s.Minutes = f.draw("usual infusion time", kinetics()["usual infusion time"])
	}
	if s.Celsius == nil {
		s.Celsius = f.draw("usual infusion temperature", kinetics()["usual infusion temperature"])
	}
	return s
}

// warn says how wide the infusion alone leaves the caffeine of a tea that is
// steeped for less time, or in cooler water, than Steep is valid for.
func (m *infusion) warn(out *Outcome, of *food.Food, s Steeping) {
	minutes, tea := kinetics()[leastTime+leafKind(of)]
	if !tea {
		return
	}
	s = m.factors.usual(s)
	hot := kinetics()["least infusion temperature"]
	if s.Minutes[0] >= minutes.value && s.Celsius[0] >= hot.value {
		return
	}
	share := estimate.Summarise(m.solute(of))
	if share.Mean == 0 {
		return
	}
	out.note("%s, short or cool: the share of its caffeine that infuses is known to ± %.0f %%; the step is meant for %g min and more in water of %g °C and more",
		of.Name(), unit.Hundred*(share.High-share.Low)/2/share.Mean, minutes.value, hot.value)
}
