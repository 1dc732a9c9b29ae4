package minutes_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
	"sipsum/internal/minutes"
)

// course follows a glass of a drink file.
func course(t *testing.T, text string) (*minutes.Course, *assay.Assay) {
	t.Helper()
	a := assaytest.Asked(t, assaytest.Core(t), "drink: d\n"+text, assaytest.Options{Draws: 400, Want: assay.Want{Chemistry: true, Intervals: true, Draws: true}})
	return minutes.Of(a.Standing()), a
}

// at gives an axis some minutes after the pour.
func at(t *testing.T, c *minutes.Course, key string, after float64) chemistry.Estimate {
	t.Helper()
	axis := c.Axis(key)
	require.NotNil(t, axis, key)
	for i, x := range c.Times {
		if x == after {
			return axis.Points[i]
		}
	}
	require.Fail(t, "no such time")
	return chemistry.Estimate{}
}

// A drink of about 90 ml, stirred and poured in a room of 17 °C, as a bench trial of a bar school prints it (The
// Importance of Chilling Your Glassware): the first into a glass of that temperature, the second into one out
// of a freezer. The rate is fitted to the first; the second was not used, and lies in the interval.
func TestAColdDrinkWarmsAsPublished(t *testing.T) {
	const text = "serves: 1\nat: %g °C\nstands: {room: 17 °C}\nbuild:\n  - 27 g core:ethanol\n  - 63 g core:water-pure\n"
	for _, x := range []struct{ first, after10, within float64 }{
		{-1.3, 4.4, 0.5},
		{-3.4, 1.3, 1.5},
	} {
		c, _ := course(t, fmt.Sprintf(text, x.first))
		ten := at(t, c, minutes.Temperature, 10)
		assert.InDelta(t, x.after10, ten.Mean, x.within)
		assert.LessOrEqual(t, ten.Low, x.after10)
		assert.GreaterOrEqual(t, ten.High, x.after10)
	}
}

// Water in a mug (S. Wagon, data set CoolingWater of mosaicData: a minute a row, in a room of which the last
// rows tell that it is about 24 °C) from 76.5 °C, and in three more (A. Lobanov, cooling-down, 2017, containers 2, 3 and 5, one
// reading in some five minutes, in a room of about 22 °C). How much the mugs hold nobody says: of 250 to 350 g the
// interval holds what was read.
func TestAHotDrinkCoolsAsPublished(t *testing.T) {
	for _, x := range []struct{ first, room, after10 float64 }{
		{76.5, 24, 65.3}, {65.3, 24, 58.1}, {58.1, 24, 52.5},
		{75.1, 22, 64.4}, {68.9, 22, 59.0}, {67.2, 22, 58.0}, // between two readings, by a straight line
	} {
		for _, grams := range []float64{250, 350} {
			c, _ := course(t, fmt.Sprintf("serves: 1\nat: %g °C\nstands: {room: %g °C}\nbuild:\n  - %g g core:water-pure\n", x.first, x.room, grams))
			ten := at(t, c, minutes.Temperature, 10)
			assert.LessOrEqual(t, ten.Low, x.after10, "%g g from %g °C", grams, x.first)
			assert.GreaterOrEqual(t, ten.High, x.after10, "%g g from %g °C", grams, x.first)
		}
	}
}

// Ice melts by the heat that comes: while the drink is as cold as its ice it is what the room brings, divided by the
// heat of fusion, 333.4 J/g (CRC Handbook): 200 g of water at 0 °C, which hold 837 J/K, at the central rate.
func TestIceMeltsByTheHeatThatComes(t *testing.T) {
	c, _ := course(t, "serves: 1\nat: 0 °C ± 0 °C\nstands: {room: 20 °C ± 0 °C, ice: 100 g ± 0 g}\nbuild:\n  - 200 g ± 0 g core:water-pure\n")
	want := 0.030 * math.Cbrt(150.0/300) * 300 * 4.185 * 20 * 10 / 333.4 // the surface is that of 300 g
	assert.InEpsilon(t, want, at(t, c, minutes.Melted, 10).Mean, 0.002)
	assert.Zero(t, at(t, c, minutes.Temperature, 10).Mean, "a drink with ice in it stays as cold as its ice")

	// what ice takes out of the drink melts it, and brings what melts to the drink's temperature, 5 °C in the first minute
	warm, _ := course(t, "serves: 1\nat: 6 °C ± 0 °C\nstands: {room: 6 °C ± 0 °C, ice: 100 g ± 0 g}\nbuild:\n  - 200 g ± 0 g core:water-pure\n")
	gone := 6 - at(t, warm, minutes.Temperature, 1).Mean
	assert.InDelta(t, 6*(1-math.Exp(-0.35)), gone, 1e-6)
	assert.InEpsilon(t, 837*gone/(333.4+4.185*5), at(t, warm, minutes.Melted, 1).Mean, 0.03)
}

