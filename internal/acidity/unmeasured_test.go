package acidity_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

type figures = map[constituent.ID]float64

// Grams in a mole (IUPAC, standard atomic weights 2021).
const (
	sodium, potassium, calcium, citricAcid, malicAcid, lacticAcid = 22.98977, 39.0983, 40.078, 192.123, 134.087, 90.078
	phosphorusToPhosphate, phosphate                              = 94.971 / 30.97376, 94.971
	chloride, carbonDioxide                                       = 35.45, 44.009
)

const sameMass = 2e-4 // relative: the last digit of a molar mass

// mol gives how much of an acid a pot holds in a draw.
func mol(b *assaytest.Bench, pot *ledger.Pot, of string, draw int) float64 {
	return b.Held(pot, draw).Acids[acid.Must(of)]
}

// juice is an invented fruit juice, mg/100 g but for water and sugar.
var juice = figures{"WATER": 90, "SUCS": 8, "CITAC": 1000, "K": 200, "NA": 10, "P": 20, "CA": 10, "MG": 8}

// with gives figures of which some are others.
func with(of, others figures) figures {
	all := figures{}
	for id, x := range of {
		all[id] = x
	}
	for id, x := range others {
		all[id] = x
	}
	return all
}

// lacking gives figures without some.
func lacking(of figures, ids ...constituent.ID) figures {
	all := with(of, nil)
	for _, id := range ids {
		delete(all, id)
	}
	return all
}

// What a table of juice leaves out lies within the ranges of data/acid_unmeasured.csv, the
// middle at central values: chloride by potassium 0 to 0.1 mol/mol and by sodium as in
// NaCl, sulphate 0 to 0.05, dissolved phosphate up to all of the phosphorus, other acids up
// to 0.15 of those that were measured.
func TestWhatATableOfJuiceLeavesOut(t *testing.T) {
	f := assaytest.Exact("juice", "fruit juice", juice)
	b := assaytest.NewBench(200, f)
	pot := b.Pot(100, f)
	k, na, p, citric := 0.2/potassium, 0.01/sodium, 0.02*phosphorusToPhosphate/phosphate, 1/citricAcid
	held := b.Held(pot, 0)
	assert.InEpsilon(t, k+na-(0.05*k+na), held.Strong, sameMass)
	assert.InEpsilon(t, (k+na+0.05*k+na)/2, held.Background, sameMass)
	assert.InEpsilon(t, 0.025*k, held.Acids[acid.Must("sulphuric")], sameMass)
	assert.InEpsilon(t, p/2, held.Acids[acid.Must("phosphoric")], 1e-3)
	assert.InEpsilon(t, 1.075*citric, held.Acids[acid.Must("citric")], sameMass)
	assert.InEpsilon(t, 0.01/calcium, held.Metals[acid.Calcium], sameMass)
	assert.InDelta(t, 0.09, held.Solvent, 1e-9)

	strong, sulphate, acids := column(b, pot, func(s *acid.Solution) float64 { return s.Strong }),
		column(b, pot, func(s *acid.Solution) float64 { return s.Acids[acid.Must("sulphuric")] }),
		column(b, pot, func(s *acid.Solution) float64 { return s.Acids[acid.Must("citric")] })
	spans(t, strong, 0.9*k, k)
	spans(t, sulphate, 0, 0.05*k)
	spans(t, acids, citric, 1.15*citric)

	in := b.Lab.IonsOf(pot, pot.N)
	assert.False(t, in.Open() || in.Plain || in.Silent || in.Hidden)
	assert.Len(t, in.Nobody.Ends(), 1)
}

// column gives something of what a pot holds, draw by draw.
func column(b *assaytest.Bench, pot *ledger.Pot, of func(*acid.Solution) float64) []float64 {
	in, sol, col := b.Lab.IonsOf(pot, pot.N), acid.New(0), make([]float64, pot.N)
	for d := range col {
		in.Fill(sol, d)
		col[d] = of(sol)
	}
	return col
}

// spans holds draws to a range that they fill, but for the mass of a draw that is closed.
func spans(t *testing.T, col []float64, low, high float64) {
	t.Helper()
	least, most := slices.Min(col[1:]), slices.Max(col[1:])
	edge := 0.05 * (high - low)
	assert.InDelta(t, low, least, edge)
	assert.InDelta(t, high, most, edge)
}

// What is drawn is the food's, whatever pot it is in: half as much is half of it, and two
// foods do not draw alike.
func TestWhatIsLeftOutIsTheFoodsOwn(t *testing.T) {
	f, g := assaytest.Exact("juice", "fruit juice", juice), assaytest.Exact("other", "fruit juice", juice)
	b := assaytest.NewBench(30, f, g)
	acids := func(s *acid.Solution) float64 { return s.Acids[acid.Must("citric")] }
	one, half, other, both := column(b, b.Pot(100, f), acids), column(b, b.Pot(50, f), acids), column(b, b.Pot(100, g), acids), column(b, b.Pot(100, f, g), acids)
	for d := range one {
		assert.InEpsilon(t, one[d], 2*half[d], 1e-9)
		assert.InEpsilon(t, one[d]+other[d], both[d], 1e-9, "blending makes and loses none")
	}
	assert.NotEqual(t, one[1:], other[1:])
}

