package pack_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/pack"
)

func rules(t testing.TB, name string) *pack.Rules {
	t.Helper()
	r, ok := pack.Of(name)
	require.True(t, ok, name)
	return r
}

// Regulation (EU) No 1169/2011, Annex I: carbohydrate is what is metabolised, polyols included,
// and salt is sodium × 2.5; 21 CFR 101.9(c)(6): total carbohydrate is what protein, fat, moisture
// and ash leave. Standard 1.2.8 of Australia and New Zealand: available carbohydrate.
func TestWhatTheRowsOfAPackAreOf(t *testing.T) {
	for name, of := range map[string]constituent.ID{"eu": "CHOAVL", "uk": "CHOAVL", "anz": "CHOAVL", "codex": "CHOAVL", "us": "CHOCDF", "ca": "CHOCDF"} {
		row, ok := rules(t, name).Row("carbohydrate")
		require.True(t, ok)
		assert.Equal(t, of, row.Of, name)
	}
	row, _ := rules(t, "eu").Row("carbohydrate")
	assert.Equal(t, []constituent.ID{"POLYL"}, row.Also)
	row, _ = rules(t, "anz").Row("carbohydrate")
	assert.Empty(t, row.Also)
	row, ok := rules(t, "us").Row("salt")
	require.True(t, ok, "a word of other rules is understood too")
	assert.Equal(t, constituent.Sodium, row.Of)
	assert.Equal(t, 2.5, row.Times)
	row, ok = rules(t, "eu").Row("Dietary Fiber")
	require.True(t, ok)
	assert.Equal(t, "fibre", row.Word, "what other rules call so is the row that these have of it")
	_, ok = rules(t, "eu").Row("carbs")
	assert.False(t, ok)
	assert.Equal(t, "eu", pack.Usual().Name)
	assert.Equal(t, []string{"anz", "ca", "codex", "eu", "uk", "us"}, pack.Names())
}

// Published examples: protein of milk 3.4 g is accepted from 1.4 to 5.4, 20 g from 16 to 24, fat 5 g
// from 3.5 to 6.5, saturates 2 g from 1.2 to 2.8 (trade article on the guidance of 2012); 21 CFR
// 101.9(g): at least 80 % of protein, at most 120 % of sugars; the same in Canada.
func TestWhatIsAcceptedOfAFigure(t *testing.T) {
	open := math.Inf(1)
	for _, c := range []struct {
		rules, row     string
		x, least, most float64
	}{
		{"eu", "protein", 3.4, 1.4, 5.4}, {"uk", "protein", 20, 16, 24}, {"eu", "fat", 5, 3.5, 6.5}, {"eu", "saturates", 2, 1.2, 2.8}, {"eu", "sugars", 50, 42, 58}, {"eu", "fat", 0.5, 0, 2},
		{"us", "protein", 10, 8, open}, {"us", "carbohydrate", 30, 24, open}, {"us", "sugars", 10, -open, 12}, {"ca", "sodium", 100, -open, 120}, {"ca", "fibre", 5, 4, open},
	} {
		tolerance, ok := pack.ToleranceOf(c.rules, c.row, c.x)
		require.True(t, ok, "%v", c)
		least, most := tolerance.Around(c.x, c.x)
		assert.InDelta(t, c.least, least, 1e-9, "%v", c)
		assert.InDelta(t, c.most, most, 1e-9, "%v", c)
		assert.NotEmpty(t, tolerance.Source)
	}
	for _, c := range [][2]string{{"eu", "salt"}, {"eu", "calcium"}, {"eu", "energy"}, {"anz", "sugars"}, {"codex", "protein"}, {"ca", "fat"}} {
		_, ok := pack.ToleranceOf(c[0], c[1], 10)
		assert.False(t, ok, "%v: nobody of us has read it", c)
	}
}