// Once the ice has gone the drink warms; no more melts than there was.
func TestIceGoes(t *testing.T) {
	c, _ := course(t, "serves: 1\nat: 2 °C\nstands: {room: 24 °C, ice: 3 g, melts: 1 g/min}\nbuild:\n  - 150 g core:orange-juice\n")
	assert.InDelta(t, 1, at(t, c, minutes.Melted, 1).Mean, 0.01)
	assert.InDelta(t, 3, at(t, c, minutes.Melted, 5).Mean, 0.01)
	assert.InDelta(t, 3, at(t, c, minutes.Melted, 10).Mean, 0.01)
	// in a minute the room brings 0.03 · 22 °C and a gram of ice takes 333.4 J/g + 4.185 J/(g K) · 2 °C; 150 g of orange juice hold
	// some 3.9 J/(g K)
	assert.InDelta(t, 2+0.03*22-(333.4+4.185*2)/(150*3.9), at(t, c, minutes.Temperature, 1).Mean, 0.03)
	assert.Greater(t, at(t, c, minutes.Temperature, 5).Mean, 2.5)
	assert.Less(t, at(t, c, minutes.Brix, 10).Mean, at(t, c, minutes.Brix, 0).Mean)
	assert.InEpsilon(t, 150.0/153, at(t, c, minutes.Acidity, 10).Mean/at(t, c, minutes.Acidity, 0).Mean, 1e-3, "3 g of water in 150 g")
}

// What is said to melt melts no faster than heat allows: 100 g of juice give 1.6 kJ from 4 °C to 0 °C, the room 0.25 kJ in the first
// minute, and a gram of ice takes 0.34 kJ.
func TestStatedIceMeltsByItsHeat(t *testing.T) {
	c, _ := course(t, "serves: 1\nat: 4 °C ± 0 °C\nstands: {room: 22 °C ± 0 °C, ice: 20 g, melts: 100 g/min}\nbuild:\n  - 100 g core:orange-juice\n")
	one := at(t, c, minutes.Melted, 1)
	assert.InDelta(t, (1.6+0.25)/0.34, one.Mean, 0.5)
	assert.Less(t, at(t, c, minutes.Temperature, 1).Mean, 0.1)
	assert.True(t, c.Unpaid)
	paid, _ := course(t, "serves: 1\nat: 6 °C\nstands: {room: 22 °C, ice: 60 g, melts: 1.5 g/min}\nbuild:\n  - 150 g core:orange-juice\n")
	assert.False(t, paid.Unpaid, "0.5 kJ a minute of 3.5 kJ, and the room brings 0.3 each")
}

// A spirit out of a warm room is cooled by melting some of its ice: 60 g of gin hold some 3.9 J/(g K), and come from 20 °C to 0 °C
// with 14 g; the room brings to a glass of 160 g, which has (160/60)^⅔ the surface, 0.041 a minute of 20 °C, 3.6 kJ in ten minutes, 11 g more,
// and some degrees below take a gram or two.
func TestASpiritOnIce(t *testing.T) {
	c, _ := course(t, "serves: 1\nat: 20 °C ± 0 °C\nstands: {room: 22 °C ± 0 °C, ice: 100 g ± 0 g}\nbuild:\n  - 60 g core:gin-45\n")
	ten := at(t, c, minutes.Melted, 10)
	assert.InDelta(t, 26, ten.Mean, 2.5)
	assert.Less(t, at(t, c, minutes.Temperature, 10).Low, -1.0)
	assert.Greater(t, at(t, c, minutes.Temperature, 10).Low, -15.0)
}

