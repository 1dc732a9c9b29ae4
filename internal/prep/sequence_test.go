package prep_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

// few is the length of the columns of the property test.
const few = 4

// kitchen is a pot with something for every step, and what to pour into it.
type kitchen struct {
	columns  *ledger.Columns
	drawer   *ledger.Drawer
	profiles []*food.Profile
}

func newKitchen() kitchen {
	profiles := []*food.Profile{
		milk(), juice(), sugar(), bean(), spirit(), lemon(), water(),
		entered("cloudy", "", map[constituent.ID]float64{"WATER": 86, "CHOCDF": 13, "PROCNT": 1}),
	}
	gas := food.Enter(prep.Gas(), nil)
	columns := ledger.NewColumns(append(profiles, gas), "GLUS", "FRUS", "GALS", "CHOCDF-other", "OA-other", "MASS-other", "LACAC", "ACEAC")
	return kitchen{columns, ledger.NewDrawer(1, few, columns), append(profiles, gas)}
}

func (k kitchen) pour(pot *ledger.Pot, profile int, grams float64) {
	p := k.profiles[profile]
	pot.Pour(p, k.drawer.PerGram(p), even(grams), p.Food.ID.String())
}

func even(x float64) []float64 {
	col := make([]float64, few)
	for d := range col {
		col[d] = x
	}
	return col
}

// random does one step with figures that may or may not be possible, and gives
// what it brought and lost.
func (k kitchen) random(r *rand.Rand, pot *ledger.Pot, f prep.Factors) (brought, lost float64, err error) {
	mass := pot.Mass()[0]
	part := func() []float64 { return even(mass * (0.3 + 0.7*r.Float64())) }
	share := func() []float64 { return even(r.Float64()) }
	aside := func() *ledger.Pot {
		in := ledger.New(k.columns, few)
		k.pour(in, r.IntN(len(k.profiles)-1), 20*r.Float64())
		return in
	}
	var out prep.Outcome
	switch r.IntN(14) {
	case 0:
		out, err = prep.Reduce(pot, part(), f)
	case 1:
		out, err = prep.Strain(pot, part(), prep.Media[r.IntN(len(prep.Media))], f)
	case 2:
		out, err = prep.Curdle(pot, part(), []string{"acid", "rennet"}[r.IntN(2)], 100*r.Float64(), f)
	case 3:
		out, err = prep.Brew(pot, prep.Recipe{Out: part(), Yield: even(0.25 * r.Float64())}, f)
	case 4:
		in := aside()
		brought = in.Mass()[0]
		out, err = prep.Steep(pot, in, prep.Steeping{Collect: []([]float64){nil, part()}[r.IntN(2)]}, f)
	case 5:
		in := aside()
		brought = in.Mass()[0]
		out, err = prep.Wash(pot, in, []([]float64){nil, part()}[r.IntN(2)], f)
	case 6:
		out, err = prep.Freeze(pot, part(), f)
	case 7:
		out, err = prep.Invert(pot, share())
	case 8:
		out, err = prep.Hydrolyse(pot, share())
	case 9:
		out = prep.Caramelise(pot, burning(pot, share()), f)
	case 10:
		out, err = prep.Ferment(pot, []prep.Afterwards{{ID: "ALC", Per100g: even(3 * r.Float64())}, {ID: "LACAC", Per100g: even(r.Float64())}, {ID: "ACEAC", Per100g: even(r.Float64())}})
	case 11:
		out, err = prep.Ferment(pot, []prep.Afterwards{{ID: "SUGAR", Per100g: even(8 * r.Float64())}, {ID: "ALC", Per100g: even(r.Float64())}})
	case 12:
		gas := k.profiles[len(k.profiles)-1]
		out = prep.Aerate(pot, gas, k.drawer.PerGram(gas), even(r.Float64()), "gas")
		brought = out.Added
	case 13:
		brought = 30 * r.Float64()
		k.pour(pot, r.IntN(len(k.profiles)-1), brought)
	}
	if err != nil {
		return 0, 0, err
	}
	if out.Lost.Grams != nil {
		lost = out.Lost.Mass()
	}
	return brought, lost, nil
}

// Whatever is done in whatever order, nothing appears and nothing vanishes:
// what the pot weighs is what was there, and brought, less what was lost; parents
// are the sum of their parts and totals of their rows in every draw; no entry and
// no bound is negative. A step that is refused has changed nothing.
func TestEverySequenceOfStepsKeepsMassParentsAndContributions(t *testing.T) {
	const sequences, steps = 10_000, 6
	k, r := newKitchen(), rand.New(rand.NewPCG(5, 7))
	done := 0
	for sequence := range sequences {
		pot := ledger.New(k.columns, few)
		for p := range 4 {
			k.pour(pot, p, 100*r.Float64())
		}
		for step := range steps {
			before := pot.Mass()
			brought, lost, err := k.random(r, pot, prep.Factors{Seed: uint64(sequence), N: few, Path: "step"})
			after := pot.Mass()
			if err != nil {
				require.Equal(t, before, after, "refused: %v", err)
				continue
			}
			done++
			require.InDelta(t, before[0]+brought, after[0]+lost, 1e-7, "sequence %d, step %d", sequence, step)
			sound(t, pot)
		}
	}
	require.Greater(t, done, sequences*steps/3, "most of the steps were possible")
}

// sound checks the ledger of a pot in every draw.
func sound(t *testing.T, pot *ledger.Pot) {
	t.Helper()
	const rounding = 1e-9
	if pot.Closed() > rounding {
		require.LessOrEqual(t, pot.Closed(), rounding)
	}
	for col, c := range pot.Columns.List {
		rest := pot.Total(c.ID)
		for row := range pot.Rows {
			for d, x := range pot.Cell(row, col) {
				if x < -rounding || math.IsNaN(x) || math.IsInf(x, 0) {
					require.Fail(t, "entry", "%s of row %d, draw %d: %v", c.ID, row, d, x)
				}
				rest[d] -= x
			}
		}
		for d, x := range rest {
			if math.Abs(x) > rounding {
				require.Fail(t, "contributions", "%s, draw %d: rows miss %v", c.ID, d, x)
			}
		}
	}
	for row := range pot.Rows {
		for k, b := range pot.Bounds(row) {
			if b < -rounding || math.IsInf(b, 0) {
				require.Fail(t, "bound", "%s of row %d: %v", constituent.All()[k].ID, row, b)
			}
		}
	}
}