// Of a food without a group nothing is assumed but the chloride of its sodium, so a pack is
// no lye; of what somebody states in full nothing at all.
func TestWhatNobodyAssumesOfAFoodWithoutAGroup(t *testing.T) {
	pack := assaytest.Exact("pack", "", figures{"WATER": 90, "SUCS": 9, "NA": 100, "K": 50})
	full := assaytest.Exact("full", "", figures{"WATER": 98, "K": 200, "CLD": 10, "OA": 1, "CITAC": 1000, "NA": 10})
	lye := assaytest.Exact("lye", "", figures{"WATER": 98, "NA": 100, "K": 0, "CLD": 0, "OA": 0})
	b := assaytest.NewBench(30, pack, full, lye)
	in := b.Lab.IonsOf(b.Pot(100, full), 31)
	assert.True(t, in.Plain)
	assert.False(t, in.Open())
	assert.Empty(t, in.RestsOn)
	held := b.Held(b.Pot(100, full), 0)
	assert.InEpsilon(t, 0.2/potassium+0.01/sodium-0.01/chloride, held.Strong, sameMass)
	assert.InEpsilon(t, 1/citricAcid, held.Acids[acid.Must("citric")], sameMass)
	assert.Zero(t, held.Acids[acid.Must("sulphuric")])
	assert.InEpsilon(t, 0.1/sodium, b.Held(b.Pot(100, lye), 0).Strong, sameMass, "and a lye that says so is one")

	open := b.Lab.IonsOf(b.Pot(100, pack), 31)
	assert.Equal(t, []string{"own:pack"}, open.Unknown)
	assert.False(t, open.Plain)
	pH, _, err := b.Lab.Acidity(b.Pot(100, pack))
	require.NoError(t, err)
	for _, x := range pH {
		assert.InDelta(t, 5, x, 3.5+1e-6, "1.5 to 8.5, data/acid_unmeasured.csv")
	}
}

// A water's chloride is what its metals have beside its bicarbonate; where these are more
// than the metals it has none.
func TestChlorideOfAWaterIsItsBalance(t *testing.T) {
	salty := assaytest.Exact("salty", "water", figures{"WATER": 99.9, "NA": 10, "K": 1, "CA": 8, "MG": 2, "CO2": 0.008, "sulphate": 5})
	sour := assaytest.Exact("sour", "water", figures{"WATER": 99.9, "NA": 1, "K": 0, "CA": 0, "MG": 0, "CO2": 0.1, "sulphate": 0})
	b := assaytest.NewBench(20, salty, sour)
	held := b.Held(b.Pot(100, salty), 0)
	bicarbonate, sulphate := 0.008/carbonDioxide, held.Acids[acid.Must("sulphuric")]
	assert.InEpsilon(t, 0.005/96.06, sulphate, 1e-3)
	assert.InEpsilon(t, bicarbonate, held.Acids[acid.Must("carbonic")], sameMass)
	charge := held.Strong + 2*held.Metals[acid.Calcium] + 2*held.Metals[acid.Magnesium] - bicarbonate - 2*sulphate
	assert.InDelta(t, 0, charge, 1e-9, "electroneutral as bicarbonate")
	assert.InEpsilon(t, 0.001/sodium, b.Held(b.Pot(100, sour), 0).Strong, sameMass)
	in := b.Lab.IonsOf(b.Pot(100, salty), 21)
	assert.True(t, in.Plain, "waters are as they are stated")
	assert.False(t, in.Open())
}

// Acids that nobody has measured are anything from none to their bound, and the two ends
// are told; potassium that nobody has measured leaves a pH open that rests on named acids.
func TestAcidsThatNobodyHasMeasured(t *testing.T) {
	silent := assaytest.Exact("silent", "", with(lacking(juice, "CITAC"), figures{"SUCS": 5}))
	bare := assaytest.Exact("bare", "other", lacking(juice, "K"))
	b := assaytest.NewBench(200, silent, bare)
	pot := b.Pot(100, silent)
	in := b.Lab.IonsOf(pot, pot.N)
	require.Equal(t, []string{"own:silent"}, in.Unknown)
	assert.True(t, in.Open())
	ends := in.Nobody.Ends()
	require.Len(t, ends, 2)
	taken := mol(b, pot, "citric", 0)
	none, most := b.Held(pot, 0), b.Held(pot, 0)
	ends[0](none)
	ends[1](most)
	bound := pot.Bounds(0)[constituent.Must(constituent.OrganicAcids).Order]
	require.Positive(t, bound)
	assert.InDelta(t, 0, none.Acids[acid.Must("citric")]-(taken-bound/2/citricAcid), 1e-7)
	assert.InEpsilon(t, bound/citricAcid, most.Acids[acid.Must("citric")]-none.Acids[acid.Must("citric")], 1e-3)

	in = b.Lab.IonsOf(b.Pot(100, bare), pot.N)
	assert.Equal(t, []string{"own:bare"}, in.Bare)
	assert.True(t, in.Open())
	assert.InEpsilon(t, 3/citricAcid, in.Unneutral, sameMass, "as much potassium as its acid can take")
	assert.Empty(t, in.Unknown)
}

