package sweep_test

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/sheet"
	"sipsum/internal/taste"
)

// waterFlows is the viscosity of water in mPa·s by °C (IAPWS, as the CRC Handbook prints it).
var waterFlows = [][2]float64{{0, 1.7916}, {10, 1.3059}, {20, 1.0016}, {25, 0.8900}, {40, 0.6527}, {60, 0.4660}, {80, 0.3540}, {100, 0.2816}}

// thinnest is the viscosity of water, straight between those points less what the chord leaves above
// the curve.
func thinnest(celsius float64) float64 {
	const chord = 0.97
	for i, hot := range waterFlows[1:] {
		if cold := waterFlows[i]; celsius <= hot[0] {
			return chord * (cold[1] + (hot[1]-cold[1])*(celsius-cold[0])/(hot[0]-cold[0]))
		}
	}
	return 0
}

// tastesOfTheirParts holds the numbers beside the tastes to what they are made of.
func tastesOfTheirParts(s *subject, broken say) {
	p := sheet.TasteOf(s.sheet)
	if p.Why != "" {
		return
	}
	for _, x := range []struct {
		name string
		taste.Index
	}{
		{"sweet", p.Sweet.Index}, {"molecules", p.Sour.Molecules}, {"hydrogen", p.Sour.Hydrogen},
		{"titratable", p.Sour.Titratable}, {"viscosity", p.Body.Viscosity},
	} {
		if x.Why != "" {
			continue
		}
		if !(x.Low >= 0 && x.Low <= x.Mean && x.Mean <= x.High) {
			broken(math.Inf(1), "%s: 0 ≤ %g ≤ %g ≤ %g", x.name, x.Low, x.Mean, x.High)
		}
		if x.UpTo < x.High*(1-rounding) {
			broken(x.High-x.UpTo, "%s: up to %g, below %g", x.name, x.UpTo, x.High)
		}
	}
	sweet := 0.0
	for _, part := range p.Sweet.Parts {
		sweet += part.Grams.Mean * part.High
	}
	if p.Sweet.Mean > sweet*(1+rounding) {
		broken(p.Sweet.Mean-sweet, "sweeter (%g) than its parts at their sweetest (%g)", p.Sweet.Mean, sweet)
	}
	if v := p.Body.Viscosity; v.Why == "" && v.Low < thinnest(p.Body.Celsius) {
		broken(thinnest(p.Body.Celsius)-v.Low, "thinner (%g mPa·s) than water at %g °C", v.Low, p.Body.Celsius)
	}
	if f, ok := s.assay.PerServing.Find(constituent.Sugar); ok && f.WithBounds > f.Mean && !p.Sweet.Partial {
		broken(1, "sugar is partly unknown and sweetness is not")
	}
	if m, h := p.Sour.Molecules, p.Sour.Hydrogen; m.Why == "" && m.Mean < h.Mean*(1-rounding) {
		broken(h.Mean-m.Mean, "fewer molecules (%g) than H⁺ (%g)", m.Mean, h.Mean)
	}
	for _, d := range p.Doses {
		if d.Amount.Partial && d.Place() == taste.Below && math.IsNaN(d.Times.UpTo) {
			broken(1, "%s is not bounded and is said to be below its thresholds", d.Constituent.ID)
		}
	}
}
