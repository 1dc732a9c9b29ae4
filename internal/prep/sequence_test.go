package prep_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/ledger/ledgertest"
	"sipsum/internal/prep"
)

// few is the length of the columns of the property test.
const few = 4

// pureWater is the place of the water among the profiles of the property test.
const pureWater = 6

// agents are the ways to clarify.
var agents = []string{"milk", "egg white", "gelatine", "agar", "centrifuge"}

// kitchen is a pot with something for every step, and what to pour into it.
type kitchen struct {
	columns  *ledger.Columns
	drawer   *ledger.Drawer
	profiles []*food.Profile
}

func newKitchen() kitchen {
	profiles := []*food.Profile{
		milk(), juice(), sugar(), bean(), spirit(), lemon(), water(),
		entered("koji rice", "cereal", map[constituent.ID]float64{"WATER": 40, "STARCH": 50, "PROCNT": 5, "FIBTG": 1, "GLUS": 3, "ASH": 1}),
		entered("egg white", "egg", map[constituent.ID]float64{"WATER": 87.6, "PROCNT": 10.9, "GLUS": 0.7, "FAT": 0.2, "ASH": 0.6}),
		entered("cloudy", "", map[constituent.ID]float64{"WATER": 86, "CHOCDF": 13, "PROCNT": 1}),
	}
	gas := food.Enter(prep.Gas(), nil)
	columns := ledger.NewColumns(append(profiles, gas), "GLUS", "FRUS", "GALS", "CHOCDF-other", "OA-other", "MASS-other", "LACAC", "ACEAC", "MALS")
	return kitchen{columns, ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: few}, columns), append(profiles, gas)}
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

// done is what a step did: what it poured in, what it may have made, what it lost.
type done struct {
	poured *ledger.Pot // nothing: empty
	gas    float64
	made   []constituent.ID
	lost   float64
}

// grams gives the grams of a constituent that were poured in, in each draw.
func (s done) grams(id constituent.ID) []float64 {
	col := s.poured.Total(id)
	for d := range col {
		if id == constituent.CarbonDioxide || id == constituent.Mass {
			col[d] += s.gas
		}
	}
	return col
}

// random does one step with figures that may or may not be possible.
func (k kitchen) random(r *rand.Rand, pot *ledger.Pot, f prep.Factors) (did done, err error) {
	mass := pot.Mass()[0]
	did.poured = ledger.New(k.columns, few)
	part := func() []float64 { return even(mass * (0.3 + 0.7*r.Float64())) }
	share := func() []float64 { return even(r.Float64()) }
	aside := func() *ledger.Pot {
		in := ledger.New(k.columns, few)
		profile, grams := r.IntN(len(k.profiles)-1), 20*r.Float64()
		k.pour(in, profile, grams)
		k.pour(did.poured, profile, grams)
		return in
	}
	var out prep.Outcome
	switch r.IntN(19) {
	case 0:
		out, err = prep.Reduce(pot, part(), f)
	case 1:
		out, err = prep.Strain(pot, part(), media[r.IntN(len(media))], f)
		did.made = madeBy(&drink.Strain{Head: drink.Head{Word: "strain"}})
	case 2:
		out, err = prep.Curdle(pot, part(), []string{"acid", "rennet"}[r.IntN(2)], 100*r.Float64(), f)
		did.made = append(madeBy(&drink.Curdle{Head: drink.Head{Word: "curdle"}}), "phosphate") // what was colloidal dissolves
	case 3:
		out, err = prep.Brew(pot, prep.Recipe{Out: part(), Yield: even(0.25 * r.Float64())}, f)
		did.made = madeBy(&drink.Brew{Head: drink.Head{Word: "brew"}})
	case 4:
		in := aside()
		did.made = madeBy(&drink.Steep{Head: drink.Head{Word: "steep"}})
		out, err = prep.Steep(pot, in, prep.Steeping{Collect: []([]float64){nil, part()}[r.IntN(2)]}, f)
	case 5:
		in := aside()
		out, err = prep.Wash(pot, in, []([]float64){nil, part()}[r.IntN(2)], f)
	case 6:
		out, err = prep.Freeze(pot, part(), math.NaN(), f)
	case 7:
		out, err = prep.Invert(pot, share())
		did.made = append(madeBy(&drink.Invert{Head: drink.Head{Word: "invert"}}), constituent.AddedSugar) // with its water
	case 8:
		out, err = prep.Hydrolyse(pot, share())
		did.made = append(madeBy(&drink.Hydrolyse{Head: drink.Head{Word: "hydrolyse"}}), constituent.AddedSugar) // with its water
	case 9:
		out = prep.Caramelise(pot, burning(pot, share()), f)
		did.made = madeBy(&drink.Caramelise{Head: drink.Head{Word: "caramelise"}})
	case 10:
		did.made = []constituent.ID{"ALC", "LACAC", "ACEAC", constituent.MassOther, constituent.Water}
		out, err = prep.Ferment(pot, []prep.Afterwards{{ID: "ALC", Per100g: even(3 * r.Float64())}, {ID: "LACAC", Per100g: even(r.Float64())}, {ID: "ACEAC", Per100g: even(r.Float64())}}, unnamed(pot))
	case 11:
		did.made = []constituent.ID{"ALC", constituent.MassOther, constituent.Water}
		out, err = prep.Ferment(pot, []prep.Afterwards{{ID: "SUGAR", Per100g: even(8 * r.Float64())}, {ID: "ALC", Per100g: even(r.Float64())}}, unnamed(pot))
	case 12:
		gas := k.profiles[len(k.profiles)-1]
		out = prep.Aerate(pot, gas, k.drawer.PerGram(gas), even(r.Float64()), "gas")
		did.made, did.gas = madeBy(&drink.Carbonate{Head: drink.Head{Word: "carbonate"}}), out.Added
	case 14:
		out, err = prep.Convert(pot, share(), []string{"glucose", "maltose"}[r.IntN(2)])
		did.made = append(madeBy(&drink.Convert{Head: drink.Head{Word: "convert"}}), constituent.Sugar)
	case 15:
		in := aside()
		by := agents[r.IntN(len(agents))]
		out, err = prep.Clarify(pot, in, prep.Clarifying{By: by, Collect: part(), Celsius: 100 * r.Float64()}, f)
		if did.made = madeBy(&drink.Clarify{Head: drink.Head{Word: "clarify"}}); by == "milk" {
			did.made = append(did.made, "phosphate") // what was colloidal dissolves
		}
	case 18:
		out, err = k.foam(r, pot, f)
		did.made, did.gas = madeBy(&drink.Foam{Head: drink.Head{Word: "foam"}, Gas: drink.CO2}), out.Added
	case 16:
		out, err = prep.Evaporate(pot, part(), f)
	case 17:
		ice, refused := prep.Melted(pot, prep.Chilling{From: even(90 * r.Float64()), To: even(20 * r.Float64()), Ice: even(-20 * r.Float64()), Besides: share()}, f)
		if err = refused; err == nil {
			k.pour(pot, pureWater, ice[0])
			k.pour(did.poured, pureWater, ice[0])
		}
	case 13:
		profile, grams := r.IntN(len(k.profiles)-1), 30*r.Float64()
		k.pour(pot, profile, grams)
		k.pour(did.poured, profile, grams)
	}
	if out.Lost.Grams != nil {
		did.lost = out.Lost.Mass()
	}
	return did, err
}

