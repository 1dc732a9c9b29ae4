package prep

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
)

// Evaporate takes water off in vacuum until the pot weighs to grams (a column), as Reduce
// does at the boil, and by the same equations (evaporating). It is an error to ask for more
// than there is, or for less than what does not evaporate.
//
// Limits: aroma is not modelled, and most of it goes with the first of the distillate; no
// heat, so nothing inverts.
func Evaporate(pot *ledger.Pot, to []float64, f Factors) (Outcome, error) {
	return evaporating{verb: "concentrate", what: "that do not evaporate", alcohol: "alcohol leaves before the water"}.off(pot, to, f)
}

// evaporating takes off what evaporates, at the boil or in vacuum. Alcohol leaves before the
// water and acetic acid behind it (Rayleigh), while the vapour takes of each by its
// volatility beside water's:
//
//	d ln alcohol = α · d ln water,   α = 1 + part · (y/(1−y) ÷ x/(1−x) − 1)
//	acid kept = (water kept)^volatility
//	water gone + alcohol gone + acid gone = mass − to
//
// x and y are the mole fractions of alcohol beside water in liquid and vapour
// (data/vapour_ethanol.csv, straight between its rows), part and volatility are rows of
// data/kinetics.csv. So a pot that boils never gets stronger.
//
// Gas leaves first, where it is known; the inorganic carbon of a water is for the most part
// bicarbonate, and stays. Of sulphur dioxide what is free boils off and what is bound does
// not, and nobody says which is which: between both it is unknown (doubt).
//
// Valid for an open pan or still without a column. Limits: what a lid sends back is not
// counted; acetic acid that something has neutralised stays, and goes here.
type evaporating struct{ verb, what, alcohol string }

func (e evaporating) off(pot *ledger.Pot, to []float64, f Factors) (Outcome, error) {
	mass, v := pot.Mass(), newVapour(pot, f)
	if to[0] > mass[0] {
		return Outcome{}, unlike(e.verb+" to %s g: the pot holds only %s g", to[0], mass[0])
	}
	// guard: not below the dry matter
	if dry := mass[0] - v.water[0] - v.alcohol[0] - v.acid[0]; to[0] < dry {
		return Outcome{}, unlike(e.verb+" to %s g: there are %s g "+e.what, to[0], dry)
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
		left := estimate.Summarise(m.alcohol)
		out.note(e.alcohol+": between %.2g and %.2g %% of it are still there", 100*left.Low, 100*left.High)
	}
	const much = 0.02 // of the acid, of which a word is said
	if left := estimate.Summarise(m.acid); v.acid[0] > 0 && 1-left.Low > much {
		out.note("acetic acid goes with the water, more slowly: between %.2g and %.2g %% of it are still there", 100*left.Low, 100*left.High)
	}
	gone := make([][]float64, len(pot.Rows))
	for row := range pot.Rows {
		gone[row] = pot.Of(row, constituent.Alcohol)
	}
	out.Lost = apply(pot, m)
	for row, was := range gone {
		if was[0] <= 0 {
			continue
		}
		for d, kept := range m.alcohol {
			was[d] *= 1 - kept
		}
		ledger.BoilOff(pot, row, was)
	}
	doubt(pot, sulphurDioxideKept(m.water[0]))
	return out, nil
}

// vapour is what a pot gives off, in columns.
type vapour struct {
	water, alcohol, acid []float64 // grams there
	part, ofAcid         []float64 // of the volatility of alcohol; volatility

	noAlcohol, noAcid bool // in any draw, and nothing that goes with it: how it would leave is not asked but at central values
}

// acetic is the acid that leaves with the vapour.
const acetic constituent.ID = "ACEAC"

func newVapour(pot *ledger.Pot, f Factors) vapour {
	return vapour{
		water: pot.Total(constituent.Water), alcohol: pot.Total(constituent.Alcohol), acid: pot.Total(acetic),
		part:   f.draw("vapour of alcohol", kinetics()["vapour of alcohol"]),
		ofAcid: f.draw("volatility of acetic acid", kinetics()["volatility ACEAC"]),

		noAlcohol: pot.Lacks(constituent.Alcohol), noAcid: pot.Lacks(acetic),
	}
}

// staying is the share of each that stays.
type staying struct{ water, alcohol, acid float64 }

// kept gives the shares that stay when so many grams leave, in a draw: in short steps of the
// water while the volatility of the alcohol changes, and the last of them by halving.
func (v vapour) kept(d int, leave float64) (water, alcohol, acid float64) {
	const step, nothing, halvings = 0.98, 1e-9, 60
	if leave <= 0 {
		return 1, 1, 1
	}
	at, ofAcid := staying{1, 1, 1}, v.ofAcid[d]
	if v.noAcid && d > 0 {
		ofAcid = 0
	}
	for {
		volatility, settled := v.ofAlcohol(d, at)
		switch {
		case v.noAlcohol && d > 0:
			volatility = 0
		case !settled: // that of the middle of the step
			volatility, _ = v.ofAlcohol(d, at.after((1+step)/2, volatility, ofAcid))
		}
		least := step
		if settled || at.water < nothing {
			least = 0
		} else if next := at.after(step, volatility, ofAcid); v.gone(d, next) < leave {
			at = next
			continue
		}
		low, high, last := least, 1.0, at
		for range halvings {
			s := (low + high) / 2
			if last = at.after(s, volatility, ofAcid); v.gone(d, last) > leave {
				low = s
			} else {
				high = s
			}
		}
		return last.water, last.alcohol, last.acid
	}
}

// after gives what stays once a share of the water has stayed.
func (k staying) after(share, alcohol, acid float64) staying {
	return staying{k.water * share, k.alcohol * math.Pow(share, alcohol), k.acid * math.Pow(share, acid)}
}

// gone gives the grams that have left.
func (v vapour) gone(d int, k staying) float64 {
	return v.water[d]*(1-k.water) + v.alcohol[d]*(1-k.alcohol) + v.acid[d]*(1-k.acid)
}

// ofAlcohol gives the volatility of the alcohol beside the water's, and whether it is settled.
func (v vapour) ofAlcohol(d int, k staying) (volatility float64, settled bool) {
	alcohol, water := v.alcohol[d]*k.alcohol/molarMass(constituent.Alcohol), v.water[d]*k.water/molarMass(constituent.Water)
	x := 0.0
	if alcohol > 0 {
		x = alcohol / (alcohol + water)
	}
	volatility, settled = solution.AlcoholVolatility(x)
	return 1 + v.part[d]*(volatility-1), settled
}
