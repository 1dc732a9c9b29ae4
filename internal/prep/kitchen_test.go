package prep_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

// mixed pours grams of each, with the columns that a reaction may need.
func mixed(made []constituent.ID, weights []float64, profiles ...*food.Profile) *ledger.Pot {
	columns := ledger.NewColumns(profiles, made...)
	drawer, pot := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: n}, columns), ledger.New(columns, n)
	for i, p := range profiles {
		pot.Pour(p, drawer.PerGram(p), grams(weights[i]), p.Food.ID.String())
	}
	return pot
}

// Worked examples of calorimetry, with water for the drink: OpenStax, College Physics,
// "calculate final temperature from phase change: cooling soda with ice cubes" (0.25 kg from
// 20 °C with 18 g of ice at 0 °C: 13.3 °C by its own figures, printed as 13 °C); 1 kg of
// lemonade from 20 to 0 °C melts 0.25 kg (a physics forum); 500 ml of water from 32 to 0 °C
// melt 200 g (a chemistry forum); 390 g of water from 15 °C melt 62.1 g of ice that came at
// −19 °C in two cubes of 45 g, all of which is warmed (a textbook's problem as a page
// solves it).
func TestIceMeltsAsTheTextbooksSay(t *testing.T) {
	for _, c := range []struct{ grams, from, to, ice, melts, within float64 }{
		{250, 20, 13.3, 0, 18, 0.2},
		{1000, 20, 0, 0, 250, 2},
		{500, 32, 0, 0, 200, 1},
		{200, 10, 0, 0, 25, 0.5},
	} {
		pot := mixed(nil, []float64{c.grams}, water())
		ice, err := prep.Melted(pot, prep.Chilling{From: grams(c.from), To: grams(c.to), Ice: grams(c.ice)}, factors)
		require.NoError(t, err)
		assert.InDelta(t, c.melts, ice[0], c.within, "%v g from %v to %v °C", c.grams, c.from, c.to)
	}
}

// Heat capacities of milk and cream as Geankoplis tabulates them (A.4-1): whole milk of
// 87.5 % water 3.85, skim milk of 91 % 3.98 to 4.02, cream of 57 to 73 % water 3.06 to 3.27
// kJ/(kg K). The balance is asked for them: what a kelvin more asks of ice.
func TestHeatCapacitiesAddUpAsAHandbookHasThem(t *testing.T) {
	for _, c := range []struct {
		of        *food.Profile
		low, high float64
	}{
		{entered("whole", "milk", map[constituent.ID]float64{"WATER": 87.5, "FAT": 3.5, "PROCNT": 3.3, "LACS": 5, "ASH": 0.7}), 3.75, 3.95},
		{entered("skim", "milk", map[constituent.ID]float64{"WATER": 91, "FAT": 0.1, "PROCNT": 3.4, "LACS": 4.8, "ASH": 0.7}), 3.88, 4.02},
		{entered("cream", "cream", map[constituent.ID]float64{"WATER": 57, "FAT": 38, "PROCNT": 2, "LACS": 2.5, "ASH": 0.5}), 3.06, 3.27},
	} {
		pot := mixed(nil, []float64{100}, c.of)
		ice, err := prep.Melted(pot, prep.Chilling{From: grams(30), To: grams(0)}, factors)
		require.NoError(t, err)
		assert.InDelta(t, (c.low+c.high)/2, ice[0]*333.4/30/100, (c.high-c.low)/2, c.of.Food.ID.Code)
	}
}

// Ice from the freezer melts less, heat besides melts more, and nothing melts where nothing
// is cooled: the figure is continuous in what is asked.
func TestIceMeltsByWhatIsAsked(t *testing.T) {
	melts := func(c prep.Chilling) float64 {
		ice, err := prep.Melted(mixed(nil, []float64{100}, juice()), c, factors)
		require.NoError(t, err)
		return ice[0]
	}
	plain := melts(prep.Chilling{From: grams(20), To: grams(2)})
	assert.Less(t, melts(prep.Chilling{From: grams(20), To: grams(2), Ice: grams(-18)}), plain)
	assert.InDelta(t, 1.2*plain, melts(prep.Chilling{From: grams(20), To: grams(2), Besides: grams(0.2)}), close)
	assert.InDelta(t, 0, melts(prep.Chilling{From: grams(20), To: grams(19.999)}), 0.01)
}

