package prep

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// Evaporate takes water off in vacuum until the pot weighs to grams (a column). Alcohol
// leaves before the water and acetic acid behind it, by their volatility (data/kinetics.csv,
// Rayleigh):
//
//	kept = (kept water)^volatility,   water gone + alcohol gone + acid gone = mass − to
//
// Gas leaves first, where it is known; sulphur dioxide is in doubt as in Reduce. It is an
// error to ask for more than there is, or for less than what does not evaporate.
//
// Valid for an open still or a vacuum pot without a column. Limits: aroma is not modelled,
// and most of it goes with the first of the distillate; no heat, so nothing inverts.
func Evaporate(pot *ledger.Pot, to []float64, f Factors) (Outcome, error) {
	mass := pot.Mass()
	if to[0] > mass[0] {
		return Outcome{}, unlike("concentrate to %s g: the pot holds only %s g", to[0], mass[0])
	}
	v := newVapour(pot, f)
	// guard: nothing dry evaporates
	if dry := mass[0] - v.water[0] - v.alcohol[0] - v.acid[0]; to[0] < dry {
		return Outcome{}, unlike("concentrate to %s g: there are %s g that do not evaporate", to[0], dry)
	}
	m := &evaporation{water: make([]float64, pot.N), alcohol: make([]float64, pot.N), acid: make([]float64, pot.N), gas: estimate.Constant(pot.N, 1)}
	gas := gasOf(pot)
	for d := range mass {
		leave := max(mass[d]-to[d], 0)
		if gas[d] > 0 {
			m.gas[d] = max(1-leave/gas[d], 0)
			leave -= gas[d] * (1 - m.gas[d])
		}
		m.water[d], m.alcohol[d], m.acid[d] = v.kept(d, leave)
	}
	var out Outcome
	if v.alcohol[0] > 0 {
		out.note("alcohol leaves before the water: between %.0f and %.0f %% of it are still there", 100*estimate.Summarise(m.alcohol).Low, 100*estimate.Summarise(m.alcohol).High)
	}
	out.Lost = apply(pot, m)
	doubt(pot, sulphurDioxideKept(m.water[0]))
	return out, nil
}

// vapour is what a pot gives off, in columns.
type vapour struct {
	water, alcohol, acid []float64 // grams there
	ofAlcohol, ofAcid    []float64 // volatility
}

// acetic is the acid that leaves with the vapour.
const acetic constituent.ID = "ACEAC"

func newVapour(pot *ledger.Pot, f Factors) vapour {
	return vapour{
		water: pot.Total(constituent.Water), alcohol: pot.Total(constituent.Alcohol), acid: pot.Total(acetic),
		ofAlcohol: f.draw("volatility of alcohol", kinetics()["volatility ALC"]),
		ofAcid:    f.draw("volatility of acetic acid", kinetics()["volatility ACEAC"]),
	}
}

// kept gives the shares that stay when so many grams leave, in a draw: the share of water
// by halving, since all three fall together.
func (v vapour) kept(d int, leave float64) (water, alcohol, acid float64) {
	const halvings = 60
	low, high := 0.0, 1.0
	for range halvings {
		water = (low + high) / 2
		alcohol, acid = math.Pow(water, v.ofAlcohol[d]), math.Pow(water, v.ofAcid[d])
		if gone := v.water[d]*(1-water) + v.alcohol[d]*(1-alcohol) + v.acid[d]*(1-acid); gone > leave {
			low = water
		} else {
			high = water
		}
	}
	if leave <= 0 {
		return 1, 1, 1
	}
	return water, alcohol, acid
}
