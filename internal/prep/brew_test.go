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

func bean() *food.Profile {
	return entered("bean", "coffee bean", map[constituent.ID]float64{
		"WATER": 5, "PROCNT": 14, "FAT": 15, "CHOCDF": 62, "FIBTG": 20, "ASH": 4, "OA": 1.2, "CAFFN": 1100, "K": 2000,
	})
}

func water() *food.Profile {
	return entered("water", "water", map[constituent.ID]float64{"WATER": 99.99, "ASH": 0.01, "CA": 3})
}

// brewing pours 18 g of coffee and 60 g of water.
func brewing() *ledger.Pot {
	profiles := []*food.Profile{bean(), water()}
	columns := ledger.NewColumns(profiles)
	drawer, pot := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: n}, columns), ledger.New(columns, n)
	for i, g := range []float64{18, 60} {
		pot.Pour(profiles[i], drawer.PerGram(profiles[i]), grams(g), profiles[i].Food.ID.String())
	}
	return pot
}

// solidsOf is what is in the cup of the dose besides water.
func solidsOf(pot *ledger.Pot, d int) float64 {
	return pot.Of(0, constituent.Mass)[d] - pot.Of(0, constituent.Water)[d]
}

// By definition of strength and yield 18 g in, 36 g out at 10 % are 20.0 %.
func TestAnyTwoGiveTheThird(t *testing.T) {
	for name, r := range map[string]prep.Recipe{
		"yield":    {Out: grams(36), Strength: grams(0.10)},
		"strength": {Out: grams(36), Yield: grams(0.20)},
		"out":      {Strength: grams(0.10), Yield: grams(0.20)},
	} {
		pot := brewing()
		out, err := prep.Brew(pot, r, factors)
		require.NoError(t, err, name)
		for d, mass := range pot.Mass() {
			require.InDelta(t, 36, mass, close, "%s, draw %d", name, d)
			require.InDelta(t, 3.6, solidsOf(pot, d), close, "%s, draw %d", name, d)
		}
		require.NotEmpty(t, out.Notes)
		assert.Contains(t, out.Notes[0], "36 g at 10 % are 20 % of the dose", name)
		assert.InDelta(t, 78-36, out.Lost.Mass(), close)
	}
}

func TestBrewCarriesTheWatersMinerals(t *testing.T) {
	pot := brewing()
	_, err := prep.Brew(pot, prep.Recipe{Out: grams(36), Strength: grams(0.10)}, factors)
	require.NoError(t, err)
	// 32.4 g of the 60.9 g of water (the dose's moisture included) are in the cup.
	assert.InDelta(t, 32.4/(60+0.05*18), pot.Of(1, "CA")[0]/(60*3e-5), 1e-6)
}

func TestStrongerBrewsHoldMoreOfTheDose(t *testing.T) {
	weak, strong := brewing(), brewing()
	_, err := prep.Brew(weak, prep.Recipe{Out: grams(36), Yield: grams(0.12)}, factors)
	require.NoError(t, err)
	_, err = prep.Brew(strong, prep.Recipe{Out: grams(36), Yield: grams(0.22)}, factors)
	require.NoError(t, err)
	assert.Greater(t, central(strong, "CAFFN"), central(weak, "CAFFN"))
	assert.Less(t, central(strong, "CAFFN"), 0.18*1.1)
}

// Moeenfard et al.: 7 to 9 % of the fat of the dose is in an espresso.
func TestEspressoHoldsItsFat(t *testing.T) {
	pot := brewing()
	_, err := prep.Brew(pot, prep.Recipe{Out: grams(36), Strength: grams(0.10)}, factors)
	require.NoError(t, err)
	assert.InDelta(t, 0.08*0.15*18, central(pot, "FAT"), close)
}

func TestBrewRefusesTheImpossible(t *testing.T) {
	for name, r := range map[string]prep.Recipe{
		"more water than there is": {Out: grams(75), Strength: grams(0.05)},
		"more than the dose gives": {Out: grams(36), Strength: grams(0.45)},
	} {
		pot := brewing()
		_, err := prep.Brew(pot, r, factors)
		require.Error(t, err, name)
		assert.InDelta(t, 78, pot.Mass()[0], close, name)
	}
	_, err := prep.Brew(potOf(water()), prep.Recipe{Out: grams(36), Strength: grams(0.10)}, factors)
	require.Error(t, err, "no dose")
}

