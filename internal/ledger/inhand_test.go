package ledger_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// figure is what a designer states per 100 g: a figure and its standard deviation, 0 of ± 0
// and None where no ± is stated.
type figure struct{ amount, sd float64 }

func inHand(figures map[constituent.ID]figure) *food.Food {
	f := &food.Food{ID: food.ID{Table: food.Own, Code: "x"}, Edible: food.None}
	for _, c := range constituent.All() {
		if x, ok := figures[c.ID]; ok {
			f.Values = append(f.Values, food.Value{Constituent: c.ID, Amount: x.amount, SD: x.sd, Low: food.None, High: food.None, Limit: food.None, Source: food.Own})
		}
	}
	return f
}

// hundredGrams draws a food and gives the column of a constituent in its unit per 100 g.
func hundredGrams(p *food.Profile, draws int) func(id constituent.ID) []float64 {
	columns := ledger.NewColumns([]*food.Profile{p})
	drawer := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: draws + 1}, columns)
	pot := drawer.NewPot()
	pot.Pour(p, drawer.PerGram(p), column(draws+1, 100), "x")
	return func(id constituent.ID) []float64 {
		col := pot.Total(id)
		for i := range col {
			col[i] *= constituent.Must(id).PerGram
		}
		return col
	}
}

// ± 0 of a total is ± 0: its parts vary within it, and what is not told apart takes what they
// leave; what is stated of 100 g does not fall because something else in them is unknown.
func TestWhatIsStatedExactlyIsExact(t *testing.T) {
	none := food.None
	for name, c := range map[string]struct {
		food   map[constituent.ID]figure
		exact  []constituent.ID
		varies []constituent.ID
	}{
		"totals with parts": {
			map[constituent.ID]figure{"WATER": {70, none}, "FAT": {5, 0}, "FASAT": {2, none}, "SUGAR": {9.9, 0}, "SUCS": {4, 1}, "CHOAVL": {12, 0}, "OA": {5, 0}, "CITAC": {3000, none}, "PROCNT": {1, 0}},
			[]constituent.ID{"FAT", "SUGAR", "CHOAVL", "OA", "PROCNT"},
			[]constituent.ID{"FASAT", "FAT-other", "SUCS", "SUGAR-other", "CITAC", "OA-other", "WATER"},
		},
		"a total that nobody split": {
			map[constituent.ID]figure{"WATER": {85, none}, "FAT": {5, 0}, "SUGAR": {9, 0}, "PROCNT": {1, none}},
			[]constituent.ID{"FAT", "SUGAR"}, []constituent.ID{"WATER", "PROCNT"},
		},
		"a rest of 100 g": {
			map[constituent.ID]figure{"WATER": {70, 0}, "SUGAR": {20, 0}, "SUCS": {20, 0}, "CITAC": {2000, 0}},
			[]constituent.ID{"WATER", "SUGAR", "SUCS", "CITAC"}, nil,
		},
		"no rest of 100 g": {
			map[constituent.ID]figure{"WATER": {70, 1}, "SUGAR": {20, 0}, "FAT": {5, none}, "PROCNT": {5, none}},
			[]constituent.ID{"SUGAR"}, []constituent.ID{"WATER", "FAT", "PROCNT"},
		},
	} {
		drawn := hundredGrams(food.Enter(inHand(c.food), nil), 200)
		for _, id := range c.exact {
			for _, x := range drawn(id) {
				require.InDelta(t, c.food[id].amount, x, 1e-9*c.food[id].amount, "%s of %s", id, name)
			}
		}
		for _, id := range c.varies {
			assert.False(t, estimate.Certain(drawn(id)), "%s of %s", id, name)
		}
		for _, x := range drawn(constituent.Mass) {
			require.InDelta(t, 100, x, 1e-9, name)
		}
	}
}

// A stated part keeps its own spread within an exact total: the rest takes what it leaves.
func TestAPartKeepsItsSpreadWithinAnExactTotal(t *testing.T) {
	drawn := hundredGrams(food.Enter(inHand(map[constituent.ID]figure{"WATER": {80, food.None}, "SUGAR": {10, 0}, "SUCS": {4, 0.4}}), nil), 4000)
	s := estimate.Summarise(drawn("SUCS"))
	assert.InEpsilon(t, 0.4, s.SD, 0.05)
	rest, sucrose := drawn("SUGAR-other"), drawn("SUCS")
	for i, x := range rest {
		require.InDelta(t, 10, x+sucrose[i], 1e-9)
		require.False(t, math.Signbit(x))
	}
}

// Figures that leave no room are drawn to 100 g by what varies most: a measured 20 g ± 0.1 g
// of sugar is not moved by a water that is known to 2 g.
func TestTheWidestGivesWay(t *testing.T) {
	drawn := hundredGrams(food.Enter(inHand(map[constituent.ID]figure{"WATER": {75, 2}, "SUGAR": {20, 0.1}, "SUCS": {20, 0.1}, "FAT": {3, 0.05}, "PROCNT": {2, 0.05}}), nil), 4000)
	assert.InEpsilon(t, 0.1, estimate.Summarise(drawn("SUGAR")).SD, 0.1)
	assert.Less(t, estimate.Summarise(drawn("WATER")).SD, 0.2, "water is what they leave of 100 g")
}
