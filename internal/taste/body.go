package taste

import (
	"fmt"
	"math"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/solution"
)

// Body is what makes a liquid feel thick.
type Body struct {
	Viscosity    Index              // mPa·s, of sugars, polyols and acids in their water, as if they were sucrose
	Celsius      float64            // at which it is
	Fat, Protein composition.Result // g per 100 ml
	Creamy       float64            // fat in g/100 g above which creaminess follows it
	CreamySource string
	Source       string // of Viscosity
	Notices      Difference
}

// thickens are what thickens and no rule here counts.
var thickens = []constituent.ID{constituent.Fat, constituent.Protein, constituent.Fibre, "STARCH"}

func (g Glass) body() Body {
	creamy := constants()["creamy from"]
	b := Body{
		Celsius: g.Celsius, Creamy: creamy.value, CreamySource: creamy.source,
		Source: constants()["log slope"].source, Notices: differences()[Thick],
	}
	for _, f := range g.figures([]constituent.ID{constituent.Fat, constituent.Protein}, perHundred) {
		switch f.Constituent.ID {
		case constituent.Fat:
			b.Fat = f.Result
		case constituent.Protein:
			b.Protein = f.Result
		}
	}
	b.Viscosity = g.viscosity()
	return b
}

// viscosity is that of water, and what sugars, polyols and acids in it add as if they were sucrose.
func (g Glass) viscosity() Index {
	const unit = "mPa·s"
	k := constants()
	if low, high := k["lowest temperature"].value, k["highest temperature"].value; g.Celsius < low || g.Celsius > high {
		return withheld(unit, "the equation for sucrose does not reach to the serving temperature")
	}
	sugars, polyols, acids, water := g.Pot.Total(constituent.Sugar), g.Pot.Total(constituent.Polyols), g.Pot.Total(constituent.OrganicAcids), g.Pot.Total(constituent.Water)
	ens := g.ensemble()
	drawn := func(name string) []float64 {
		c := k[name]
		return ens.Column(estimate.Input{Central: c.value, Shape: estimate.Uniform, Low: c.low, High: c.high, Stream: ens.Stream(name)})
	}
	off, sour, plain := drawn("viscosity of the equation"), drawn("acid as sucrose"), WaterViscosity(g.Celsius)
	col := make([]float64, g.Pot.N)
	for d := range col {
		solids := max(sugars[d]+polyols[d]+sour[d]*acids[d], 0)
		percent := perHundred * solids / (solids + water[d])
		if !(percent <= k["highest strength"].value) {
			return withheld(unit, "it is stronger than the equation for sucrose reaches")
		}
		col[d] = plain + off[d]*(SucroseViscosity(percent, g.Celsius)-plain)
	}
	x := indexOf(col, unit)
	if g.thickened() {
		x.atMost(nil)
	}
	return x
}

// thickened tells whether there is, or may be, what the equation does not count.
func (g Glass) thickened() bool {
	mass := g.Pot.Central(constituent.Mass)
	if g.Pot.Central(constituent.Alcohol) > mass*constants()["spirit from"].value/perHundred {
		return true
	}
	for _, id := range append([]constituent.ID{constituent.Sugar, constituent.Polyols, constituent.OrganicAcids}, thickens...) {
		if _, rows := g.Pot.Bound(id); len(rows) > 0 {
			return true
		}
	}
	for _, id := range thickens {
		if g.Pot.Central(id) > 0 {
			return true
		}
	}
	return false
}

// WaterViscosity gives the viscosity of water in mPa·s (Patek et al. 2009),
//
//	η = Σ aᵢ·(T/300 K)^bᵢ
func WaterViscosity(celsius float64) (sum float64) {
	const terms, micro = 4, 1000 // µPa·s in a mPa·s
	k := constants()
	warm := solution.Kelvin(celsius) / k["water temperature"].value
	for i := range terms {
		sum += k[fmt.Sprintf("water term %d", i+1)].value * math.Pow(warm, k[fmt.Sprintf("water power %d", i+1)].value)
	}
	return sum / micro
}

// SucroseViscosity gives the viscosity of a solution of sucrose, in mPa·s, by its grams in 100 g
// and its temperature: that of its water, and what Génotelle's equation gives more than for water.
func SucroseViscosity(percent, celsius float64) float64 {
	return WaterViscosity(celsius) + genotelle(percent, celsius) - genotelle(0, celsius)
}

func genotelle(percent, celsius float64) float64 {
	k := func(name string) float64 { return constants()[name].value }
	x := percent / (k("mixing total") - k("mixing slope")*percent)
	warm := (k("middle") - celsius) / (k("below") + celsius)
	return math.Pow(10, k("log slope")*x+k("log offset")+warm*(k("thermal offset")+k("thermal slope")*math.Pow(x, k("power"))))
}