// pouring gives pots of a leaf or of water.
func pouring(leaf *food.Profile) func(p *food.Profile, g float64) *ledger.Pot {
	columns := ledger.NewColumns([]*food.Profile{leaf, water()})
	drawer := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: n}, columns)
	return func(p *food.Profile, g float64) *ledger.Pot {
		pot := ledger.New(columns, n)
		pot.Pour(p, drawer.PerGram(p), grams(g), p.Food.ID.String())
		return pot
	}
}

func TestSteepTakesTheLeavesOutAgain(t *testing.T) {
	leaf := entered("leaf", "tea leaf", map[constituent.ID]float64{"WATER": 6, "PROCNT": 20, "CHOCDF": 52, "FIBTG": 38, "FAT": 2, "ASH": 5, "CAFFN": 2900})
	pours := pouring(leaf)
	pot := pours(water(), 200)
	out, err := prep.Steep(pot, pours(leaf, 4), prep.Steeping{Collect: grams(190)}, factors)
	require.NoError(t, err)
	for d, mass := range pot.Mass() {
		require.InDelta(t, 190, mass, close, "draw %d", d)
	}
	assert.InDelta(t, 14, out.Lost.Mass(), close)
	// Lakenbrink et al. 2000: 55 to 90 % of the caffeine of the leaf, less what the leaves hold back.
	assert.Greater(t, central(pot, "CAFFN"), 0.55*0.116*190/204)
	assert.Less(t, central(pot, "CAFFN"), 0.90*0.116)

	unweighed := pours(water(), 200)
	out, err = prep.Steep(unweighed, pours(leaf, 4), prep.Steeping{}, factors)
	require.NoError(t, err)
	assert.Greater(t, unweighed.Mass()[0], 200.0)
	assert.NotEmpty(t, out.Notes, "it says that the leaves hold liquid back")

	_, err = prep.Steep(pours(water(), 200), pours(leaf, 4), prep.Steeping{Collect: grams(203)}, factors)
	assert.Error(t, err, "the leaves are not liquor")
}

// Hicks, Hsieh and Bell 1996: 69 % of the caffeine after 5 min in boiling water is
// a half-time of 2.96 min, which leaves 10 % after 10 min. Cooler water takes
// longer: by 45.7 kJ/mol 2.3 times as long at 80 °C.
func TestInfusionFollowsTimeAndTemperature(t *testing.T) {
	const half, from, energy = 2.96, 100, 45.7
	assert.Zero(t, prep.InfusedShare(0, 100, half, from, energy))
	assert.InDelta(t, 0.69, prep.InfusedShare(5, 100, half, from, energy), 0.001)
	assert.InDelta(t, 0.904, prep.InfusedShare(10, 100, half, from, energy), 0.001)
	assert.InDelta(t, 0.69, prep.InfusedShare(5*2.304, 80, half, from, energy), 0.001)
	assert.InDelta(t, 1, prep.InfusedShare(0, 20, 0, from, energy), 0, "a powder gives all at once")

	drawn := func(celsius, minutes float64) float64 {
		leaf := entered("tea", "tea leaf", map[constituent.ID]float64{"WATER": 6, "PROCNT": 24, "FAT": 2, "CHOCDF": 62, "ASH": 6, "CAFFN": 2800})
		pours := pouring(leaf)
		pot := pours(water(), 200)
		_, err := prep.Steep(pot, pours(leaf, 4), prep.Steeping{Minutes: grams(minutes), Celsius: grams(celsius)}, factors)
		require.NoError(t, err)
		return central(pot, "CAFFN")
	}
	assert.Less(t, drawn(80, 3), drawn(100, 3))
	assert.Less(t, drawn(100, 3), drawn(100, 5))
	assert.LessOrEqual(t, drawn(100, 600), 112.0) // what the leaf holds
}

// Sugimoto Tea 2022, analyses by Element: 58 % of what boiling water drew from deep
// steamed sencha came in 45 s at 79 °C, 56 % of what it drew from gyokuro in 3.5 min
// at 54 °C; leaf in general is slower.
func TestKindsOfLeafInfuseAtTheirOwnRate(t *testing.T) {
	share := func(code string, celsius, minutes float64) (float64, []string) {
		leaf := entered(code, "tea leaf", map[constituent.ID]float64{"WATER": 6, "PROCNT": 24, "FAT": 2, "CHOCDF": 62, "ASH": 6, "CAFFN": 2500})
		leaf.Food.ID = food.ID{Table: "core", Code: code}
		pours := pouring(leaf)
		pot := pours(water(), 200)
		out, err := prep.Steep(pot, pours(leaf, 4), prep.Steeping{Minutes: grams(minutes), Celsius: grams(celsius)}, factors)
		require.NoError(t, err)
		return central(pot, "CAFFN") / 0.1, out.Notes
	}
	gyokuro, notes := share("tea-leaf-gyokuro", 54, 3.5)
	assert.InDelta(t, 0.56, gyokuro, 0.1)
	require.NotEmpty(t, notes)
	assert.Contains(t, notes[0], "short or cool")
	black, _ := share("tea-leaf-black", 54, 3.5)
	assert.Less(t, black, 0.7*gyokuro)
	powder, notes := share("matcha", 54, 1)
	assert.InDelta(t, 1, powder, close)
	assert.Len(t, notes, 1, "that nothing was collected, no more")
	_, notes = share("tea-leaf-black", 95, 3)
	assert.Len(t, notes, 1)
}

