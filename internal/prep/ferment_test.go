package prep_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

func afterwards(per100g map[constituent.ID]float64) []prep.Afterwards {
	var list []prep.Afterwards
	for _, c := range constituent.All() {
		if x, ok := per100g[c.ID]; ok {
			list = append(list, prep.Afterwards{ID: c.ID, Per100g: grams(x)})
		}
	}
	return list
}

// unnamed is what the step needs besides.
func unnamed(pot *ledger.Pot) prep.Unnamed {
	products := food.Enter(prep.FermentProducts(), nil)
	return prep.Unnamed{Products: products, PerGram: ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: pot.N}, pot.Columns).PerGram(products), Path: "test"}
}

// C6H12O6 → 2 C2H6O + 2 CO2: 180.156 g give 92.138 g of ethanol and 88.018 g of
// gas (IUPAC atomic weights).
func TestFermentMakesAlcoholOfSugar(t *testing.T) {
	pot := sugary(entered("must", "fruit juice", map[constituent.ID]float64{"WATER": 80, "GLUS": 10, "FRUS": 10}))
	out, err := prep.Ferment(pot, afterwards(map[constituent.ID]float64{"ALC": 5}), unnamed(pot))
	require.NoError(t, err)
	mass := pot.Mass()[0]
	assert.InDelta(t, 5, 100*central(pot, "ALC")/mass, close)
	alcohol := central(pot, "ALC")
	assert.InDelta(t, 20-alcohol*180.156/92.138, central(pot, "SUGAR"), 1e-4)
	assert.InDelta(t, 100, mass+out.Lost.Mass(), close)
	assert.InDelta(t, alcohol*88.018/92.138, out.Lost.Mass(), 1e-4)
	assert.InDelta(t, central(pot, "GLUS"), central(pot, "FRUS"), close)
}

func TestFermentTakesUpWaterForSucrose(t *testing.T) {
	pot := sugary(juice(), sugar())
	out, err := prep.Ferment(pot, afterwards(map[constituent.ID]float64{"LACAC": 2}), unnamed(pot))
	require.NoError(t, err)
	lactic := central(pot, "LACAC")
	assert.InDelta(t, 2, 100*lactic/pot.Mass()[0], close)
	assert.InDelta(t, 110-lactic*342.297/360.312, central(pot, "SUGAR"), 1e-3)
	assert.InDelta(t, 200, pot.Mass()[0]+out.Lost.Mass(), close)
}

func TestFermentKeepsWhatIsNotStatedWithoutAName(t *testing.T) {
	pot := sugary(entered("must", "fruit juice", map[constituent.ID]float64{"WATER": 80, "GLUS": 20}))
	out, err := prep.Ferment(pot, afterwards(map[constituent.ID]float64{"ALC": 2, "SUGAR": 10}), unnamed(pot))
	require.NoError(t, err)
	mass := pot.Mass()[0]
	assert.InDelta(t, 10, 100*central(pot, "SUGAR")/mass, close)
	assert.InDelta(t, 20-central(pot, "SUGAR")-central(pot, "ALC")*180.156/92.138, central(pot, "MASS-other"), 1e-4)
	assert.InDelta(t, 100, mass+out.Lost.Mass(), close)
	assert.Len(t, out.Notes, 2)
}

// Malic acid that goes becomes lactic acid; no sugar is needed for that.
func TestFermentMalicToLactic(t *testing.T) {
	pot := sugary(entered("wine", "wine", map[constituent.ID]float64{"WATER": 98, "MALAC": 500, "GLUS": 1}))
	_, err := prep.Ferment(pot, afterwards(map[constituent.ID]float64{"MALAC": 0.1, "LACAC": 0.25}), unnamed(pot))
	require.NoError(t, err)
	assert.InDelta(t, 0.1, 100*central(pot, "MALAC")/pot.Mass()[0], close)
	assert.InDelta(t, 0.25, 100*central(pot, "LACAC")/pot.Mass()[0], close)
	assert.Greater(t, central(pot, "GLUS"), 0.99)
}

func TestFermentRefusesTheImpossible(t *testing.T) {
	must := func() map[constituent.ID]float64 { return map[constituent.ID]float64{"WATER": 90, "GLUS": 10} }
	for name, after := range map[string]map[constituent.ID]float64{
		"more alcohol than the sugar gives": {"ALC": 6},
		"more sugar than before":            {"SUGAR": 11},
		"too little sugar goes":             {"SUGAR": 9.5, "ALC": 2},
	} {
		pot := sugary(entered("must", "fruit juice", must()))
		_, err := prep.Ferment(pot, afterwards(after), unnamed(pot))
		require.Error(t, err, name)
		assert.InDelta(t, 100, pot.Mass()[0], close, name)
		assert.InDelta(t, 10, central(pot, "GLUS"), close, name)
	}
}

