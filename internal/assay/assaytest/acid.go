package assaytest

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/chemistry"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

// Glass gives the chemistry of 100 g of a food at a temperature.
func Glass(t testing.TB, foods Library, of string, celsius int) *chemistry.Chemistry {
	t.Helper()
	const draws = 200 // equilibria are solved for no more
	return Assay(t, foods, fmt.Sprintf("drink: x\nserves: 1\nat: %d °C\nbuild: [100 g %s]\n", celsius, of), draws).Chemistry
}

// WithoutPH gives a library of which nobody has published a pH: compositions alone.
func WithoutPH(foods Library) Library {
	bare := Library{}
	for id := range foods {
		bare[id] = foods.without(id, "PH", "pH-brewed")
	}
	return bare
}

// Without gives a library with a value of one food taken out.
func Without(foods Library, id food.ID, of constituent.ID) Library {
	other := maps.Clone(foods)
	other[id] = foods.without(id, of)
	return other
}

func (l Library) without(id food.ID, of ...constituent.ID) *food.Food {
	f := *l[id]
	f.Values = slices.DeleteFunc(slices.Clone(f.Values), func(v food.Value) bool { return slices.Contains(of, v.Constituent) })
	return &f
}

// Exact makes a food of invented figures per 100 g that have no spread: tests of it are of
// arithmetic, not of foods.
func Exact(code, group string, per100g map[constituent.ID]float64) *food.Food {
	f := &food.Food{ID: food.ID{Table: food.Own, Code: code}, Group: group, Edible: food.None, Density: food.Density{GramsPerMl: food.None, SD: food.None}}
	for id, amount := range per100g {
		f.Values = append(f.Values, food.Value{
			Constituent: id, Amount: amount, Low: food.None, High: food.None, Limit: food.None, State: estimate.Measured, Source: "invented",
		})
	}
	slices.SortFunc(f.Values, func(a, b food.Value) int { return strings.Compare(string(a.Constituent), string(b.Constituent)) })
	return f
}

// Bench makes pots of foods without a drink around them.
type Bench struct {
	Lab    *acidity.Laboratory
	Drawer *ledger.Drawer
	Water  *food.Profile

	profiles map[*food.Food]*food.Profile
}

// NewBench lays foods out for a number of draws.
func NewBench(draws int, foods ...*food.Food) *Bench {
	b := &Bench{Water: food.Enter(prep.PureWater(), nil), profiles: map[*food.Food]*food.Profile{}}
	profiles := []*food.Profile{b.Water}
	for _, f := range foods {
		b.profiles[f] = food.Enter(f, nil)
		profiles = append(profiles, b.profiles[f])
	}
	ens := estimate.Ensemble{Seed: 1, N: draws + 1}
	b.Drawer = ledger.NewDrawer(ens, ledger.NewColumns(profiles))
	b.Lab = acidity.NewLaboratory(ens, b.Drawer, b.Water, nil)
	return b
}

// Pot pours grams of foods into a pot, as a walk does: what is known of the pH of each goes
// with it.
func (b *Bench) Pot(grams float64, of ...*food.Food) *ledger.Pot {
	pot := b.Drawer.NewPot()
	for _, f := range of {
		p, col := b.profiles[f], b.Lab.Ens.Of(grams)
		pot.Pour(p, b.Drawer.PerGram(p), col, f.ID.String())
		b.Lab.Calibrate(pot, col)
	}
	return pot
}

// Held gives what decides the acidity of a pot in one draw.
func (b *Bench) Held(pot *ledger.Pot, draw int) *acid.Solution {
	sol := acid.New(0)
	b.Lab.IonsOf(pot, pot.N).Fill(sol, draw)
	return sol
}

// Profile gives a food as it enters the ledger.
func (b *Bench) Profile(f *food.Food) *food.Profile { return b.profiles[f] }