// A shot washes out more the larger it is, and a yield below that of a full
// immersion bounds what can be in the cup.
func TestWashedShareIsBoundedByLiquorAndYield(t *testing.T) {
	const washout, immersion = 0.856, 0.21
	assert.InDelta(t, 0.575, prep.WashedShare(1, 0.2, washout, immersion), 0.001)
	assert.InDelta(t, 0.819, prep.WashedShare(2, 0.2, washout, immersion), 0.001)
	assert.InDelta(t, 0.5, prep.WashedShare(15, 0.105, washout, immersion), 1e-9)
	assert.InDelta(t, 1, prep.WashedShare(15, 0.22, washout, immersion), 1e-5)
}

func TestWashTakesTheFatOutAgain(t *testing.T) {
	butter := entered("butter", "cream", map[constituent.ID]float64{"WATER": 16, "FAT": 81, "PROCNT": 1, "LACS": 1, "ASH": 1, "NA": 600, "CHOLE": 200})
	pot := sugary(spirit(), butter)
	drink := pot.Only(func(row int) bool { return row == 0 })
	fat := pot.Only(func(row int) bool { return row == 1 })
	out, err := prep.Wash(drink, fat, grams(100), factors)
	require.NoError(t, err)
	assert.InDelta(t, 100, drink.Mass()[0], close)
	assert.InDelta(t, 100, out.Lost.Mass(), close)
	assert.Less(t, central(drink, "FAT"), 0.02*81)
	assert.Less(t, central(drink, "CHOLE"), 0.02*0.2)
	assert.Len(t, drink.Rows, 2, "the butter stays in the drink for the allergens")
	assert.Greater(t, central(drink, "NA"), 0.7*0.6)
}

func TestFreezingConcentrates(t *testing.T) {
	pot := potOf(juice())
	out, err := prep.Freeze(pot, grams(50), math.NaN(), factors)
	require.NoError(t, err)
	for d, mass := range pot.Mass() {
		require.InDelta(t, 50, mass, close, "draw %d", d)
	}
	assert.InDelta(t, 50, out.Lost.Mass(), close)
	// Mahmutoglu and Esin: up to 0.38 of the concentration is in slow ice.
	for _, x := range pot.Total("SUCS") {
		require.LessOrEqual(t, x, 10+close)
		require.GreaterOrEqual(t, x, 10*(1-0.38*0.5)-close)
	}
	_, err = prep.Freeze(potOf(juice()), grams(13), math.NaN(), factors)
	assert.Error(t, err, "less than the dry matter")
	_, err = prep.Freeze(potOf(juice()), grams(101), math.NaN(), factors)
	assert.Error(t, err, "more than there is")
	far, err := prep.Freeze(potOf(juice()), grams(18), math.NaN(), factors)
	require.NoError(t, err)
	assert.NotEmpty(t, far.Notes, "beyond 65 % solids")
}

// A brew that draws next to nothing draws no minerals either: what the cup holds goes to
// nothing with the yield.
func TestAWeakBrewHoldsLittleOfEverything(t *testing.T) {
	for _, yield := range []float64{1e-6, 0.01, 0.05} {
		pot := brewing()
		bean := 18 * 0.02
		_, err := prep.Brew(pot, prep.Recipe{Out: grams(38), Yield: grams(yield)}, factors)
		require.NoError(t, err)
		cup := central(pot, "MASS") - central(pot, "WATER")
		assert.InDelta(t, 18*yield, cup, 0.02, "%v", yield)
		assert.Less(t, pot.Of(0, "K")[0], bean*yield/0.05, "%v", yield)
		assert.LessOrEqual(t, pot.Of(0, "K")[0], pot.Of(0, "ASH")[0]+1e-12, "%v", yield)
	}
}