func TestFermentedIsKnown(t *testing.T) {
	pot := sugary(entered("must", "", map[constituent.ID]float64{"WATER": 86, "CHOCDF": 14, "GLUS": 10}))
	_, unknown := pot.Bound("LACAC")
	require.NotEmpty(t, unknown)
	_, err := prep.Ferment(pot, afterwards(map[constituent.ID]float64{"LACAC": 1}), unnamed(pot))
	require.NoError(t, err)
	_, unknown = pot.Bound("LACAC")
	assert.Empty(t, unknown, "what is stated is the whole of it")
}

// Sugar that goes without a product may be alcohol or acid, up to what their equations make
// of it: 92.138 g and 180.156 g of 180.156 g of hexose (IUPAC atomic weights). What is
// stated is not unknown.
func TestWhatAFermentDoesNotStateIsUnknown(t *testing.T) {
	pot := sugary(entered("must", "fruit juice", map[constituent.ID]float64{"WATER": 80, "GLUS": 10, "FRUS": 10}))
	_, err := prep.Ferment(pot, afterwards(map[constituent.ID]float64{"SUGAR": 15}), unnamed(pot))
	require.NoError(t, err)
	last := pot.Bounds(len(pot.Rows) - 1)
	assert.InDelta(t, 5*92.138/180.156, last[constituent.Must("ALC").Order], 1e-4)
	assert.InDelta(t, 5, last[constituent.Must("LACAC").Order], 1e-4)
	assert.GreaterOrEqual(t, last[constituent.Must("OA").Order], 5.0)
	assert.InDelta(t, 100, pot.Mass()[0], close, "its mass stands where the sugar was")

	told := sugary(entered("must", "fruit juice", map[constituent.ID]float64{"WATER": 80, "GLUS": 10, "FRUS": 10}))
	_, err = prep.Ferment(told, afterwards(map[constituent.ID]float64{"SUGAR": 15, "ALC": 1, "LACAC": 0.5}), unnamed(told))
	require.NoError(t, err)
	last = told.Bounds(len(told.Rows) - 1)
	assert.Zero(t, last[constituent.Must("ALC").Order])
	assert.Zero(t, last[constituent.Must("OA").Order])
}

// If no sugar is stated, sugar goes as much as the products take: nothing is left over
// without a name, whatever the arithmetic makes of the last digits.
func TestAFermentOfStatedProductsLeavesNothingUnnamed(t *testing.T) {
	for alcohol := 0.25; alcohol <= 6; alcohol += 0.25 {
		pot := sugary(entered("must", "fruit juice", map[constituent.ID]float64{"WATER": 80, "SUCS": 7, "GLUS": 6, "FRUS": 7}))
		out, err := prep.Ferment(pot, afterwards(map[constituent.ID]float64{"ALC": alcohol, "LACAC": alcohol / 7}), unnamed(pot))
		require.NoError(t, err)
		assert.Len(t, out.Notes, 1, "%g g of alcohol", alcohol)
		assert.Zero(t, central(pot, "MASS-other"), "%g g of alcohol", alcohol)
		assert.InDelta(t, 100, pot.Mass()[0]+out.Lost.Mass(), close, "%g g of alcohol", alcohol)
	}
}

// wineBench reads sugar, alcohol and what has no name as data/refraction.csv has them: 1, 0.45
// and 1.
type wineBench struct{ bench }

func (b wineBench) Refracted(pot *ledger.Pot) []float64 {
	col := pot.Total("SUGAR")
	for d, x := range pot.Total("ALC") {
		col[d] += 0.45*x + pot.Total("MASS-other")[d]
	}
	return col
}

// must makes a pot of 1 kg of grape must and the bench that reads it.
func must() (wineBench, *ledger.Pot) {
	grape := entered("must", "fruit juice", map[constituent.ID]float64{"WATER": 80, "GLUS": 10, "FRUS": 10})
	b := bench{foods: map[food.ID]*food.Profile{}}
	profiles := []*food.Profile{grape}
	made := food.Enter(prep.FermentProducts(), nil)
	b.foods[made.Food.ID] = made
	columns := ledger.NewColumns(append(profiles, made), "ALC", "LACAC", "MASS-other")
	b.drawer = ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: n}, columns)
	pot := ledger.New(columns, n)
	pot.Pour(grape, b.drawer.PerGram(grape), grams(1000), "must")
	return wineBench{b}, pot
}

