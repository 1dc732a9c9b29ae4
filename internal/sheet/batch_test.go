package sheet_test

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/batch"
	"sipsum/internal/estimate"
	"sipsum/internal/recipe"
	"sipsum/internal/sheet"
)

// batched is the bench card of a drink, and its sheet.
func batched(t *testing.T, text string, serves int) (*sheet.Sheet, *sheet.Leaf) {
	t.Helper()
	r := assaytest.Found(t, assaytest.Core(t), text)
	a, err := assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 11}).Run(context.Background(), nil, assay.Want{Intervals: true, Chemistry: true})
	require.NoError(t, err)
	s, err := sheet.Build("test", a, nil, uncited, nil)
	require.NoError(t, err)
	b, err := batch.Make(context.Background(), benchFor(s, r), batch.Ask{Serves: serves})
	require.NoError(t, err)
	return s, sheet.BatchLeaf(s, b, false)
}

func benchFor(s *sheet.Sheet, r *recipe.Recipe) batch.Bench {
	return batch.Bench{
		Recipe: r, Central: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1}),
		Hands:    assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 11, Only: amount.Stream}),
		Declared: sheet.Declares(s), Allowed: sheet.Allowed(s),
	}
}

func textOf(l *sheet.Leaf) string {
	var b strings.Builder
	for _, block := range l.Blocks {
		b.WriteString(block.Heading + "\n")
		if block.Grid != nil {
			b.WriteString(block.Grid.Caption + "\n" + strings.Join(block.Grid.Lead, "\n") + "\n")
			for _, r := range block.Grid.Rows {
				b.WriteString(r.Label)
				for _, c := range r.Cells {
					b.WriteString(" | " + c.Text)
				}
				b.WriteString("\n")
			}
		}
		for _, line := range block.Lines {
			b.WriteString(line.Sentence() + "\n")
		}
	}
	return b.String()
}

// Whatever the sheet warns of stands on the bench card, and what is declared.
func TestABenchCardWarnsAsTheSheetDoes(t *testing.T) {
	names, err := filepath.Glob("../../data/demo/*.yaml")
	require.NoError(t, err)
	models, err := filepath.Glob("../../testdata/drinks/models/*.yaml")
	require.NoError(t, err)
	warned := 0
	for _, name := range slices.Concat(names, models) {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		s, l := batched(t, string(text), 12)
		card := textOf(l)
		for _, c := range s.Cautions() {
			warned++
			assert.Contains(t, card, c.Text, name)
		}
		for _, d := range s.Allergens() {
			for _, e := range d.Contains {
				assert.Contains(t, card, e.Name, name)
			}
		}
	}
	assert.Greater(t, warned, 20)
}

