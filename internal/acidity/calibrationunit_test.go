package acidity_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

func pHOf(t *testing.T, b *assaytest.Bench, pot *ledger.Pot) []float64 {
	t.Helper()
	pH, _, err := b.Lab.Acidity(pot)
	require.NoError(t, err)
	return pH
}

// silentAt is a juice of which only the pH and some metals are stated.
func silentAt(pH float64) figures {
	return with(lacking(juice, "CITAC"), figures{"PH": pH})
}

// Where a composition tells nothing a food has the pH that has been published: one work may
// be off by 0.4 of a pH (row "pH from one work"). Draws beyond those for which equilibria
// are solved have it too.
func TestAFoodHasThePHThatIsPublished(t *testing.T) {
	f := assaytest.Exact("silent", "fruit juice", silentAt(3.5))
	b := assaytest.NewBench(260, f)
	pot := b.Pot(100, f)
	pH := pHOf(t, b, pot)
	assert.InDelta(t, 3.5, pH[0], 1e-6)
	spans(t, pH, 3.1, 3.9)
	spans(t, pH[acidity.ChemistryDraws:], 3.1, 3.9)
	in := b.Lab.IonsOf(pot, pot.N)
	assert.Equal(t, []string{"own:silent"}, in.Untold)
	assert.Empty(t, in.Unknown)
	assert.True(t, in.Open())
	assert.True(t, in.Silent)
	require.Len(t, in.RestsOn, 1)
	assert.Equal(t, acidity.Calibration{Food: f.ID, Low: 3.1, High: 3.9, Source: "invented"}, in.RestsOn[0])
	assert.True(t, acidity.RestsOnPublished(pot))
	assert.True(t, in.Alone(pot))

	twice := b.Pot(50, f, f)
	assert.InDeltaSlice(t, pH, pHOf(t, b, twice), 1e-4, "two jars of one food are one food")
	in = b.Lab.IonsOf(twice, 10)
	assert.Len(t, in.RestsOn, 1, "and said once")
	assert.True(t, in.Alone(twice))
	mixed := b.Pot(50, f)
	mixed.Pour(b.Water, b.Drawer.PerGram(b.Water), b.Lab.Ens.Of(50), "")
	assert.False(t, b.Lab.IonsOf(mixed, 1).Alone(mixed))

	b.Lab.Ens.Journal = &estimate.Journal{}
	asked := acidity.NewLaboratory(b.Lab.Ens, b.Drawer, b.Water, nil)
	asked.Calibrate(b.Pot(100, f), b.Lab.Ens.Of(100))
	entries := b.Lab.Ens.Journal.Entries()
	require.Len(t, entries, 1)
	assert.Equal(t, estimate.Tables, entries[0].Cause)
	assert.Equal(t, "published pH of own:silent", entries[0].Name)

	few := assaytest.NewBench(acidity.ChemistryDraws, f)
	assert.InDelta(t, pH[0], pHOf(t, few, few.Pot(100, f))[0], 1e-9)
}

// How a published pH is read: what instruments and laboratories are off by is in its range,
// and its middle within the middle eight tenths.
func TestRangeOfAPublishedPH(t *testing.T) {
	for _, c := range []struct {
		name             string
		amount, from, to float64
		source           string
		low, high        float64
		central          float64
	}{
		{"one work", 3.50, food.None, food.None, "a", 3.10, 3.90, 3.50},
		{"one work with its own range", 3.50, 2.80, 3.60, "a", 2.80, 3.90, 3.50},
		{"two works, a meter beside their range, and half of 0.4 beside their mean", 3.50, 3.48, 3.95, "a b", 3.30, 4.00, 3.50},
		{"three that agree", 3.500, food.None, food.None, "a b c", 3.37, 3.63, 3.50},
		{"at its own end", 3.00, 3.00, 5.00, "a b", 2.80, 5.05, 3.025},
		{"at its other end", 5.00, 3.00, 5.00, "a b", 2.95, 5.20, 4.975},
	} {
		f := assaytest.Exact("silent", "fruit juice", silentAt(c.amount))
		i := slices.IndexFunc(f.Values, func(v food.Value) bool { return v.Constituent == "PH" })
		f.Values[i].Low, f.Values[i].High, f.Values[i].Source = c.from, c.to, c.source
		b := assaytest.NewBench(10, f)
		pot := b.Pot(100, f)
		rests := b.Lab.IonsOf(pot, 1).RestsOn
		require.Len(t, rests, 1, c.name)
		assert.InDelta(t, c.low, rests[0].Low, 1e-9, c.name)
		assert.InDelta(t, c.high, rests[0].High, 1e-9, c.name)
		assert.InDelta(t, c.central, pHOf(t, b, pot)[0], 1e-6, c.name)
	}
	remembered := assaytest.Exact("silent", "other", silentAt(3.5))
	for i := range remembered.Values {
		remembered.Values[i].Source = "from memory"
	}
	b := assaytest.NewBench(3, remembered)
	assert.False(t, acidity.RestsOnPublished(b.Pot(100, remembered)), "what nobody has seen in print is no evidence")
}

