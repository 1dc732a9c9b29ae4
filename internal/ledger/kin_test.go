package ledger_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// fruit makes a fruit of grams and milligrams in 100 g with a stated spread.
func fruit(name, group string, values ...food.Value) *food.Food {
	f := &food.Food{ID: food.ID{Table: "own", Code: name}, Names: []food.Name{{Text: name}}, Group: group, Edible: food.None}
	for _, v := range append(values, food.Value{Constituent: "WATER", Amount: 85, Limit: food.None}, food.Value{Constituent: "CHOCDF", Amount: 14, Limit: food.None}) {
		v.Low, v.High, v.Source = food.None, food.None, "test"
		f.Values = append(f.Values, v)
	}
	return f
}

func measured(id constituent.ID, amount, sd float64) food.Value {
	return food.Value{Constituent: id, Amount: amount, SD: sd, Limit: food.None, State: estimate.Measured}
}

// kinNames are foods with a kin each.
var kinNames = []struct{ name, group string }{
	{"Yuzu juice", "citrus juice"}, {"Plum, raw", "fruit"}, {"Redcurrant, raw", "fruit"}, {"Rhubarb, raw", "fruit"}, {"Grape, raw", "fruit"}, {"Pear, raw", "fruit"}, {"Blueberry, raw", "fruit"},
}

// Whatever is measured of a food, its kin never makes more of its acids than it has, never
// changes what is measured, and never passes a limit that is published: at the central
// values and in every draw.
func TestASplitIsNeverMoreThanItsTotal(t *testing.T) {
	const foods, draws = 200, 200
	r := rand.New(rand.NewPCG(7, 7))
	split := 0
	for i := range foods {
		of := kinNames[r.IntN(len(kinNames))]
		total := 0.1 + 5*r.Float64()
		values := []food.Value{measured("OA", total, total*0.3*r.Float64())}
		held := 0.0
		if r.IntN(2) == 0 {
			held = 1000 * total * r.Float64() / 2
			values = append(values, measured("MALAC", held, held/10))
		}
		limit := food.None
		if r.IntN(2) == 0 {
			limit = 1000 * total * r.Float64()
			values = append(values, food.Value{Constituent: "CITAC", Amount: food.None, SD: food.None, Limit: limit, State: estimate.Unknown})
		}
		f := fruit(of.name, of.group, values...)
		f.ID.Code = fmt.Sprint(i)
		p := food.Enter(f, nil)
		sum := 0.0
		for _, leaf := range constituent.Sums().Leaves(constituent.OrganicAcids) {
			sum += p.Cell(leaf.ID).Amount
			if p.Cell(leaf.ID).By == food.ByKin {
				split++
				assert.Equal(t, estimate.Calculated, p.Cell(leaf.ID).State)
				assert.NotEqual(t, held > 0 && leaf.ID == "MALAC", true, "what is measured stands")
			}
		}
		oa := p.Cell("OA").Amount
		require.LessOrEqual(t, sum, oa+1e-12, f.Name())
		columns := ledger.NewColumns([]*food.Profile{p})
		cells := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: draws + 1}, columns).PerGram(p)
		scale := 0.9 // closing the mass may move a gram by a little
		for d := range draws + 1 {
			named := 0.0
			for _, at := range columns.Below(constituent.OrganicAcids) {
				x := 0.0
				if cells[at] != nil {
					x = cells[at][d]
				}
				require.GreaterOrEqual(t, x, 0.0)
				named += x
			}
			if at := columns.At("CITAC"); at >= 0 && cells[at] != nil && food.Stated(limit) && p.Cell("CITAC").By == food.ByKin {
				require.LessOrEqual(t, scale*cells[at][d], limit/1e5, "%s: a published limit stands", f.Name())
			}
		}
	}
	assert.Greater(t, split, foods, "most of them are split")
}

// The shares of a split vary as data/kin_shares.csv says, and all of them together as the
// total does: sweet citrus has 84 % citric acid, 5 to 95 % within ten points of its limits.
func TestASplitVariesAsItsKinDo(t *testing.T) {
	const draws = 20000
	p := food.Enter(fruit("Orange, raw", "citrus fruit", measured("OA", 1, 0.05)), nil)
	columns := ledger.NewColumns([]*food.Profile{p})
	cells := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: draws + 1}, columns).PerGram(p)
	all := make([]float64, draws+1)
	for _, at := range columns.Below(constituent.OrganicAcids) {
		for d, x := range cells[at] {
			all[d] += x
		}
	}
	assert.InDelta(t, 0.01, all[0], 1e-4)
	assert.InDelta(t, 0.05, stat.StdDev(all[1:], nil)/stat.Mean(all[1:], nil), 0.01, "the total's own spread")
	for _, acid := range []constituent.ID{"CITAC", "MALAC"} {
		share := make([]float64, draws+1)
		for d, x := range cells[columns.At(acid)] {
			share[d] = x / all[d]
		}
		limits := estimate.Summarise(share)
		want := publishedShare(t, "sweet citrus", acid)
		assert.InDelta(t, want.share, share[0], 0.005, acid)
		assert.InDelta(t, want.low, limits.Low, 0.01, acid)
		assert.InDelta(t, want.high, limits.High, 0.01, acid)
	}
}

type kinShare struct{ share, low, high float64 }

// publishedShare reads a row of data/kin_shares.csv.
func publishedShare(t *testing.T, kin string, acid constituent.ID) kinShare {
	for _, row := range embedded.Rows("kin_shares.csv") {
		if row.Text("kin") == kin && row.Text("constituent") == string(acid) {
			return kinShare{row.Number("share"), row.Number("low"), row.Number("high")}
		}
	}
	t.Fatal("no such row")
	return kinShare{}
}
