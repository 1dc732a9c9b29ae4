package assay

import (
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// openAcid is the acid of foods whose acids nobody has stated, at central values: what is
// taken for each, and the most that it can be. Where the food has a published pH, more or
// less acid takes more or less of the strong ion with it.
type openAcid struct {
	acids              map[constituent.ID]openGrams
	lessNone, lessMost float64 // mol of charge, over what is taken, with none and with the most of them
}

type openGrams struct{ taken, most float64 }

func (o *openAcid) add(id constituent.ID, g openGrams) {
	if o.acids == nil {
		o.acids = map[constituent.ID]openGrams{}
	}
	before := o.acids[id]
	o.acids[id] = openGrams{before.taken + g.taken, before.most + g.most}
}

// ends gives ways to make a solution, which holds what is taken, hold none of the acids and
// the most of them.
func (o openAcid) ends() []func(sol *acid.Solution) {
	if len(o.acids) == 0 {
		return []func(*acid.Solution){func(*acid.Solution) {}}
	}
	return []func(*acid.Solution){
		func(sol *acid.Solution) {
			for id, g := range o.acids {
				addAcid(sol, id, -g.taken)
			}
			addStrong(sol, o.lessNone)
		},
		func(sol *acid.Solution) {
			for id, g := range o.acids {
				addAcid(sol, id, g.most-g.taken)
			}
			addStrong(sol, o.lessMost)
		},
	}
}

// addBounded adds the acids of a row that are unknown up to a bound of the food's own, if
// that is more than its minor acids could be.
func (lab *laboratory) addBounded(in *ions, pot *ledger.Pot, row int, named float64) {
	f := pot.Rows[row].Profile.Food
	for _, c := range acidsOf() {
		value, ok := f.Value(c.ID)
		bound := pot.Bounds(row)[c.Order]
		if !ok || value.State != estimate.Unknown || !food.Stated(value.Limit) || !(bound > spanOf("minor acids").high*named) {
			continue
		}
		share := lab.between(spanOf("acids"), string(c.ID), f.ID)
		for d := range in.n {
			in.grams[c.ID][d] += share[d] * bound
		}
		in.unknown = append(in.unknown, f.ID.String())
		in.nobody.add(c.ID, openGrams{share[0] * bound, bound})
	}
}

func addAcid(sol *acid.Solution, id constituent.ID, grams float64) {
	for i, a := range acid.All() {
		if a.Constituent == id {
			sol.Acids[i] = max(sol.Acids[i]+grams/a.Molar, 0)
		}
	}
}

func addStrong(sol *acid.Solution, mol float64) {
	if mol < 0 {
		sol.AddIon(-1, -mol)
	} else {
		sol.AddIon(1, mol)
	}
}

// widen lets the pH under the meter, and the acidity, be all that their unknown acids
// allow: what they are with none and with the most of these. Draws between the two would
// make a little of them look as unlikely as much.
func (c *Chemistry) widen(in ions, pot *ledger.Pot) error {
	if !in.open() {
		return nil
	}
	s, err := acid.NewSolver(MeterCelsius)
	if err != nil {
		return err
	}
	sol, mass := acid.New(0), pot.Central(constituent.Mass)
	if in.unneutral > 0 { // as if their potassium were all that their acids can take
		in.fill(sol, 0)
		addStrong(sol, in.unneutral)
		state, err := in.solve(s, sol, acid.State{}, MeterCelsius)
		if err != nil {
			return err
		}
		c.PHMeter.reach(state.PH)
	}
	for _, nobody := range in.nobody.ends() {
		for _, vouched := range in.vouched.ends() {
			in.fill(sol, 0)
			nobody(sol)
			vouched(sol)
			state, err := in.solve(s, sol, acid.State{}, MeterCelsius)
			if err != nil {
				return err
			}
			c.PHMeter.reach(state.PH)
			if err := degas(s, sol, state); err != nil {
				return err
			}
			for i := range c.Acidity {
				end, err := s.Titrate(sol, c.Acidity[i].EndPoint, state)
				if err != nil {
					return err
				}
				c.Acidity[i].reach(asCitric(max(end.Base*sol.Solvent, 0))/mass, c.Density.Mean)
			}
		}
	}
	return nil
}

func (e *Estimate) reach(x float64) { e.Low, e.High = min(e.Low, x), max(e.High, x) }

// reach widens an acidity, in 100 g as in a litre of a density in g/ml.
func (a *Acidity) reach(per100g, density float64) {
	a.Per100g.reach(per100g)
	a.PerLitre.reach(per100g / hundredGrams * density * perLitre)
}

const hundredGrams = 100

// withholdVague withholds an acidity, and what else hangs on how much acid there is, where
// the acids that nobody has stated leave it open.
func (c *Chemistry) withholdVague(in ions) {
	foods := slices.Concat(in.unknown, in.untold)
	if len(foods) == 0 {
		return
	}
	first := c.Acidity[0].Per100g
	if (first.High-first.Low)/2 <= spanOf("widest acidity").high*first.Mean {
		c.BrixAcid.reach(c.Brix.Mean / first.High)
		c.BrixAcid.reach(c.Brix.Mean / max(first.Low, HardlySour))
		return
	}
	why := "acids unknown of " + listed(foods) + ": titrate it"
	bounds := slices.Clone(c.Acidity)
	c.withholdAcidity(why)
	for i, b := range bounds {
		c.Acidity[i].Per100g.Low, c.Acidity[i].Per100g.High = b.Per100g.Low, b.Per100g.High
		c.Acidity[i].PerLitre.Low, c.Acidity[i].PerLitre.High = b.PerLitre.Low, b.PerLitre.High
	}
	c.Capacity.withhold(why)
	c.StrongIons.withhold(why)
}
