package burette_test

import (
	"math"
	"math/rand/v2"
)

// A titration simulated by code that shares nothing with package acid: a bisection for the pH
// at which the charges cancel, by Henderson's shares of each acid with its own constants.

// constants are pK at 25 °C and I = 0: citric, malic, tartaric, acetic, phosphoric as in NIST46
// and Martell and Smith 1976, quinic Serjeant and Dempsey 1979, lactic and carbonic of the
// geochemical databases that data/acid_steps.csv names.
var constants = map[string][]float64{
	"citric": {3.128, 4.761, 6.396}, "malic": {3.459, 5.097}, "tartaric": {3.036, 4.366}, "quinic": {3.58},
	"lactic": {3.86}, "acetic": {4.757}, "phosphoric": {2.148, 7.198, 12.375}, "carbonic": {6.352, 10.329},
}

// molar masses, g/mol, from the atomic weights.
var molar = map[string]float64{"citric": 192.12, "malic": 134.09, "tartaric": 150.09, "quinic": 192.17, "lactic": 90.08, "acetic": 60.05, "phosphoric": 94.97}

// truth is what is in a sample, and what the kit is off by.
type truth struct {
	mol               map[string]float64
	nameless, pk      float64
	strong            float64 // mol
	factor, carbonate float64
	zero, slope       float64
	shift             map[string][]float64 // what nature's pK are off by
}

// gammas gives log10 of the activity coefficient of a charge, by Davies with b = 0.2, and of the
// hydrogen ion by Debye and Hückel at 9 Å (Kielland 1937), at 25 °C.
func gammas(ionic float64) (charge func(z int) float64, proton float64) {
	const a, b = 0.5092, 0.3283
	root := math.Sqrt(ionic)
	f := -a * (root/(1+root) - 0.2*ionic)
	return func(z int) float64 { return f * float64(z*z) }, -a * root / (1 + b*9*root)
}

// pH finds it for a sample in kg of water, with base.
func (t truth) pH(kg, base float64) float64 {
	ionic := 0.02
	pH := 7.0
	for range 12 {
		charge, proton := gammas(ionic)
		lo, hi := 0.0, 14.0
		var strength float64
		for range 50 {
			pH = (lo + hi) / 2
			h := math.Pow(10, -pH)
			hydrogen, hydroxide := h/math.Pow(10, proton), 1.008e-14/h/math.Pow(10, charge(1))
			sum := (t.strong+base)/kg + hydrogen - hydroxide
			strength = (math.Abs(t.strong+base)/kg + hydrogen + hydroxide) / 2
			add := func(mol float64, pks []float64) {
				weights, all := []float64{1}, 1.0
				for n, pk := range pks { // n+1 protons gone
					k := math.Pow(10, -pk-charge(n+1)+charge(n))
					weights = append(weights, weights[n]*k/h)
					all += weights[n+1]
				}
				for n, w := range weights {
					sum -= float64(n) * w / all * mol / kg
					strength += float64(n*n) * w / all * mol / kg / 2
				}
			}
			for name, mol := range t.mol {
				pks := append([]float64(nil), constants[name]...)
				for i := range t.shift[name] {
					pks[i] += t.shift[name][i]
				}
				add(mol, pks)
			}
			if t.nameless > 0 {
				add(t.nameless, []float64{t.pk})
			}
			if t.carbonate > 0 {
				add(t.carbonate*base/2, constants["carbonic"])
			}
			if sum > 0 {
				lo = pH
			} else {
				hi = pH
			}
		}
		if math.Abs(strength-ionic) < 1e-9 {
			break
		}
		ionic = strength
	}
	return pH
}

// shown gives what the meter shows of a pH.
func (t truth) shown(pH float64) float64 { return 7 + t.zero + t.slope*(pH-7) }

// lognormal draws by mean and relative standard deviation.
func lognormal(r *rand.Rand, mean, relative float64) float64 {
	v := math.Log1p(relative * relative)
	return mean * math.Exp(math.Sqrt(v)*r.NormFloat64()-v/2)
}