// Of ten sugars none is above 0.1 g in a coffee with 2.2 g of solids (ANSES Ciqual 2020,
// 18071): what tables leave unknown of a bean's sugars is no more than that of a brew.
func TestABrewsUnknownSugarIsNextToNothing(t *testing.T) {
	columns := ledger.NewColumns([]*food.Profile{bean(), water()}, "CHOCDF-other")
	drawer, pot := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: n}, columns), ledger.New(columns, n)
	for i, p := range []*food.Profile{bean(), water()} {
		pot.Pour(p, drawer.PerGram(p), grams([]float64{18, 60}[i]), p.Food.ID.String())
	}
	const solids, rounding = 3.6, 1e-3
	_, err := prep.Brew(pot, prep.Recipe{Out: grams(36), Strength: grams(solids / 36)}, factors)
	require.NoError(t, err)
	for _, id := range []constituent.ID{"SUGAR", "SUCS", "GLUS"} {
		bound := pot.Bounds(0)[constituent.Must(id).Order]
		assert.LessOrEqual(t, bound, solids*0.1/2.2+rounding, id)
		assert.Greater(t, bound, 0.0, "%s is not known to be nothing", id)
	}
	assert.LessOrEqual(t, central(pot, "CHOAVL"), solids*0.1/2.2+rounding)
	assert.Greater(t, central(pot, "CHOCDF-other"), 0.0, "the rest of the carbohydrate has no name")
}

// Hot water draws 29 to 36 % out of roasted coffee (Streuli 1973): a brew that claims more than
// most beans give is told so, and one that claims more than any gave is refused.
func TestMoreThanDissolvesIsSaid(t *testing.T) {
	for yield, said := range map[float64]bool{0.299: false, 0.301: true, 0.36: true} {
		out, err := prep.Brew(brewing(), prep.Recipe{Out: grams(60), Yield: grams(yield)}, factors)
		require.NoError(t, err)
		assert.Equal(t, said, len(out.Notes) > 1, "%g", yield)
	}
	_, err := prep.Brew(brewing(), prep.Recipe{Out: grams(60), Yield: grams(0.361)}, factors)
	assert.ErrorContains(t, err, "36.1 % of the dose")
}

// Which kind of brew it is, the strength that was aimed at says, not a draw of it.
func TestTheStyleIsThatOfTheStatedStrength(t *testing.T) {
	strength := grams(0.069)
	strength[0] = 0.071
	pot := brewing()
	_, err := prep.Brew(pot, prep.Recipe{Out: grams(36), Strength: strength}, factors)
	require.NoError(t, err)
	assert.InDelta(t, 0.08*0.15*18, central(pot, "FAT"), close, "Moeenfard et al., as above")
	pot = brewing()
	_, err = prep.Brew(pot, prep.Recipe{Out: grams(36), Strength: grams(0.069)}, factors)
	require.NoError(t, err)
	assert.LessOrEqual(t, central(pot, "FAT"), 0.046*0.15*18, "a filter holds back more: at most the middle of filter coffees")
}

// The published shares are those of 4 min for coffee and of 3 min for herbs (common practice,
// no source); what is taken out before has given less, in proportion to its time.
func TestAShortSteepGivesLess(t *testing.T) {
	for _, c := range []struct {
		group   string
		minutes float64
		part    float64
	}{{"coffee bean", 2, 0.5}, {"coffee bean", 3, 0.75}, {"coffee bean", 4, 1}, {"coffee bean", 60, 1}, {"herb", 1.5, 0.5}, {"herb", 3, 1}} {
		plant := entered("plant", c.group, map[constituent.ID]float64{"WATER": 5, "PROCNT": 14, "FAT": 15, "CHOCDF": 62, "FIBTG": 20, "ASH": 4, "K": 2000})
		pours := pouring(plant)
		steep := func(s prep.Steeping) (float64, string) {
			pot := pours(water(), 200)
			out, err := prep.Steep(pot, pours(plant, 10), s, factors)
			require.NoError(t, err)
			return central(pot, "K"), strings.Join(out.Notes, "\n")
		}
		usual, said := steep(prep.Steeping{})
		assert.NotContains(t, said, "short:")
		short, said := steep(prep.Steeping{Minutes: grams(c.minutes)})
		assert.InEpsilon(t, c.part, short/usual, 1e-9, "%s, %g min", c.group, c.minutes)
		assert.Equal(t, c.part < 1, strings.Contains(said, "plant, short: the figures used begin at"), said)
	}
}