func TestChillRefusesWhatIceCannotDo(t *testing.T) {
	pot := mixed(nil, []float64{100}, juice())
	_, err := prep.Melted(pot, prep.Chilling{From: grams(4), To: grams(70)}, factors)
	require.ErrorContains(t, err, "ice only cools")
	_, err = prep.Melted(pot, prep.Chilling{From: grams(20), To: grams(-6)}, factors)
	require.ErrorContains(t, err, "would freeze from about")
	_, err = prep.Melted(mixed(nil, []float64{60, 40}, spirit(), juice()), prep.Chilling{From: grams(20), To: grams(-5)}, factors)
	require.NoError(t, err, "with alcohol it stays liquid")
}

func kojiRice() *food.Profile {
	return entered("koji", "cereal", map[constituent.ID]float64{"WATER": 40, "STARCH": 50, "PROCNT": 5, "FIBTG": 1, "ASH": 1})
}

// 162.141 g of starch and 18.015 g of water are 180.156 g of glucose, 1.111 g a gram; 324.28
// g make 342.30 g of maltose, 1.056 g a gram (IUPAC atomic weights).
func TestStarchTakesUpWater(t *testing.T) {
	for _, c := range []struct {
		to   string
		id   constituent.ID
		gram float64
	}{{"glucose", "GLUS", 180.156 / 162.141}, {"maltose", "MALS", 342.297 / 324.282}} {
		pot := mixed([]constituent.ID{"GLUS", "MALS"}, []float64{100}, kojiRice())
		_, err := prep.Convert(pot, grams(0.6), c.to)
		require.NoError(t, err)
		assert.InDelta(t, 30*c.gram, central(pot, c.id), 1e-3)
		assert.InDelta(t, 20, central(pot, "STARCH"), close)
		assert.InDelta(t, 40-30*(c.gram-1), central(pot, "WATER"), 1e-3)
		assert.InDelta(t, 100, pot.Mass()[0], close)
	}
}

func TestConvertSaysWhatItDoesNotKnow(t *testing.T) {
	_, err := prep.Convert(mixed([]constituent.ID{"GLUS", "MALS"}, []float64{100}, spirit()), grams(0.5), "glucose")
	require.ErrorContains(t, err, "nothing here holds starch")
	_, err = prep.Convert(mixed([]constituent.ID{"GLUS", "MALS"}, []float64{100}, entered("dry", "cereal", map[constituent.ID]float64{"WATER": 1, "STARCH": 90})), grams(1), "glucose")
	require.ErrorContains(t, err, "takes up")

	unstated := entered("rice drink", "plant drink", map[constituent.ID]float64{"WATER": 90, "CHOCDF": 9, "SUGAR": 2})
	pot := mixed([]constituent.ID{"GLUS", "MALS"}, []float64{100}, unstated)
	before, rows := pot.Bound("STARCH")
	require.NotEmpty(t, rows)
	glucose, _ := pot.Bound("GLUS")
	out, err := prep.Convert(pot, grams(0.5), "glucose")
	require.NoError(t, err)
	require.Len(t, out.Notes, 1)
	assert.Contains(t, out.Notes[0], "how much starch is in")
	after, _ := pot.Bound("GLUS")
	assert.InDelta(t, before*0.5*180.156/162.141, after-glucose, 1e-3)
	sugars, _ := pot.Bound("SUGAR")
	assert.InDelta(t, after-glucose, sugars, close, "what may have become glucose may be more sugar")
	carbohydrate, _ := pot.Bound("CHOCDF")
	assert.InDelta(t, before*0.5*18.015/162.141, carbohydrate, 1e-3, "and with the water that it takes up more carbohydrate")
}

// What clarifies holds pulp and fat back, brings water and what is dissolved in it, and
// leaves what is dissolved in the pot as it was.
func TestClarifyHoldsBackWhatIsCloudy(t *testing.T) {
	white := entered("white", "egg", map[constituent.ID]float64{"WATER": 87.6, "PROCNT": 10.9, "GLUS": 0.7, "ASH": 0.8})
	for _, by := range []string{"egg white", "gelatine", "agar", "centrifuge"} {
		both := mixed([]constituent.ID{"CHOCDF-other"}, []float64{200, 10}, juice(), white)
		pot, agent := both.Only(func(row int) bool { return row == 0 }), both.Only(func(row int) bool { return row == 1 })
		if by == "centrifuge" {
			agent = ledger.New(pot.Columns, n)
		}
		out, err := prep.Clarify(pot, agent, prep.Clarifying{By: by, Collect: grams(180), Celsius: math.NaN()}, factors)
		require.NoError(t, err, by)
		assert.InDelta(t, 180, pot.Mass()[0], close, by)
		assert.Less(t, central(pot, "FIBTG"), 0.25*4, by)
		assert.InDelta(t, 20.0/172, pot.Of(0, "SUCS")[0]/pot.Of(0, "WATER")[0], close, "%s: sugar goes with its water", by)
		assert.Equal(t, by == "egg white" || by == "gelatine", len(out.Notes) > 0, by)
	}
}