// Steps are told with the amounts of the batch: five times those of the file.
func TestStepsOfABatch(t *testing.T) {
	const frame = `
drink: "Steps"
serves: 1
scale: 1 g
components:
  pot:
    ingredients: [150 g core:apple-juice, 50 g core:sugar-white, 100 g core:milk-whole]
    steps:
      - STEP
    keeps: 3 days at 8 °C
build: [POURED g pot]
`
	for _, of := range []struct{ step, poured, want string }{
		{"reduce: {to: 200 g}", "200", "☐ reduce to 1000 g"},
		{"reduce: {by: 20 %}", "240", "☐ reduce by 20 %"},
		{"strain: {collect: 200 g, through: cloth}", "200", "☐ strain through cloth, collect 1000 g"},
		{"press: {collect: 200 g, through: bag}", "200", "☐ press through bag, collect 1000 g"},
		{"steep: {ingredients: [6 g core:peppermint], at: 80 °C, for: 10 min, collect: 250 g}", "250", "☐ steep 30 g Peppermint, fresh at 80 °C for 10 min, collect 1250 g"},
		{"add: 2 g core:salt", "302", "☐ add 10 g Salt"},
		{"chill: {melt: 30 g}", "330", "☐ chill: 150 g of ice melts"},
		{"chill: {from: 70 °C, to: 4 °C}", "400", "☐ chill with ice from 70 °C to 4 °C"},
		{"cool: {to: 4 °C}", "300", "☐ cool to 4 °C"},
		{"dilute: {to: 500 g}", "500", "☐ dilute with water to 2500 g"},
		{"dilute: {brix: 12}", "300", "☐ dilute with water to 12 °Brix"},
		{"invert: {share: 40 %}", "300", "☐ invert 40 %"},
		{"hydrolyse: {lactose: 90 %}", "300", "☐ hydrolyse 90 % of the lactose"},
		{"concentrate: {by: freezing, to: 200 g}", "200", "☐ concentrate by freezing to 1000 g"},
		{"heat: {at: 80 °C, for: 10 min}", "300", "☐ heat at 80 °C for 10 min"},
		{"heat: {at: 58 °C, for: 8 h}", "300", "☐ heat at 58 °C for 8 h"},
		{"adjust: {ph: 3.5, with: core:citric-acid}", "300", "☐ adjust to pH 3.5 with about "},
		{"clarify: {by: agar, with: 0.4 g core:agar, collect: 180 g}", "180", "☐ clarify by agar with 2 g Agar"},
		{"curdle: {collect: 200 g, by: acid, at: 60 °C}", "200", "☐ curdle by acid at 60 °C, collect 1000 g"},
		{"wash: {fat: 60 g core:butter-unsalted, collect: 250 g}", "250", "☐ wash with 300 g Butter"},
		{"treat: \"smoked, apple wood\"", "300", "☐ treat: smoked, apple wood"},
		{"measured: {mass: 300 g, brix: 26.5, ph: 3.9}", "300", "☐ read again: 1500 g, 26.5 °Brix, pH 3.9"},
		{"carbonate: {bottle: 0.5 l, charge: 8 g, at: 4 °C}", "300", "☐ charge a bottle of 0.5 l with 8 g of carbon dioxide at 4 °C"},
		{"foam: {charge: 8 g, gas: N2O, bottle: 0.7 l, at: 4 °C, overrun: 80 %}", "300", "☐ foam: charge a siphon of 0.7 l with 8 g of nitrous oxide at 4 °C, overrun 80 % as read"},
		{"foam: {charge: 8 g, gas: N2}", "300", "☐ foam: charge a siphon with 8 g of nitrogen"},
		{"whip: {overrun: 30 % ± 5 %, at: 60 °C}", "300", "☐ foam at 60 °C, overrun 30 % as read"},
		{"split: {keep: {FAT: 3 %}, collect: 250 g, because: \"weighed cream\"}", "250", "☐ split: weighed cream, collect 1250 g"},
		{"ferment: {before: {brix: 26}, after: {brix: 20, ph: 3.6}}", "280", "☐ ferment until 20 °Brix"},
	} {
		text := strings.NewReplacer("STEP", of.step, "POURED", of.poured).Replace(frame)
		_, l := batched(t, text, 5)
		assert.Contains(t, textOf(l), of.want, of.step)
	}
}

// What only a garnish takes is not worked out, and the card says so.
func TestABenchCardNamesWhatItLeavesOut(t *testing.T) {
	_, l := batched(t, `
drink: "Dusted"
serves: 1
components:
  dust:
    ingredients: [10 g core:sugar-white, 1 g core:cardamom]
build: [100 g core:water-tap]
garnish: [1 g dust]
`, 6)
	assert.Contains(t, textOf(l), "not worked out: dust.")
}

// A code's cold and its days hold where they are stricter than the file.
func TestABenchCardKeepsAsCodesDo(t *testing.T) {
	_, l := batched(t, `
drink: "Kept"
serves: 1
components:
  milk:
    ingredients: [100 g core:milk-whole]
    steps: [heat: {at: 80 °C, for: 5 min}]
    keeps: 14 days at 8 °C
  short:
    ingredients: [50 g core:apple-juice]
    keeps: 12 h at 4 °C
build: [100 g milk, 50 g short]
`, 2)
	card := textOf(l)
	assert.Contains(t, card, "up to 6 days ahead, used up by day 7, kept at 5 °C")
	assert.Contains(t, card, "at most 12 h before, kept at 4 °C")
}

// No hand weighs tenths of a gram of ten kilograms, reads 0.171 kg, counts 130 cups or buys half an egg,
// and nobody weighs what goes on top.
func TestABenchCardIsNotAbsurd(t *testing.T) {
	const text = `
drink: "Large"
serves: 24
scale: 0.1 g
components:
  base:
    ingredients: [4 kg core:milk-whole, 120 g core:sugar-white]
    keeps: 2 days at 4 °C
  shot:
    ingredients: [18 g core:coffee-roasted-arabica, 60 g core:water-brew]
    steps: [{brew: {out: 38 g, strength: 9.5 %}}]
build: [4.1 kg base, 912 g shot, 480 g core:egg-white]
garnish: [{food: "core:basil", amount: 12 g, eaten: true}]
`
	s, _ := batched(t, text, 24)
	bench := benchFor(s, assaytest.Found(t, assaytest.Core(t), text))
	b, err := batch.Make(context.Background(), bench, batch.Ask{Serves: 200})
	require.NoError(t, err)
	card := textOf(sheet.BatchLeaf(s, b, true))
	for _, want := range []string{"base | 170.8 g |", "8.50 gal", "122 × large", "with each glass", "34.17 kg", "Basil, fresh | 0.5 g |  |"} {
		assert.Contains(t, card, want)
	}
	for _, absurd := range []string{"e+", "0.171 kg", "0.1708 kg", "130 cups", "1 glasses"} {
		assert.NotContains(t, card, absurd)
	}
	b, err = batch.Make(context.Background(), bench, batch.Ask{Serves: 1})
	require.NoError(t, err)
	card = textOf(sheet.BatchLeaf(s, b, false))
	assert.NotContains(t, card, "1 serves")
	assert.Contains(t, card, "1 × large")
}