// Of two measurements each counts by its spread: h′ = h + g·(T − h) with g = (var h + s²) /
// (var h + s² + var T), s being 0.3, or what the composition misses by if that is more. T
// is rectangular, 0.8 wide.
func TestAPublishedPHCountsByItsSpread(t *testing.T) {
	bare := assaytest.Exact("juice", "fruit juice", juice)
	alone := assaytest.NewBench(acidity.ChemistryDraws+1, bare)
	own := pHOf(t, alone, alone.Pot(100, bare))[:acidity.ChemistryDraws+1]
	for _, published := range []float64{3.5, 3.7, 4.1, 4.4} {
		f := assaytest.Exact("juice", "fruit juice", with(juice, figures{"PH": published}))
		b := assaytest.NewBench(acidity.ChemistryDraws+1, f)
		s := max(0.3, math.Abs(own[0]-published))
		v := stat.Variance(own[1:], nil) + s*s
		gain := v / (v + 0.8*0.8/12)
		pot := b.Pot(100, f)
		pH := pHOf(t, b, pot)
		assert.InDelta(t, own[0]+gain*(published-own[0]), pH[0], 0.05*math.Abs(published-own[0])+0.001, "%g", published)
		for d := 1; d < len(own); d++ {
			low, high := own[d]+gain*(published-0.4-own[d]), own[d]+gain*(published+0.4-own[d])
			require.Greater(t, pH[d], low-0.05, "%g, draw %d", published, d)
			require.Less(t, pH[d], high+0.05, "%g, draw %d", published, d)
		}
		in := b.Lab.IonsOf(pot, pot.N)
		assert.False(t, in.Silent)
		assert.False(t, in.Open())
		assert.Len(t, in.RestsOn, 1)
	}
}

// No food holds mineral acid, nor more acid without a name than minor acids can be, whatever
// pH is published of it.
func TestACalibrationInventsNoMineralAcid(t *testing.T) {
	for _, published := range []float64{2.2, 3.0} {
		f := assaytest.Exact("juice", "fruit juice", with(juice, figures{"PH": published}))
		b := assaytest.NewBench(60, f)
		pot := b.Pot(100, f)
		most := 0.0
		for d, held := range heldAll(b, pot) {
			require.Greater(t, held.StrongIonDifference(), -1e-9, "%g", published)
			citric := held.Acids[acid.Must("citric")] * citricAcid / pot.Total("CITAC")[d]
			require.GreaterOrEqual(t, citric, 1-1e-4, "%g", published)
			require.LessOrEqual(t, citric, 1.15+1e-3, "%g", published)
			most = max(most, citric)
		}
		assert.Greater(t, most, 1.149, "%g", published)
	}
}

// Where a composition and what is published contradict each other by more than three
// standard deviations it is said.
func TestAContradictionIsTold(t *testing.T) {
	pour := func(group string, pH float64, more figures) string {
		f := assaytest.Exact("juice", group, with(with(juice, more), figures{"PH": pH}))
		f.Names = []food.Name{{Language: "en", Text: "Invented juice"}}
		b := assaytest.NewBench(100, f)
		pot := b.Drawer.NewPot()
		grams, profile := b.Lab.Ens.Of(100), b.Profile(f)
		pot.Pour(profile, b.Drawer.PerGram(profile), grams, "")
		n := b.Lab.Calibrate(pot, grams)
		if n == nil {
			return ""
		}
		assert.Equal(t, "acidity", n.Kind)
		assert.Equal(t, []string{"own:juice"}, n.Foods)
		return n.Text
	}
	assert.Contains(t, pour("fruit juice", 5.5, nil), "Invented juice: its acids and minerals would make pH 3.6")
	assert.Empty(t, pour("fruit juice", 4.4, nil), "within 3·√(0.05 + 0.09)")
	assert.Empty(t, pour("milk", 5.5, nil), "of what takes up acid no composition tells")
}