func fermentStep(t *testing.T, line string) drink.Step {
	t.Helper()
	return steps(t, "drink: d\nserves: 1\nbuild: [10 g house]\ncomponents:\n  house:\n    ingredients: [1 g own:must]\n    steps:\n      - ferment: "+line+"\n")["ferment"]
}

// What was read afterwards is what the pot reads then; the alcohol is that of the sugar gone
// by its equation (0.5114 g a gram of hexose, IUPAC atomic weights), from 0.85 of it to all.
func TestFermentIsToldByWhatARefractometerReads(t *testing.T) {
	b, pot := must()
	step := fermentStep(t, "{after: {brix: 8}}")
	out, err := prep.MethodOf(step).Do(b, pot, step, factors)
	require.NoError(t, err)
	for d, reads := range b.Refracted(pot) {
		require.InDelta(t, 8, 100*reads/pot.Mass()[d], 0.01, "draw %d", d)
		gone, alcohol := 200-pot.Total("SUGAR")[d], pot.Total("ALC")[d]
		require.GreaterOrEqual(t, alcohol, 0.85*gone*92.138/180.156-1e-6)
		require.LessOrEqual(t, alcohol, gone*92.138/180.156+1e-6)
	}
	assert.InDelta(t, 1000, pot.Mass()[0]+out.Lost.Mass(), 1e-6)
	assert.Contains(t, out.Notes[len(out.Notes)-1], "of the sugars have gone")
}

// A strength that was read is what the pot holds; here a millilitre is a gram, so that 8 %
// vol are 8 · 0.78924 g in 100 g (OIML R 22). With °Brix beside it what is not alcohol has
// no name.
func TestFermentTakesAStrengthThatWasRead(t *testing.T) {
	for _, line := range []string{"{after: {abv: 8 %}}", "{after: {abv: 8 %, brix: 11.7}}"} {
		b, pot := must()
		step := fermentStep(t, line)
		_, err := prep.MethodOf(step).Do(b, pot, step, factors)
		require.NoError(t, err, line)
		assert.InDelta(t, 8*0.78924, 100*central(pot, "ALC")/pot.Mass()[0], 0.002, line)
	}
}

func TestFermentRefusesReadingsThatCannotBe(t *testing.T) {
	for line, says := range map[string]string{
		"{after: {brix: 25}}":                                 "a ferment only takes sugar",
		"{after: {brix: 1}}":                                  "a refractometer would still read about",
		"{after: {brix: 13, abv: 8 %}}":                       "13 °Bx and the strength do not go together",
		"{after: {brix: 10.5, abv: 8 %}}":                     "would read about 11.7",
		"{after: {brix: 8, SUGAR: 3 g}, because: \"a test\"}": "SUGAR is stated and read",
		"{after: {abv: 20 %}}":                                "more sugar than goes",
	} {
		b, pot := must()
		step := fermentStep(t, line)
		_, err := prep.MethodOf(step).Do(b, pot, step, factors)
		require.ErrorContains(t, err, says, line)
		assert.InDelta(t, 200, central(pot, "SUGAR"), close, "%s: nothing has changed", line)
	}
}

// Balling: a gram of extract gives 0.4839 g of alcohol, 0.947 of what the equation makes of a
// gram of hexose; so does what is read of a ferment, to a twentieth, by °Brix and by strength alike.
func TestAFermentThatIsReadYieldsAsBallingFound(t *testing.T) {
	for _, line := range []string{"{after: {brix: 9}}", "{after: {abv: 10 %}}"} {
		b, pot := must()
		step := fermentStep(t, line)
		_, err := prep.MethodOf(step).Do(b, pot, step, factors)
		require.NoError(t, err, line)
		gone, alcohol := 200-central(pot, "SUGAR"), central(pot, "ALC")
		assert.InEpsilon(t, 0.4839, alcohol/gone, 0.05, line)
	}
}

// A dry ferment reads what is left: 200 g of hexose that become alcohol wholly leave 102.3 g in
// 902.3 g, which read 5.1 °Bx; with nine tenths of them, 6.6. Both are read as they are, in every
// draw, whatever the yield that it would have had.
func TestADryFermentIsReadAsItIs(t *testing.T) {
	for _, line := range []string{"{after: {brix: 5.2}}", "{after: {brix: 6.6}}"} {
		b, pot := must()
		step := fermentStep(t, line)
		_, err := prep.MethodOf(step).Do(b, pot, step, factors)
		require.NoError(t, err, line)
		for d, reads := range b.Refracted(pot) {
			require.InDelta(t, step.(*drink.Ferment).Brix.Number, 100*reads/pot.Mass()[d], 0.01, "%s draw %d", line, d)
		}
	}
}
