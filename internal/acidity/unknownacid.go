package acidity

import (
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

// Ends gives ways to make a solution, which holds what is taken, hold none of the acids and
// the most of them.
func (o openAcid) Ends() []func(sol *acid.Solution) {
	if len(o.acids) == 0 {
		return []func(*acid.Solution){func(*acid.Solution) {}}
	}
	return []func(*acid.Solution){
		func(sol *acid.Solution) {
			for id, g := range o.acids {
				addAcid(sol, id, -g.taken)
			}
			AddStrong(sol, o.lessNone)
		},
		func(sol *acid.Solution) {
			for id, g := range o.acids {
				addAcid(sol, id, g.most-g.taken)
			}
			AddStrong(sol, o.lessMost)
		},
	}
}

// addBounded adds the acids of a row that are unknown up to a bound of the food's own, if
// that is more than its minor acids could be.
func (lab *Laboratory) addBounded(in *Ions, pot *ledger.Pot, row int, named float64) {
	f := pot.Rows[row].Profile.Food
	for _, c := range AcidsOf() {
		value, ok := f.Value(c.ID)
		bound := pot.Bounds(row)[c.Order]
		if !ok || value.State != estimate.Unknown || !food.Stated(value.Limit) || !(bound > SpanOf("minor acids").High*named) {
			continue
		}
		share, to := lab.within(SpanOf("acids"), string(c.ID), f.ID), in.grams[c.ID]
		for d := range in.N {
			to[d] += share[d] * bound
		}
		in.Unknown = append(in.Unknown, f.ID.String())
		in.Nobody.add(c.ID, openGrams{share[0] * bound, bound})
	}
}

func addAcid(sol *acid.Solution, id constituent.ID, grams float64) {
	for i, a := range acid.All() {
		if a.Constituent == id {
			sol.Acids[i] = max(sol.Acids[i]+grams/a.Molar, 0)
		}
	}
}

// AddStrong adds a strong ion to a solution, mol of charge: a metal, or below zero an anion.
func AddStrong(sol *acid.Solution, mol float64) {
	if mol < 0 {
		sol.AddIon(-1, -mol)
	} else {
		sol.AddIon(1, mol)
	}
}