// A food without a pH of its own lies between those of its group: there it stays as its
// composition makes it, else it is drawn into it, anywhere.
func TestAFoodLiesBetweenThePHOfItsGroup(t *testing.T) {
	within := assaytest.Exact("within", "citrus juice", juice)
	beyond := assaytest.Exact("beyond", "citrus juice", with(juice, figures{"CITAC": 100, "K": 400}))
	bare := assaytest.Exact("bare", "citrus juice", lacking(juice, "K"))
	b := assaytest.NewBench(200, within, beyond, bare)
	assert.Empty(t, b.Pot(100, within).Traced(0))
	assert.False(t, acidity.RestsOnPublished(b.Pot(100, within)))

	pot := b.Pot(100, beyond)
	pH := pHOf(t, b, pot)
	assert.InDelta(t, (1.8+4.34)/2, pH[0], 0.6, "the middle, or as sour as it gets without a mineral acid")
	assert.LessOrEqual(t, slices.Max(pH), 4.34+1e-6)
	assert.Greater(t, stat.StdDev(pH[1:], nil), 0.2)
	in := b.Lab.IonsOf(pot, pot.N)
	assert.True(t, in.Silent)
	require.Len(t, in.RestsOn, 1)
	assert.True(t, in.RestsOn[0].Moved)
	assert.Equal(t, "citrus juice", in.RestsOn[0].Group)
	assert.False(t, acidity.RestsOnPublished(pot), "a group is no publication of the food")
	assert.False(t, in.Alone(pot))

	in = b.Lab.IonsOf(b.Pot(100, bare), 3)
	require.Len(t, in.RestsOn, 1)
	assert.True(t, in.RestsOn[0].Moved, "acids whose metals nobody has stated bound no pH")
	pinch := b.Lab.IonsOf(b.Pot(0.00001, beyond), 3)
	assert.Empty(t, pinch.RestsOn, "a pinch is not worth a word")
	assert.True(t, pinch.Silent)
}

// A dry food is read as a solution of 10 g in 100 g.
func TestADryFoodIsReadInWater(t *testing.T) {
	dry := assaytest.Exact("dry", "other", figures{"WATER": 5, "SUCS": 90, "K": 500, "PH": 5})
	moist := assaytest.Exact("moist", "other", figures{"WATER": 20, "SUCS": 75, "K": 500, "PH": 5})
	b := assaytest.NewBench(20, dry, moist)
	pot := b.Pot(10, dry)
	pot.Pour(b.Water, b.Drawer.PerGram(b.Water), b.Lab.Ens.Of(90), "")
	assert.InDelta(t, 5, pHOf(t, b, pot)[0], 1e-6)
	assert.InDelta(t, 5, pHOf(t, b, b.Pot(10, moist))[0], 1e-6)
}

// Lysine and arginine in a gram of milk protein, mol: 8.3 and 3.6 g in 100 g (Belitz, Food
// Chemistry, table 10.6), of casein 8.2 and 4.1, of whey protein 9.6 and 3.3 ÷ 146.19 and 174.20.
const lowAmines, highAmines = 0.00075, 0.00085