// Whatever is done in whatever order, nothing appears and nothing vanishes:
// what the pot weighs is what was there, and brought, less what was lost; parents
// are the sum of their parts and totals of their rows in every draw; no entry and
// no bound is negative, and nothing is more than all. What a step does not make is no
// more than there was, and was poured. A step that is refused has changed nothing.
func TestEverySequenceOfStepsKeepsMassParentsAndContributions(t *testing.T) {
	const sequences, steps = 10_000, 6
	k, r := newKitchen(), rand.New(rand.NewPCG(5, 7))
	possible := 0
	for sequence := range sequences {
		pot := ledger.New(k.columns, few)
		for p := range 4 {
			k.pour(pot, p, 100*r.Float64())
		}
		for step := range steps {
			before := all(pot)
			did, err := k.random(r, pot, prep.Factors{Ensemble: estimate.Ensemble{Seed: uint64(sequence), N: few}, Path: "step"})
			after := all(pot)
			if err != nil {
				require.Equal(t, before, after, "refused: %v", err)
				continue
			}
			possible++
			brought := did.grams(constituent.Mass)[0]
			require.InDelta(t, before[constituent.Mass][0]+brought, after[constituent.Mass][0]+did.lost, 1e-7, "sequence %d, step %d", sequence, step)
			grown(t, k.columns, before, after, did)
			sound(t, pot)
		}
	}
	require.Greater(t, possible, sequences*steps/3, "most of the steps were possible")
}

// all gives the column of everything that a pot carries, and of its mass.
func all(pot *ledger.Pot) map[constituent.ID][]float64 {
	totals := map[constituent.ID][]float64{constituent.Mass: pot.Mass()}
	for _, c := range pot.Columns.List {
		totals[c.ID] = pot.Total(c.ID)
	}
	return totals
}

// grown checks that nothing has become more but what was poured and what the step makes.
func grown(t *testing.T, columns *ledger.Columns, before, after map[constituent.ID][]float64, did done) {
	t.Helper()
	const rounding = 1e-9
	for _, c := range columns.List {
		if slices.Contains(did.made, c.ID) {
			continue
		}
		poured := did.grams(c.ID)
		for d, x := range after[c.ID] {
			if x > before[c.ID][d]+poured[d]+rounding {
				require.Fail(t, "more than there was", "%s, draw %d: %v became %v, poured %v", c.ID, d, before[c.ID][d], x, poured[d])
			}
		}
	}
}

// sound checks the ledger of a pot in every draw.
func sound(t *testing.T, pot *ledger.Pot) {
	t.Helper()
	const rounding = 1e-9
	if ledgertest.Closed(pot) > rounding {
		require.LessOrEqual(t, ledgertest.Closed(pot), rounding)
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
	mass := pot.Mass()
	for _, c := range pot.Columns.List {
		for d, x := range pot.Total(c.ID) {
			if x > mass[d]+rounding {
				require.Fail(t, "more than all", "%s, draw %d: %v of %v", c.ID, d, x, mass[d])
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

// madeBy lists what a step may make.
func madeBy(step drink.Step) []constituent.ID { return prep.MethodOf(step).Makes(step) }