// What the bench has to be told stands on its card, each in a drink where it is so.
func TestABenchCardTells(t *testing.T) {
	for _, of := range []struct {
		text   string
		serves int
		want   []string
	}{
		{"drink: Brimming\nserves: 1\nglass: 60 ml\nbuild: [80 g core:water-pure]\n", 1, []string{"overflows a glass of 60 ml"}},
		{"drink: Iced\nserves: 1\nbuild: [80 g core:water-pure]\nfinish: [{chill: {melt: 20 g}}]\n", 2, []string{"Of ice only what melts"}},
		{"drink: Pulled\nserves: 1\ncomponents:\n  shot: {ingredients: [36 g core:espresso]}\nbuild: [18 g shot]\n", 30,
			[]string{"15 shots in all, 36 g each", "one for 2 glasses, as they are built", "| 15 shots", "pulled, not bought"}},
		{"drink: Faint\nserves: 1\nscale: 0.1 g\nbuild: [0.05 g core:citric-acid, 0.31 g core:malic-acid, 20 g core:sugar-white, 180 g core:water-pure]\n", 1,
			[]string{"Finer than scales show: Citric acid", "The bar's scale shows 0.1 g, too coarse for Malic acid", "| 0.05 g | finer |", "| 0.31 g | 0.01 g |", "100 % (citric acid)"}},
		{"drink: Aged\nserves: 1\ncomponents:\n  milk: {ingredients: [100 g core:milk-whole], keeps: 10 days at 4 °C}\nbuild: [100 g milk]\n", 2,
			[]string{"The file says 10 days", "by day 7"}},
		{"drink: Nutty\nserves: 1\nbuild: [40 g core:hazelnut, 60 g core:water-pure]\n", 1, []string{"☐ Hazelnut | 40 g", "counted shelled"}},
		{"drink: Two\nserves: 1\nfoods:\n  a: {name: A, group: sugar, per: 100 g, values: {sucrose: 100 g}, source: me, price: 4 EUR per 1 kg}\n" +
			"  b: {name: B, group: water, per: 100 g, values: {water: 100 g}, source: me, price: 2 USD per 1 kg}\n  c: {name: C, group: sugar, per: 100 g, values: {sucrose: 100 g}, source: me, price: 1 EUR per 1 l}\n" +
			"build: [50 g own:a, 100 g own:b, 1 g own:c]\n", 1, []string{"A serve costs at least 0.20 EUR and 0.20 USD", "C: sold by 1 l, and nobody states its density"}},
		{"drink: Cheap\nserves: 1\nfoods:\n  a: {name: A, group: sugar, per: 100 g, values: {sucrose: 100 g}, source: me, price: 4.20 EUR per 1 kg}\nbuild: [1 g own:a]\n", 1,
			[]string{"A serve costs < 0.01 EUR"}},
		{"drink: Floor\nserves: 1\nfoods:\n  a: {name: A, group: sugar, per: 100 g, values: {sucrose: 100 g}, source: me, price: 2 EUR per 1 kg}\nbuild: [73 g own:a, 100 g core:water-pure]\n", 1,
			[]string{"A serve costs at least 0.14 EUR"}},
		{"drink: Strong\nserves: 1\ncomponents:\n  shot:\n    ingredients: [18 g core:coffee-roasted-arabica, 60 g core:water-brew]\n    steps: [{brew: {out: 38 g, strength: 9.5 %}}]\nbuild: [38 g shot]\n", 1,
			[]string{"The strength of shot is taken as the file has it"}},
	} {
		_, l := batched(t, of.text, of.serves)
		for _, want := range of.want {
			assert.Contains(t, textOf(l), want)
		}
	}
	_, l := batched(t, "drink: One\nserves: 1\nbuild: [80 g core:water-pure]\n", 1)
	assert.Equal(t, "1 serve", l.Below[0])
	assert.Contains(t, textOf(l), "For 1 serve, as it is bought")
}

// A list rounds up what is bought, and writes no minus before nothing.
func TestDigitsOfAList(t *testing.T) {
	for want, x := range map[string]float64{"0": 0, "0.001": 0.001, "0.04": 0.0312, "1.8": 1.8, "432": 432.0000000001, "433": 432.4, "51": 51} {
		assert.Equal(t, want, sheet.Digits(x))
	}
}