// What gives a food its pH goes with what is dissolved, and the acid of protein with the
// protein: it is the same through scaling, copying, mixing and straining.
func TestACalibrationGoesWithItsFood(t *testing.T) {
	milk := assaytest.Exact("milk", "milk", figures{"WATER": 88, "LACS": 4.8, "PROCNT": 1.0, "FAT": 3.5, "K": 220, "NA": 40, "P": 95, "CA": 60, "CLD": 100, "OA": 0.15, "CITAC": 150, "PH": 6.7})
	sour := assaytest.Exact("silent", "fruit juice", silentAt(3.5))
	b := assaytest.NewBench(20, milk, sour)
	pot := b.Pot(100, milk)
	before, pH := heldAll(b, pot), pHOf(t, b, pot)
	assert.InDelta(t, 6.7, pH[0], 1e-6)
	require.Len(t, pot.Traced(0), 2)
	assert.Equal(t, []constituent.ID{"K", constituent.Protein}, []constituent.ID{pot.Traced(0)[0].As(), pot.Traced(0)[1].As()})

	half := pot.Copy()
	half.Scale(b.Lab.Ens.Of(0.5))
	mixed := b.Drawer.NewPot()
	mixed.Mix(pot, b.Lab.Ens.Of(0.25), "milk")
	mixed.Mix(b.Pot(100, sour), b.Lab.Ens.Of(1), "sour")
	other := heldAll(b, b.Pot(100, sour))
	for d, all := range heldAll(b, mixed) {
		alike(t, sum(before[d], 0.25, other[d], 1), all)
		alike(t, sum(before[d], 0.5, other[d], 0), heldAll(b, half)[d])
	}
	assert.InDeltaSlice(t, pH, pHOf(t, b, half), 1e-6)

	whey := pot.Copy()
	_, err := prep.Split(whey, []prep.Kept{{ID: constituent.Protein, Share: b.Lab.Ens.Of(0)}}, nil)
	require.NoError(t, err)
	for d, held := range heldAll(b, whey) {
		amines := (before[d].Strong - held.Strong) / pot.Total(constituent.Protein)[d]
		assert.GreaterOrEqual(t, amines, lowAmines, "the metals stay, the amines of the protein have left")
		assert.LessOrEqual(t, amines, highAmines)
		assert.LessOrEqual(t, held.Acids[acid.Must("citric")], before[d].Acids[acid.Must("citric")], "the charge of the protein has left")
		assert.InEpsilon(t, pot.Total("CITAC")[d]/citricAcid, held.Acids[acid.Must("citric")], sameMass)
	}
	assert.Less(t, heldAll(b, whey)[0].Acids[acid.Must("citric")], before[0].Acids[acid.Must("citric")], "all draws but those that lack no acid")
	poor := pot.Copy()
	_, err = prep.Split(poor, []prep.Kept{{ID: "K", Share: b.Lab.Ens.Of(0)}}, nil)
	require.NoError(t, err)
	for d, held := range heldAll(b, poor) {
		amines := (held.Strong - (poor.Total("NA")[d]/sodium - poor.Total("CLD")[d]/chloride)) / poor.Total(constituent.Protein)[d]
		assert.GreaterOrEqual(t, amines, lowAmines-1e-6, "what is left of strong ions")
		assert.LessOrEqual(t, amines, highAmines+1e-6)
		assert.InEpsilon(t, before[d].Acids[acid.Must("citric")], held.Acids[acid.Must("citric")], 1e-9)
	}
}

func heldAll(b *assaytest.Bench, pot *ledger.Pot) []*acid.Solution {
	in, all := b.Lab.IonsOf(pot, pot.N), make([]*acid.Solution, pot.N)
	for d := range all {
		all[d] = acid.New(0)
		in.Fill(all[d], d)
	}
	return all
}

func sum(a *acid.Solution, x float64, b *acid.Solution, y float64) *acid.Solution {
	all := acid.New(0)
	all.Pour(a, x)
	all.Pour(b, y)
	return all
}

// alike holds two solutions to the same acids, ions and solvent.
func alike(t *testing.T, want, got *acid.Solution) {
	t.Helper()
	const dust = 1e-12
	assert.InDelta(t, want.Solvent, got.Solvent, dust)
	assert.InDelta(t, want.Ethanol, got.Ethanol, dust)
	assert.InDelta(t, want.Strong, got.Strong, dust)
	assert.InDelta(t, want.Background, got.Background, dust)
	assert.InDeltaSlice(t, want.Acids, got.Acids, dust)
	assert.InDeltaSlice(t, want.Metals[:], got.Metals[:], dust)
}