// A spirit out of the freezer is not as it was poured: at −5 °C it is colder than where some glasses of it rest on ice and warms by the
// room there, and warmer than where others do. It freezes at −27 °C (CRC Handbook, 38 % by mass), and a tenth of ice makes it no colder than
// halfway there; watered to a third it freezes at −7 °C (14 %), and is no colder than that with a heap of ice in it.
func TestAColdSpiritOnIceGoes(t *testing.T) {
	c, _ := course(t, "serves: 1\nat: -5 °C ± 0 °C\nstands: {room: 22 °C, ice: 100 g}\nbuild:\n  - 60 g core:gin-45\n")
	ten := at(t, c, minutes.Temperature, 10)
	assert.True(t, c.Axis(minutes.Temperature).Moves)
	assert.Less(t, ten.Low, -7.0, "bench trials of bars serve stirred ones at −6 °C")
	assert.Greater(t, ten.Low, -13.5)
	assert.Greater(t, ten.High, -4.0)
	assert.LessOrEqual(t, ten.High, 0.1)

	little, _ := course(t, "serves: 1\nat: 4 °C\nstands: {room: 24 °C, ice: 200 g}\nbuild:\n  - 10 g core:gin-45\n")
	ten = at(t, little, minutes.Temperature, 10)
	assert.Greater(t, at(t, little, minutes.Melted, 10).Low, 10.0)
	assert.Greater(t, ten.Low, -7.0)

	strong, _ := course(t, "serves: 1\nat: 4 °C\nstands: {room: 24 °C, ice: 100 g}\nbuild:\n  - 40 g core:ethanol\n  - 2 g core:water-pure\n")
	assert.Less(t, at(t, strong, minutes.Temperature, 10).Low, -5.0, "that nobody published where it freezes is no floor of 0 °C")
}

// The room warms the ice through all of the glass: 60 g of it beside 1 g of juice (3.9 J/(g K)), by the surface of 61 g, take
// 0.03·(150/61)^⅓·61·3.9 = 9.6 J/K a minute, over ten of them from 6 °C down by e^(−0.35 t), 20.3 °C on average, 5.9 g; 100 g beside 30 ml of espresso 375 J, 11 g.
func TestMuchIceBesideLittleDrink(t *testing.T) {
	one, _ := course(t, "serves: 1\nat: 6 °C\nstands: {room: 22 °C, ice: 60 g}\nbuild:\n  - 1 g core:orange-juice\n")
	assert.InDelta(t, 5.9, at(t, one, minutes.Melted, 10).Mean, 0.2)
	espresso, _ := course(t, "serves: 1\nat: 4 °C\nstands: {room: 22 °C, ice: 100 g}\nbuild:\n  - 30 ml core:espresso\n")
	assert.InDelta(t, 11+1.4, at(t, espresso, minutes.Melted, 10).Mean, 1.5, "and 0.5 kJ of its own")
}

// Juice in an ice room is in no hot cup; a room of 0 °C is one of 0 °C, and not of a little more.
func TestAColdRoom(t *testing.T) {
	c, _ := course(t, "serves: 1\nat: 6 °C\nstands: {room: 0 °C}\nbuild:\n  - 150 g core:orange-juice\n")
	for _, r := range c.Rates {
		assert.NotEqual(t, "hot cup", r.Name)
		if r.Name == "room" {
			assert.Less(t, r.Result.Low, -0.4)
			assert.Greater(t, r.Result.High, 0.4)
		}
	}
}

// A sparkling wine loses 34 to 58 % of its gas in ten minutes in a glass (Beaumont et al. 2019, Curr Res Nutr Food Sci 7:227,
// abstract), and 14 to 35 % of what its bottle held as it is poured (Liger-Belair et al. 2010, J Agric Food Chem 58:8768). What a step says
// is left is in the glass already.
func TestGasLeavesAsPublished(t *testing.T) {
	c, a := course(t, "serves: 1\nat: 12 °C\nbuild:\n  - 150 g core:apple-juice\nfinish:\n  - carbonate: {left: 8 g/l ± 0 g/l}\n")
	ten := at(t, c, minutes.Gas, 10)
	first := a.Chemistry.CO2.Mean
	assert.InDelta(t, 8, first, 0.1)
	assert.InDelta(t, 0.66, ten.High/first, 0.02)
	assert.InDelta(t, 0.42, ten.Low/first, 0.02)
	assert.Less(t, ten.Mean, at(t, c, minutes.Gas, 5).Mean)
	assert.Greater(t, at(t, c, minutes.PH, 10).Mean, at(t, c, minutes.PH, 0).Mean, "it is an acid that leaves")
	assert.Equal(t, at(t, c, minutes.Acidity, 0).Summary, at(t, c, minutes.Acidity, 10).Summary, "a burette titrates without gas")

	stated, _ := course(t, "serves: 1\nat: 12 °C\nstands: {loses: 6 %/min ± 0 %/min}\nbuild:\n  - 150 g core:apple-juice\nfinish:\n  - carbonate: {left: 8 g/l ± 0 g/l}\n")
	assert.InEpsilon(t, math.Pow(0.94, 5), at(t, stated, minutes.Gas, 5).Mean/first, 3e-3)
}