func TestClarifyByMilkIsCurdling(t *testing.T) {
	both, curdled := potOf(milk(), lemon()), potOf(milk(), lemon())
	pot, agent := both.Only(func(row int) bool { return row == 1 }), both.Only(func(row int) bool { return row == 0 })
	out, err := prep.Clarify(pot, agent, prep.Clarifying{By: "milk", Collect: grams(150), Celsius: 20}, factors)
	require.NoError(t, err)
	_, err = prep.Curdle(curdled, grams(150), "acid", 20, factors)
	require.NoError(t, err)
	require.NotNil(t, out.Parted)
	for _, id := range []constituent.ID{"WATER", "LACS", "CITAC", "FAT", "PROCNT", "CA"} {
		assert.InDelta(t, central(curdled, id), central(pot, id), close, id)
	}
}

// In vacuum alcohol leaves before the water, acetic acid behind it, and all else stays; a
// pot that loses next to nothing changes next to nothing.
func TestVacuumTakesTheVolatileFirst(t *testing.T) {
	vinegar := entered("vinegar", "vinegar", map[constituent.ID]float64{"WATER": 94, "ACEAC": 6000})
	pot := potOf(spirit(), juice(), vinegar)
	_, err := prep.Evaporate(pot, grams(200), factors)
	require.NoError(t, err)
	for d, mass := range pot.Mass() {
		require.InDelta(t, 200, mass, 1e-6)
		water, alcohol, acid := pot.Total("WATER")[d]/240, pot.Total("ALC")[d]/40, pot.Total("ACEAC")[d]/6
		require.Less(t, alcohol, water, "draw %d", d)
		require.GreaterOrEqual(t, acid, water-close, "draw %d", d)
	}
	assert.InDelta(t, 10, central(pot, "SUCS"), close)
	whole := potOf(spirit(), juice(), vinegar)
	_, err = prep.Evaporate(whole, grams(299.999), factors)
	require.NoError(t, err)
	assert.InDelta(t, 40, central(whole, "ALC"), 0.001)
	_, err = prep.Evaporate(potOf(juice()), grams(12), factors)
	assert.ErrorContains(t, err, "do not evaporate")
}

// What a step says has its figures in it.
func TestNotesAndErrorsShowTheirFigures(t *testing.T) {
	var said []string
	b, pot := benchPot()
	for _, line := range []string{"cool: {to: 4 °C}", "chill: {from: 20 °C, to: 2 °C}", "chill: {from: 2 °C, to: 20 °C}", "chill: {from: 20 °C, to: -9 °C}", "concentrate: {by: vacuum, to: 20 g}", "clarify: {by: centrifuge, collect: 449 g}", "convert: {starch: 50 %, to: maltose}"} {
		for _, step := range steps(t, "drink: d\nserves: 1\nbuild: [10 g house]\ncomponents:\n  house:\n    ingredients: [1 g own:milk]\n    steps:\n      - "+line+"\n") {
			out, err := prep.MethodOf(step).Do(b, pot.Copy(), step, factors)
			if said = append(said, out.Notes...); err != nil {
				said = append(said, err.Error())
			}
		}
	}
	for line, says := range map[string]string{
		"{after: {brix: 25}}": "25 °Bx afterwards: the pot reads about 20 °Bx before", "{after: {brix: 1}}": "1 °Bx afterwards",
		"{after: {brix: 8}}": "read 8 °Bx: about",
	} {
		wine, pot := must()
		step := fermentStep(t, line)
		out, err := prep.MethodOf(step).Do(wine, pot, step, factors)
		words := out.Notes
		if err != nil {
			words = append(words, err.Error())
		}
		assert.Contains(t, strings.Join(words, "\n"), says)
		said = append(said, words...)
	}
	require.NotEmpty(t, said)
	for _, text := range said {
		assert.NotContains(t, text, "%!")
	}
	assert.Contains(t, said, "cooled to 4 °C without ice: nothing of the composition is changed for it")
}