// Settling makes a pot carry what it would draw, and forgetting puts a guess in the place of
// what is published: neither moves what it holds.
func TestSettlingAndForgettingMoveNothing(t *testing.T) {
	plain, sour := assaytest.Exact("juice", "fruit juice", juice), assaytest.Exact("silent", "fruit juice", silentAt(3.5))
	milk := assaytest.Exact("milk", "milk", figures{"WATER": 88, "LACS": 4.8, "PROCNT": 1.0, "K": 150, "NA": 40, "CLD": 100, "OA": 0.15, "CITAC": 150})
	b := assaytest.NewBench(20, plain, sour, milk)
	pot := b.Pot(100, plain, sour, milk)
	before := heldAll(b, pot)
	b.Lab.Settle(pot)
	for d, held := range heldAll(b, pot) {
		alike(t, before[d], held)
	}
	assert.False(t, b.Lab.IonsOf(pot, 1).Open(), "a reading will tell")
	assert.Equal(t, []string{"own:silent"}, foodsOf(b.Lab.IonsOf(pot, 1).RestsOn, ""))
	carried := len(pot.Traced(0))
	assert.Greater(t, carried, 2)
	b.Lab.Settle(pot)
	assert.Len(t, pot.Traced(0), carried, "once is enough")

	b.Lab.Forget(pot)
	for d, held := range heldAll(b, pot) {
		assert.InDelta(t, before[d].Strong, held.Strong, 1e-12)
		assert.InDeltaSlice(t, before[d].Acids, held.Acids, 1e-12)
	}
	assert.Empty(t, b.Lab.IonsOf(pot, 1).RestsOn)
	assert.False(t, acidity.RestsOnPublished(pot))
	potassium := pot.Carry(1, acidity.UnmeasuredOf("K"))
	estimate.Fill(potassium, potassium[0]+0.0390983)
	assert.InDelta(t, before[0].Strong+0.001, heldAll(b, pot)[0].Strong, 1e-7, "and a reading may move it")
}

func foodsOf(list []acidity.Calibration, group string) (foods []string) {
	for _, c := range list {
		if c.Group == group {
			foods = append(foods, c.Food.String())
		}
	}
	return foods
}

// What is told of nobody's acid and of a vouched one: with none and with all of it the pH is
// still the published one of the food, since the strong ion goes along.
func TestAPublishedPHIsKeptAtBothEndsOfAnUnknownAcid(t *testing.T) {
	f := assaytest.Exact("silent", "other", silentAt(4.4))
	b := assaytest.NewBench(10, f)
	pot := b.Pot(100, f)
	in := b.Lab.IonsOf(pot, pot.N)
	ends := in.Vouched.Ends()
	require.Len(t, ends, 2)
	assert.Len(t, in.Nobody.Ends(), 1)
	s, err := acid.NewSolver(acidity.MeterCelsius)
	require.NoError(t, err)
	var buffers []float64
	for _, end := range ends {
		sol := b.Held(pot, 0)
		end(sol)
		state, err := s.Solve(sol, acid.State{})
		require.NoError(t, err)
		assert.InDelta(t, 4.4, state.PH, 0.02)
		buffers = append(buffers, sol.Acids[acid.Must("citric")])
	}
	assert.Less(t, buffers[0], buffers[1])
}

// A composition that leaves its pH more open than is printed (half of 90 % wider than 0.6 of
// a pH, row "widest") tells nothing beside a published one.
func TestAWideCompositionTellsNothing(t *testing.T) {
	of := func(sd float64) (pH float64, silent bool) {
		f := assaytest.Exact("wide", "fruit juice", with(juice, figures{"PH": 4.4}))
		spread(spread(f, "CITAC", sd), "K", sd/2)
		b := assaytest.NewBench(acidity.ChemistryDraws+1, f)
		pot := b.Pot(100, f)
		return pHOf(t, b, pot)[0], b.Lab.IonsOf(pot, 1).Silent
	}
	pH, silent := of(10)
	assert.Greater(t, math.Abs(pH-4.4), 0.01, "both count")
	assert.False(t, silent)
	pH, silent = of(500)
	assert.InDelta(t, 4.4, pH, 1e-6)
	assert.True(t, silent)
}

