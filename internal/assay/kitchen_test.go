package assay_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/ledger/ledgertest"
	"sipsum/internal/prep"
)

// kitchen applies random steps to a pot.
type kitchen struct {
	*rand.Rand
	t        *testing.T
	pot      *ledger.Pot
	drawer   *ledger.Drawer
	profiles []*food.Profile
	water    *food.Profile
	steps    map[string]int // applied, by kind
}

// between is a column that is uniform around a random share of x.
func (k *kitchen) between(x, low, high float64) []float64 {
	middle := x * (low + (high-low)*k.Float64())
	col := make([]float64, k.pot.N)
	estimate.Input{Central: middle, Shape: estimate.Uniform, Low: middle * 0.97, High: middle * 1.03, Stream: estimate.Key(k.Uint64())}.Fill(col)
	return col
}

func (k *kitchen) pour(p *food.Profile, grams []float64) float64 {
	k.pot.Pour(p, k.drawer.PerGram(p), grams, p.Food.ID.String())
	return grams[0]
}

// step applies one random step and gives the mass that it brought.
func (k *kitchen) step() (kind string, out prep.Outcome, err error) {
	f := prep.Factors{Ensemble: estimate.Ensemble{Seed: k.Uint64(), N: k.pot.N}, Path: "random"}
	mass := k.pot.Mass()[0]
	switch kind = []string{"reduce", "strain", "split", "heat", "dilute", "chill", "add"}[k.IntN(7)]; kind {
	case "reduce":
		out, err = prep.Reduce(k.pot, k.between(mass, 0.3, 1.1), f)
	case "strain":
		out, err = prep.Strain(k.pot, k.between(mass, 0.3, 1.1), []string{"cloth", "paper", "metal"}[k.IntN(3)], f)
	case "split":
		ids := []constituent.ID{"FAT", "PROCNT", "SUGAR", "CHOCDF", "OA", "NA", "CAFFN", "MASS-other"}
		var keep []prep.Kept
		for range k.IntN(4) {
			keep = append(keep, prep.Kept{ID: ids[k.IntN(len(ids))], Share: k.between(1, 0, 0.9)})
		}
		var collect []float64
		if k.IntN(2) == 0 {
			collect = k.between(mass, 0.3, 1)
		}
		out, err = prep.Split(k.pot, keep, collect)
	case "heat":
		codes := []string{"2151", "5002", "5009", "1", "0801"}
		retention, ok := prep.FindRetention(codes[k.IntN(len(codes))])
		require.True(k.t, ok)
		out = prep.Heat(k.pot, retention, f)
	case "dilute":
		var grams []float64
		if grams, err = prep.UpTo(k.pot, k.between(mass, 0.8, 1.5)); err == nil {
			out = prep.Water(k.pot, k.water, k.drawer.PerGram(k.water), grams, "dilute")
		}
	case "chill":
		out = prep.Water(k.pot, k.water, k.drawer.PerGram(k.water), k.between(50, 0, 1), "chill")
	case "add":
		out.Added = k.pour(k.profiles[k.IntN(len(k.profiles))], k.between(80, 0, 1))
	}
	return kind, out, err
}

// Whatever is done to a pot, mass closes, nothing is below zero, rows add up to
// totals and children to parents.
func TestMassClosesAfterAnySequenceOfSteps(t *testing.T) {
	lib := assaytest.Core(t)
	profiles := []*food.Profile{food.Enter(prep.PureWater(), nil)}
	for _, code := range []string{"orange-juice", "milk-whole", "sugar-white", "citric-acid", "espresso", "honey", "cream-heavy", "lemon-juice", "rum-40", "strawberry", "oat-drink"} {
		f, ok := lib[food.ID{Table: "core", Code: code}]
		require.True(t, ok, code)
		profiles = append(profiles, food.Enter(f, nil))
	}
	const sequences, steps, n = 500, 8, 4
	columns := ledger.NewColumns(profiles)
	k := &kitchen{
		Rand: rand.New(rand.NewPCG(3, 4)), t: t, profiles: profiles[1:], water: profiles[0],
		drawer: ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: n}, columns), steps: map[string]int{},
	}
	refused := 0
	for range sequences {
		k.pot = ledger.New(columns, n)
		for range 1 + k.IntN(3) {
			k.pour(k.profiles[k.IntN(len(k.profiles))], k.between(300, 0.1, 1))
		}
		for range steps {
			before := k.pot.Mass()
			kind, out, err := k.step()
			after := k.pot.Mass()
			if err != nil {
				refused++
				require.Equal(t, before, after, "a refused %s changes nothing", kind)
				continue
			}
			k.steps[kind]++
			lost := 0.0
			if out.Lost.Grams != nil {
				lost = out.Lost.Mass()
			}
			require.InDelta(t, before[0]+out.Added, after[0]+lost, exact*max(1, before[0]), "%s", kind)
			for row := range k.pot.Rows {
				for col, c := range columns.List {
					for _, x := range k.pot.Cell(row, col) {
						require.False(t, math.IsNaN(x) || x < 0, "%s leaves %g g of %s", kind, x, c.ID)
					}
				}
			}
		}
		require.Less(t, ledgertest.Closed(k.pot), exact)
		for _, c := range constituent.All() {
			if c.Kind != constituent.Figure && len(columns.Below(c.ID)) > 0 {
				assaytest.RowsSumTo(t, k.pot, c)
			}
		}
	}
	t.Logf("%d sequences of %d steps: applied %v, refused %d", sequences, steps, k.steps, refused)
	for _, kind := range []string{"reduce", "strain", "split", "heat", "dilute", "chill", "add"} {
		assert.Greater(t, k.steps[kind], sequences/10, kind)
	}
}
