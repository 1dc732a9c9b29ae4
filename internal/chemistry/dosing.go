package chemistry

import (
	"errors"
	"math"
	"sync"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/solution"
	"sipsum/internal/unit"
)

// Dose is how much of a stock of an acid brings 100 g of a liquid to a titratable
// acidity, at central values.
type Dose struct {
	Acid    string  // its name
	Percent float64 // g of it in 100 g of the stock
	Acidity float64 // g/100 g as citric acid, of the liquid with the stock in it
	Ml      float64 // of the stock
	PH      float64 // there, at MeterCelsius; NaN: more acid than was titrated
}

// stock is a row of data/acid_doses.csv.
type stock struct {
	acid    acid.Index
	percent float64
}

var stocks = sync.OnceValue(func() []stock {
	var list []stock
	for _, row := range embedded.Rows("acid_doses.csv") {
		list = append(list, stock{acid.Must(row.Text("acid")), row.Number("percent")})
	}
	return list
})

const (
	targets  = 3   // acidities above the present one
	aboveIt  = 0.5 // the first is at least half a step above it
	perStep  = 8.0 // steps of about an eighth of the present acidity
	mostDose = 1.0 // grams of stock in a gram of the liquid
)

// doses gives, for the stocks and for some round acidities above the present one, what
// it takes and where the pH comes to.
func doses(s *acid.Solver, still *acid.Solution, in acidity.Ions, grams, present float64) ([]Dose, error) {
	var list []Dose
	step := roundStep(max(present, acidityFloor) / perStep)
	for _, k := range stocks() {
		a := acid.All()[k.acid]
		poured := k.solution(a)
		ml := k.ml(a)
		for i := range targets {
			want := step * (math.Ceil(present/step+aboveIt) + float64(i))
			dose, err := acid.Dose(still, poured, mostDose*grams, want, func(mixed *acid.Solution) (float64, error) {
				base, err := s.Base(mixed, acidity.EndPoints[0], acid.State{})
				added := (mixed.Solvent - still.Solvent) / poured.Solvent
				return acidity.AsCitric(base*mixed.Solvent) / (grams + added), err
			})
			if errors.Is(err, acid.ErrOutOfReach) {
				break
			}
			if err != nil {
				return nil, err
			}
			mixed := acid.New(0)
			mixed.Pour(still, 1)
			mixed.Pour(poured, dose)
			state, err := s.Solve(mixed, acid.State{})
			if err != nil {
				return nil, err
			}
			list = append(list, Dose{Acid: a.Name, Percent: k.percent, Acidity: want, Ml: unit.Hundred * dose / grams * ml, PH: in.Within(state.PH)})
		}
	}
	return list, nil
}

// acidityFloor keeps the steps of a liquid without acidity apart, g/100 g.
const acidityFloor = 0.1

// solution is a gram of a stock.
func (k stock) solution(a acid.Acid) *acid.Solution {
	sol := acid.New((1 - k.percent/unit.Hundred) / unit.Kilo)
	sol.Acids[k.acid] = k.percent / unit.Hundred / a.Molar
	return sol
}

// ml is the volume of a gram of a stock.
func (k stock) ml(a acid.Acid) float64 {
	density, _ := solution.Density(map[constituent.ID]float64{a.Constituent: k.percent, constituent.Water: unit.Hundred - k.percent})
	return 1 / density
}

// roundStep gives the largest of 1, 2 and 5 times a power of ten that is no more than
// a step.
func roundStep(step float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(step)))
	for _, m := range []float64{5, 2} {
		if m*power <= step {
			return m * power
		}
	}
	return power
}
