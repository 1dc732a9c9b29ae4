package bench_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/bench"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/report/reporttest"
	"sipsum/internal/rewrite"
	"sipsum/internal/sheet"
)

const turnable = `drink: "Turnable"
serves: 1
scale: 0.5 g
components:
  cordial:
    ingredients: [60 g core:lemon-juice, 0.12 g core:salt, 1/2 tsp core:sugar-white, 2 leaves core:spearmint, 5 % core:honey, 20 ml core:water-pure]
    steps:
      - reduce: {to: 50 g}
build: [30 g cordial, 0.5 g core:salt]
`

// A dial goes by the bar's scale; below half of what it shows, and in what no scale weighs, by the last digit written; what is
// counted by one. It never comes to nothing.
func TestDialsTurnByTheScale(t *testing.T) {
	d, faults := drink.Parse("x", []byte(turnable), nil)
	require.NoError(t, faults.Err(fail.Wrong))
	for _, x := range []struct {
		path string
		by   float64
		want string
	}{
		{"cordial/core:lemon-juice", 1, "60.5 g"}, {"cordial/core:lemon-juice", -1, "59.5 g"}, {"cordial/core:lemon-juice", 10, "65.0 g"},
		{"cordial/core:lemon-juice", -1000, "0.5 g"}, {"cordial/core:salt", 1, "0.13 g"}, {"cordial/core:salt", -100, "0.01 g"},
		{"cordial/core:spearmint", 1, "3"}, {"cordial/core:spearmint", -5, "1"}, {"cordial/core:honey", 1, "6 %"}, {"cordial/core:water-pure", -1, "19 ml"},
		{"cordial/reduce/to", 1, "50.5 g"}, {"build/cordial", 1, "30.5 g"}, {"build/core:salt", -1, "0.5 g"},
	} {
		got, err := bench.Turn(d, x.path, x.by)
		require.NoError(t, err, x.path)
		assert.Equal(t, x.want, got, "%s by %v", x.path, x.by)
		text, err := rewrite.Text{Name: "x", Bytes: []byte(turnable)}.Set(x.path, got)
		require.NoError(t, err, x.path)
		_, faults := drink.Parse("x", text, nil)
		assert.NoError(t, faults.Err(fail.Wrong))
	}
	_, err := bench.Turn(d, "build/gold", 1)
	assert.Error(t, err)
}

// The pots of a file are those of its calculation, which adds what came of them.
func TestPotsAreThoseOfTheFile(t *testing.T) {
	for name, s := range reporttest.Demos(t, "eu") {
		file, made := bench.PotsOf(s.Assay.Drink), bench.Pots(s)
		require.Len(t, made, len(file), name)
		for i, pot := range made {
			require.Len(t, pot.Lines, len(file[i].Lines))
			for k := range pot.Lines {
				assert.Equal(t, file[i].Lines[k].Path, pot.Lines[k].Path)
				assert.NotContains(t, pot.Lines[k].Words, "core:", name)
			}
			if !pot.Top {
				assert.NotEmpty(t, pot.Makes, "%s: %s", name, pot.Name)
			}
		}
	}
}

// Each reading stands at its pot with its verdict.
func TestReadingsStandAtTheirPots(t *testing.T) {
	s := reporttest.Read(t, `drink: "Read"
serves: 1
scale: 0.1 g
components:
  syrup:
    ingredients: [50 g core:sugar-white, 50 g core:water-pure]
    measured: {brix: 50.0 ± 0.2}
  sour:
    ingredients: [100 g core:lemon-juice]
    measured: {ph: 6.9}
build: [30 g syrup, 30 g sour]
measured: {mass: 60 g}
`)
	says := map[string][]string{}
	for _, pot := range bench.Pots(s) {
		for _, r := range pot.Reads {
			says[pot.Name] = append(says[pot.Name], r.Kind+" "+r.Says())
		}
	}
	assert.Equal(t, map[string][]string{"syrup": {"brix believed"}, "sour": {"ph contradicts"}, "build": {"mass believed"}}, says)
}

// A trace adds up: what the pots bring is the figure, and what the foods of a pot bring is the pot's.
func TestATraceLeadsToTheRow(t *testing.T) {
	s := reporttest.Demos(t, "eu")["harbour-veil"]
	require.NotNil(t, s)
	trace, err := bench.TraceOf(s, "SUGAR")
	require.NoError(t, err)
	require.NotEmpty(t, trace.Pots)
	assert.Equal(t, "orange syrup", trace.Pots[0].Heading)
	assert.Equal(t, "core:sugar-white", trace.Pots[0].Foods[0].ID)
	// USDA SR28, 19335, Sugars, granulated: 99.80 g of sugars in 100 g.
	assert.Contains(t, trace.Pots[0].Foods[0].Row, "99.8 g")
	_, err = bench.TraceOf(s, "nothing")
	assert.Error(t, err)
	acids, err := bench.TraceOf(s, "ph")
	require.NoError(t, err)
	assert.NotEmpty(t, acids.Behind)
}

// What was is told where it prints otherwise, and only there.
func TestWhatHasChangedIsTold(t *testing.T) {
	one := reporttest.Read(t, "drink: x\nserves: 1\nbuild: [10.0 g core:sugar-white, 90 g core:water-pure]\n")
	two := reporttest.Read(t, "drink: x\nserves: 1\nbuild: [12.0 g core:sugar-white, 90 g core:water-pure]\n")
	was, now := sheet.FrontOf(one), sheet.FrontOf(two)
	before := bench.FiguresOf(&was)
	assert.NotEmpty(t, before.Was(now.Senses[0].Figures[0]))
	assert.Empty(t, before.Was(was.Senses[0].Figures[0]))
	assert.Empty(t, bench.Figures{}.Was(now.Senses[0].Figures[0]))
}