// A bottle loses 14 to 35 % of its gas as it is poured (Liger-Belair et al. 2010, J Agric Food Chem 58:8768: 1.6 to 4.0 of 11.4 g/l);
// what a step says is left has been poured.
func TestPouringTakesGasOutOfBottles(t *testing.T) {
	const bottle = "serves: 1\nat: 8 °C\nstands: {loses: 0 %/min ± 0 %/min}\nfoods:\n  fizz:\n    name: \"House fizz\"\n    group: soft drink\n    fill: core:apple-juice\n    per: 100 g\n    values: {CO2: 0.6 g ± 0 g}\n    source: invented\nbuild:\n  - 150 g own:fizz\n"
	c, _ := course(t, bottle)
	first, one := at(t, c, minutes.Gas, 0), at(t, c, minutes.Gas, 1)
	assert.InDelta(t, 0.86, one.High/first.Mean, 0.02)
	assert.InDelta(t, 0.65, one.Low/first.Mean, 0.02)
	assert.Equal(t, one.Summary, at(t, c, minutes.Gas, 10).Summary, "it is poured once")
}

// Of one shape, eight times the mass has four times the surface: what is between it and the room goes half as fast.
func TestALargerServingWarmsSlower(t *testing.T) {
	rate := func(grams float64) float64 {
		c, _ := course(t, fmt.Sprintf("serves: 1\nat: 4 °C\nstands: {room: 24 °C}\nbuild:\n  - %g g core:water-pure\n", grams))
		return math.Log(20 / (24 - at(t, c, minutes.Temperature, 10).Mean))
	}
	assert.InEpsilon(t, 2, rate(50)/rate(400), 1e-6)
}

// At the pour all is as the assay has it, bit for bit.
func TestAtThePourAllIsTheAssays(t *testing.T) {
	c, a := course(t, "serves: 2\nat: 4 °C\nstands: {ice: 40 g}\nbuild:\n  - 150 g core:orange-juice\n  - 60 g core:apple-juice\nfinish:\n  - carbonate: {left: 4 g/l}\n")
	assert.Equal(t, a.Chemistry.PHMeter.Summary, at(t, c, minutes.PH, 0).Summary)
	assert.Equal(t, a.Chemistry.Acidity[0].Per100g.Summary, at(t, c, minutes.Acidity, 0).Summary)
	assert.Equal(t, a.Chemistry.Brix.Summary, at(t, c, minutes.Brix, 0).Summary)
	assert.Equal(t, a.Chemistry.CO2.Summary, at(t, c, minutes.Gas, 0).Summary)
	assert.Equal(t, 4.0, at(t, c, minutes.Temperature, 0).Mean)
	assert.Zero(t, at(t, c, minutes.Melted, 0).High)
}

// What is not known is not told, and the course says what to write.
func TestWhatIsNotTold(t *testing.T) {
	none, _ := course(t, "serves: 1\nbuild:\n  - 150 g core:orange-juice\n")
	assert.Contains(t, at(t, none, minutes.Temperature, 10).Why, "does not say how warm")
	assert.Equal(t, "at: 6 °C", none.Axis(minutes.Temperature).Write)
	assert.Nil(t, none.Axis(minutes.Gas), "a still drink has no gas to lose")
	assert.False(t, none.Axis(minutes.Brix).Moves)

	ice, _ := course(t, "serves: 1\nstands: {ice: 60 g}\nbuild:\n  - 150 g core:orange-juice\n")
	for _, key := range []string{minutes.Melted, minutes.Brix, minutes.PH, minutes.Acidity} {
		assert.Contains(t, at(t, ice, key, 3).Why, "how fast its ice melts", key)
		assert.Contains(t, ice.Axis(key).Write, "melts: 1.5 g/min", key)
	}
	assert.Empty(t, at(t, ice, minutes.Brix, 0).Why)
	weighed, _ := course(t, "serves: 1\nstands: {ice: 60 g, melts: 1.5 g/min}\nbuild:\n  - 150 g core:orange-juice\n")
	assert.InDelta(t, 15, at(t, weighed, minutes.Melted, 10).Mean, 0.01, "what was weighed wants no temperature")
	assert.NotEmpty(t, at(t, weighed, minutes.Temperature, 3).Why)

	frozen, _ := course(t, "serves: 1\nat: -8 °C\nbuild:\n  - 150 g core:orange-juice\n")
	assert.Contains(t, at(t, frozen, minutes.Temperature, 10).Why, "part of it is ice")
	boiling, _ := course(t, "serves: 1\nat: 98 °C\nbuild:\n  - 150 g core:water-pure\n")
	assert.Contains(t, at(t, boiling, minutes.Temperature, 10).Why, "above 95 °C")
	dry, _ := course(t, "serves: 1\nat: 20 °C\nbuild:\n  - 50 g core:sugar-white\n")
	assert.NotEmpty(t, dry.Why)
}
