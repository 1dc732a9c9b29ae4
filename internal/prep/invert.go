package prep

import (
	"math"
	"sync"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
	"sipsum/internal/unit"
)

// Invert splits a share (a column) of the sucrose into glucose and fructose:
//
//	C12H22O11 + H2O → C6H12O6 + C6H12O6
//
// 100 g of sucrose become 105.26 g; the water comes out of the pot. Where the
// sucrose is unknown its bound becomes bounds of the two.
func Invert(pot *ledger.Pot, share []float64) (Outcome, error) {
	return splitSugar(pot, hydrolysis(constituent.Sucrose, constituent.Glucose, constituent.Fructose), share)
}

// Inverted gives the share of the sucrose that acid splits, first order in
// sucrose and in the activity of the hydrogen ion:
//
//	share = 1 − exp(−k·10^−pH·t),   k = k₀·exp(−E/R·(1/T − 1/T₀))
//
// with pH, temperature (°C) and time (min) as columns. k₀ at 24.7 °C is from
// Guggenheim and Wiseman 1950, E from Tombari et al. 2007 (data/kinetics.csv).
//
// Valid between pH 1 and 7 and 0 and 106 °C, where a pot of 70 % of sugar boils. The
// range of k₀ covers 30 to 500 g/l of sucrose and up to 0.1 mol/l of acid; three syrups
// boiled in 1922 (testdata/inversion.csv) lie within it. Limits: titratable acidity does
// not tell the pH; the pH is taken as that of the hot pot; no enzyme; glucose and
// fructose are not lost in turn.
func Inverted(pH, celsius, minutes []float64, f Factors) []float64 {
	k := kinetics()
	rate, energy := f.draw("inversion rate", k["inversion rate"]), f.draw("activation energy", k["inversion activation energy"])
	at := kelvin(k["inversion temperature"].value)
	share := make([]float64, f.N)
	for d := range share {
		arrhenius := math.Exp(-energy[d] * unit.Kilo / solution.GasConstant() * (1/kelvin(celsius[d]) - 1/at))
		share[d] = -math.Expm1(-rate[d] * arrhenius * math.Pow(10, -pH[d]) * minutes[d])
	}
	return share
}

// splitting splits a sugar, and says how much of it where that was calculated, or that there is none.
func (a at) splitting(sugar constituent.ID, split func(*ledger.Pot, []float64) (Outcome, error), share []float64, calculated bool) (Outcome, error) {
	most, unknown := composition.MostOf(a.pot, sugar)
	none := a.pot.Central(sugar) == 0 && (len(unknown) == 0 || most == 0)
	out, err := split(a.pot, share)
	switch name := constituent.Must(sugar).Name; {
	case err != nil:
	case none:
		out.note("nothing in it holds any %s, so that nothing splits", name)
	case calculated:
		out.note("%s of its %s split, by pH, time and temperature", spanned(estimate.Summarise(share)), name)
	}
	return out, err
}

// kinetics is data/kinetics.csv by quantity.
var kinetics = sync.OnceValue(func() map[string]factor {
	table := map[string]factor{}
	for _, row := range embedded.Rows("kinetics.csv") {
		table[row.Text("quantity")] = factorOf(row, "value")
	}
	return table
})

func kelvin(celsius float64) float64 { return solution.Kelvin(celsius) }

// Hydrolyse splits a share (a column) of the lactose into glucose and galactose,
// as lactase does; the water comes out of the pot. Limits: the oligosaccharides
// that lactase also makes are counted as the two sugars.
func Hydrolyse(pot *ledger.Pot, share []float64) (Outcome, error) {
	return splitSugar(pot, hydrolysis(constituent.Lactose, constituent.Glucose, constituent.Galactose), share)
}