// unknownUpTo makes a constituent of a food unknown up to a limit.
func unknownUpTo(f *food.Food, id constituent.ID, limit float64) *food.Food {
	f.Values = append(f.Values, food.Value{
		Constituent: id, Amount: food.None, SD: food.None, Low: food.None, High: food.None, Limit: limit, State: estimate.Unknown, Source: "invented",
	})
	return f
}

// An acid that may be there up to a limit of the food's own counts where it is more than the
// minor acids could be (0.15 of those that were measured).
func TestAnAcidThatIsUnknownUpToItsOwnLimit(t *testing.T) {
	much := unknownUpTo(assaytest.Exact("much", "other", juice), "LACAC", 600)
	less := unknownUpTo(assaytest.Exact("less", "other", juice), "LACAC", 140)
	b := assaytest.NewBench(100, much, less)
	pot := b.Pot(100, much)
	in := b.Lab.IonsOf(pot, pot.N)
	assert.Equal(t, []string{"own:much"}, in.Unknown)
	assert.InEpsilon(t, 0.3/lacticAcid, mol(b, pot, "lactic", 0), sameMass)
	spans(t, column(b, pot, func(s *acid.Solution) float64 { return s.Acids[acid.Must("lactic")] }), 0, 0.6/lacticAcid)
	ends := in.Nobody.Ends()
	require.Len(t, ends, 2)
	for i, want := range []float64{0, 0.6 / lacticAcid} {
		sol := b.Held(pot, 0)
		ends[i](sol)
		assert.InDelta(t, want, sol.Acids[acid.Must("lactic")], 1e-6)
		assert.InEpsilon(t, b.Held(pot, 0).Acids[acid.Must("citric")], sol.Acids[acid.Must("citric")], 1e-12, "the others stay")
	}
	both := b.Lab.IonsOf(b.Pot(100, much, much), pot.N).Nobody.Ends()
	sol := b.Held(b.Pot(100, much, much), 0)
	both[1](sol)
	assert.InEpsilon(t, 1.2/lacticAcid, sol.Acids[acid.Must("lactic")], sameMass, "twice the food is twice its bound")

	assert.Empty(t, b.Lab.IonsOf(b.Pot(100, less), pot.N).Unknown)
	assert.Zero(t, mol(b, b.Pot(100, less), "lactic", 0))
}

// Of the acids of a food whose mass is known and whose names are not all is taken as citric,
// and no minor acids beside them.
func TestAcidsWithoutANameAreCitric(t *testing.T) {
	f := assaytest.Exact("sum", "fruit juice", with(juice, figures{"OA": 1.5, "CITAC": 1000}))
	b := assaytest.NewBench(20, f)
	pot := b.Pot(100, f)
	assert.InEpsilon(t, 1.5/citricAcid, mol(b, pot, "citric", 0), sameMass)
	for d, all := range pot.Total(constituent.OrganicAcids) {
		assert.InEpsilon(t, all/citricAcid, mol(b, pot, "citric", d), sameMass)
	}
}

// Of a food that is sold with its gas nobody has stated how much: it is told.
func TestGasThatNobodyStatesIsHidden(t *testing.T) {
	fizzy, still := assaytest.Exact("fizzy", "soft drink", juice), assaytest.Exact("still", "fruit juice", juice)
	stated := assaytest.Exact("stated", "soft drink", with(juice, figures{"CO2": 0.6}))
	for _, f := range []*food.Food{fizzy, still, stated} {
		f.Names = []food.Name{{Language: "en", Text: "Cola"}}
	}
	b := assaytest.NewBench(5, fizzy, still, stated)
	assert.True(t, b.Lab.IonsOf(b.Pot(100, fizzy), 6).Hidden)
	assert.False(t, b.Lab.IonsOf(b.Pot(100, still), 6).Hidden)
	assert.False(t, b.Lab.IonsOf(b.Pot(100, stated), 6).Hidden)
	assert.True(t, b.Lab.IonsOf(b.Pot(100, still, fizzy), 6).Hidden)

	gas := food.Enter(assaytest.Exact("gas", "", figures{"CO2": 100}), nil)
	lab := acidity.NewLaboratory(b.Lab.Ens, b.Drawer, b.Water, gas)
	pot := b.Pot(100, fizzy)
	assert.True(t, lab.IonsOf(pot, 6).Hidden)
	pot.Pour(gas, b.Drawer.PerGram(gas), b.Lab.Ens.Of(0.5), "")
	assert.False(t, lab.IonsOf(pot, 6).Hidden, "whoever carbonates says what is left")
}

// The strong ions of a solution are metals, or below zero anions.
func TestStrongIonsHaveASign(t *testing.T) {
	sol := acid.New(1)
	acidity.AddStrong(sol, 0.2)
	acidity.AddStrong(sol, -0.05)
	assert.InDelta(t, 0.15, sol.Strong, 1e-12)
	assert.InDelta(t, 0.125, sol.Background, 1e-12)
}