// FDA Food Labeling Guide, appendix H: fat below 5 g to the half gram, energy above 50 to ten, sodium
// above 140 to ten; what is not on that grid was rounded less. The Commission's guidance: to 0.1 g
// below 10 g, to 1 g above.
func TestHowFarAFigureWasRounded(t *testing.T) {
	for _, c := range []struct {
		rules, row string
		x          float64
		decimals   int
		want       float64
	}{
		{"us", "fat", 2.5, 1, 0.25}, {"us", "fat", 2.6, 1, 0.05}, {"us", "calories", 140, 0, 5}, {"us", "calories", 143, 0, 0.5}, {"us", "sodium", 150, 0, 5}, {"us", "carbohydrate", 12, 0, 0.5},
		{"eu", "fat", 3.5, 1, 0.05}, {"eu", "fat", 12, 0, 0.5}, {"eu", "fat", 12.4, 1, 0.05}, {"eu", "sugars", 5, 0, 0.5}, {"eu", "salt", 0.13, 2, 0.005},
	} {
		r := rules(t, c.rules)
		row, ok := r.Row(c.row)
		require.True(t, ok)
		assert.InDelta(t, c.want, r.Rounding(row, c.x, c.decimals), 1e-12, "%v", c)
	}
}

// The Commission's guidance of 2012, section 6: "0 g" may stand for fat, carbohydrate, sugars, fibre
// and protein up to 0.5 g, saturates to 0.1 g, salt to 0.0125 g. FDA Food Labeling Guide, appendix H:
// below 5 Calories, 0.5 g, 5 mg of sodium, 2 mg of cholesterol. Canada, B.01.401: below 5 mg of
// sodium, 0.2 g of saturated fat. Where rules name no limit, half of their step.
func TestWhatAZeroWasRoundedFrom(t *testing.T) {
	for _, c := range []struct {
		rules, row string
		below      float64
		ruled      bool
	}{
		{"eu", "fat", 0.5, true}, {"eu", "carbohydrate", 0.5, true}, {"eu", "sugars", 0.5, true}, {"eu", "fibre", 0.5, true}, {"uk", "protein", 0.5, true}, {"eu", "saturates", 0.1, true}, {"eu", "salt", 0.0125, true},
		{"us", "calories", 5, true}, {"us", "fat", 0.5, true}, {"us", "sodium", 5, true}, {"us", "cholesterol", 2, true}, {"us", "carbohydrate", 0.5, true}, {"us", "sugars", 0.5, true}, {"us", "protein", 0.5, true},
		{"ca", "fat", 0.5, true}, {"ca", "saturated", 0.2, true}, {"ca", "trans", 0.2, true}, {"ca", "cholesterol", 2, true}, {"ca", "sodium", 5, true}, {"ca", "calories", 5, true}, {"ca", "iron", 0.05, true}, {"ca", "calcium", 5, true},
		{"eu", "energy", 0.5, false}, {"anz", "fat", 0.05, false}, {"anz", "sodium", 0.5, false}, {"ca", "protein", 0.05, false}, {"us", "calcium", 5, false}, {"eu", "calcium", 0, false},
	} {
		r := rules(t, c.rules)
		row, ok := r.Row(c.row)
		require.True(t, ok)
		below, ruled := r.Zero(row)
		assert.Equal(t, c.ruled, ruled, "%v", c)
		assert.InDelta(t, c.below, below, 1e-12, "%v", c)
	}
}

// 83.3 % of a normal distribution lie within 1.382 standard deviations. Below a small figure there
// is no more than all of it, above one no more than fits, and an open side is the class's.
func TestFromAToleranceToASpread(t *testing.T) {
	const z = 1.382
	open := math.Inf(1)
	for _, c := range []struct{ x, least, most, class, limit, want float64 }{
		{20, 16, 24, 9, 100, 4 / z},
		{0.5, 0, 2.5, 9, 100, (0.5 + 2) / 2 / z},
		{98, 90, 106, 9, 100, (8 + 2) / 2 / z},
		{10, 8, open, 3, 100, (2 + 3*z) / 2 / z},
		{10, -open, 12, 3, 100, (3*z + 2) / 2 / z},
		{10, -open, open, 3, 100, 3},
		{10, -open, open, 30, 100, (10 + 30*z) / 2 / z},
	} {
		assert.InEpsilon(t, c.want, pack.Spread(c.x, c.least, c.most, c.class, c.limit), 1e-3, "%v", c)
	}
	inside, source := pack.Inside()
	assert.InDelta(t, 1-169.0/1010, inside, 0.0005, "Fitzpatrick et al. 2014: 169 of 1010")
	assert.Contains(t, source, "Fitzpatrick")
}