// What nobody has stated of gas stays so with a published pH: one that is sold with it hides
// it, and what is alkaline stands in air, whatever else is in the pot and in whatever order.
func TestAPublishedPHTellsNoGas(t *testing.T) {
	fizzy := assaytest.Exact("fizzy", "soft drink", with(juice, figures{"PH": 3.4}))
	fizzy.Names = []food.Name{{Language: "en", Text: "Cola"}}
	still := assaytest.Exact("still", "fruit juice", with(juice, figures{"PH": 3.4, "CO2": 0}))
	open := figures{"WATER": 98, "K": 100, "NA": 0, "CLD": 0, "CA": 0, "MG": 0, "P": 0, "OA": 0.05, "CITAC": 50, "PH": 8}
	aired, sealed := assaytest.Exact("aired", "other", open), assaytest.Exact("sealed", "other", with(open, figures{"CO2": 0}))
	b := assaytest.NewBench(10, fizzy, still, aired, sealed)
	require.Len(t, b.Pot(100, still, fizzy).Traced(0), 1, "both rest on their published pH")
	for _, order := range [][]*food.Food{{fizzy}, {fizzy, still}, {still, fizzy}} {
		assert.True(t, b.Lab.IonsOf(b.Pot(100, order...), 3).Hidden)
	}
	assert.False(t, b.Lab.IonsOf(b.Pot(100, still), 3).Hidden)

	s, err := acid.NewSolver(acidity.MeterCelsius)
	require.NoError(t, err)
	movedByAir := func(of ...*food.Food) float64 {
		pot := b.Pot(100, of...)
		require.NotEmpty(t, pot.Traced(0))
		state, err := s.Solve(b.Held(pot, 0), acid.State{})
		require.NoError(t, err)
		return math.Abs(pHOf(t, b, pot)[0] - state.PH)
	}
	for _, order := range [][]*food.Food{{aired}, {aired, sealed}, {sealed, aired}} {
		assert.Greater(t, movedByAir(order...), 0.01)
	}
	assert.Less(t, movedByAir(sealed), 1e-6)
}

// Of a food of which nobody has stated acids, nor a pH, its group alone tells: with none of
// them and with the most its pH lies anywhere between that of such foods, 2.0 to 6.8.
func TestAGroupTellsNoPHAtTheEndsOfAnUnknownAcid(t *testing.T) {
	f := assaytest.Exact("silent", "fruit juice", lacking(juice, "CITAC"))
	b := assaytest.NewBench(10, f)
	pot := b.Pot(100, f)
	in := b.Lab.IonsOf(pot, pot.N)
	assert.Equal(t, []string{"own:silent"}, in.Unknown)
	ends := in.Nobody.Ends()
	require.Len(t, ends, 2)
	assert.Len(t, in.Vouched.Ends(), 1)
	s, err := acid.NewSolver(acidity.MeterCelsius)
	require.NoError(t, err)
	var pH []float64
	for _, end := range ends {
		sol := b.Held(pot, 0)
		end(sol)
		state, err := s.Solve(sol, acid.State{})
		require.NoError(t, err)
		assert.InDelta(t, (2.0+6.8)/2, state.PH, (6.8-2.0)/2+0.02)
		pH = append(pH, state.PH)
	}
	assert.Greater(t, pH[0], pH[1]+1, "more acid is more sour")
}

// Whoever asks later finds the same: in a food that its composition makes too sour or too mild, in one
// whose protein takes up acid, in one that needs nothing.
func TestACalibrationThatWaitedIsTheSame(t *testing.T) {
	for _, f := range []*food.Food{
		assaytest.Exact("silent", "fruit juice", silentAt(3.5)), assaytest.Exact("milk", "milk", with(juice, figures{"PH": 6})), assaytest.Exact("within", "citrus juice", juice),
		assaytest.Exact("beyond", "citrus juice", with(juice, figures{"CITAC": 100, "K": 400})),
	} {
		b := assaytest.NewBench(40, f)
		at, later := b.Pot(100, f), b.Drawer.NewPot()
		grams := b.Lab.Ens.Of(100)
		later.Pour(b.Profile(f), b.Drawer.PerGram(b.Profile(f)), grams, "")
		b.Lab.CalibrateLater(later, grams)
		assert.Equal(t, pHOf(t, b, at), pHOf(t, b, later), f.ID.Code)
		assert.Equal(t, acidity.RestsOnPublished(at), acidity.RestsOnPublished(later), f.ID.Code)
		assert.Equal(t, b.Held(at, 1), b.Held(later, 1), f.ID.Code)
	}
}
