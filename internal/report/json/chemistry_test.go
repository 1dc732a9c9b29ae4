package jsonreport_test

import (
	"bytes"
	"context"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/report/json"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// A component that was read has a curve, doses and their caution; of one that was
// titrated with acid no acidity is given, and why.
func TestWhatWasReadHasCurveDosesAndReasons(t *testing.T) {
	const text = `
drink: "Read Twice"
serves: 1
foods:
  stuff: {name: "Stuff", per: 100 g, values: {WATER: 97 g}, source: "invented"}
components:
  sharp: {ingredients: [100 g own:stuff], measured: {ph: 3.2, ta: 0.60 g/100 g}}
  round: {ingredients: [100 g own:stuff], measured: {titration: [[0 ml, 6.7], [4 ml, 5.1], [8 ml, 4.2]], acid: 0.1 mol/l, sample: 10.0 g}}
build: [10 g sharp, 90 g round]
`
	d, faults := drink.Parse("test", []byte(text), nil)
	a, err := assaytest.Run(context.Background(), d, faults, nothing{}, assaytest.Options{Draws: 50, Seed: 1, Want: assay.Want{Degassed: true}})
	require.NoError(t, err)
	s, err := sheet.Build("sipsum test", a, nil, func(string, string) (source.Work, bool) { return source.Work{}, false }, nil)
	require.NoError(t, err)
	var out bytes.Buffer
	require.NoError(t, jsonreport.Assay(&out, s))
	var doc struct {
		Chemistry  map[string]any
		Components []struct{ Chemistry map[string]any }
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &doc))

	sharp := doc.Components[0].Chemistry
	assert.InDelta(t, 3.2, sharp["ph_meter"].(map[string]any)["mean"], 1e-6)
	curve := sharp["titration_curve"].([]any)
	assert.Equal(t, map[string]any{"ph": 3.2, "base_mmol_per_100_g": 0.0}, rounded(curve[0].(map[string]any)))
	first := sharp["doses"].([]any)[0].(map[string]any)
	assert.ElementsMatch(t, []string{"acid", "percent", "titratable_acidity", "ml_per_100_g", "ph"}, keys(first))
	assert.Contains(t, sharp["doses_caution"], "burn")

	round := doc.Components[1].Chemistry
	assert.Nil(t, round["titratable_acidity"].(map[string]any)["mean"])
	assert.Contains(t, round["titratable_acidity"].(map[string]any)["why"], "titrated up to pH 6.70 only")
	assert.Contains(t, round["strong_ion_difference"].(map[string]any)["why"], "titration")
	assert.NotContains(t, round, "doses")
	assert.NotContains(t, doc.Chemistry, "ph_degassed", "it holds no gas")
}

func keys(m map[string]any) (list []string) {
	for k := range m {
		list = append(list, k)
	}
	return list
}

func rounded(m map[string]any) map[string]any {
	const hundred = 100
	for k, v := range m {
		m[k] = float64(int(v.(float64)*hundred+0.5)) / hundred
	}
	return m
}

// A figure of the chemistry that is null says why, the density of a solid too.
func TestADensityThatIsWithheldSaysWhy(t *testing.T) {
	const text = `
drink: "Dry"
serves: 1
foods:
  dust: {name: "Dust", per: 100 g, values: {WATER: 5 g, SUGAR: 90 g}, source: "invented"}
components:
  jar: {ingredients: [100 g own:dust]}
build: [10 g jar]
`
	d, faults := drink.Parse("test", []byte(text), nil)
	a, err := assaytest.Run(context.Background(), d, faults, nothing{}, assaytest.Options{Draws: 20, Seed: 1})
	require.NoError(t, err)
	s, err := sheet.Build("sipsum test", a, nil, func(string, string) (source.Work, bool) { return source.Work{}, false }, nil)
	require.NoError(t, err)
	var out bytes.Buffer
	require.NoError(t, jsonreport.Assay(&out, s))
	type solution struct {
		Density, Brix struct {
			Mean *float64
			Why  string
		}
	}
	var doc struct {
		Chemistry  solution
		Components []struct{ Chemistry solution }
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &doc))
	for _, c := range []solution{doc.Chemistry, doc.Components[0].Chemistry} {
		assert.Nil(t, c.Density.Mean)
		assert.Contains(t, c.Density.Why, "no liquid")
		assert.Equal(t, c.Density.Why, c.Brix.Why)
	}
}

// What rests on a published pH says on which.
func TestAPublishedPHIsDeclared(t *testing.T) {
	const text = `
drink: "Declared"
serves: 1
build: [10 g core:espresso]
`
	d, faults := drink.Parse("test", []byte(text), nil)
	shot := &food.Food{
		ID: food.ID{Table: "core", Code: "espresso"}, Group: "coffee drink", Edible: 1, Density: food.Density{GramsPerMl: 1, SD: 0.01},
		Values: []food.Value{
			{Constituent: "WATER", Amount: 97, SD: 0.1, Limit: food.None, Low: food.None, High: food.None},
			{Constituent: "CITAC", Amount: 100, SD: 60, Limit: food.None, Low: food.None, High: food.None},
			{Constituent: "PH", Amount: 5.1, SD: food.None, Limit: food.None, Low: 5.0, High: 5.3, Source: "one other"},
		},
	}
	a, err := assaytest.Run(context.Background(), d, faults, only{shot}, assaytest.Options{Draws: 50, Seed: 1})
	require.NoError(t, err)
	s, err := sheet.Build("sipsum test", a, nil, func(string, string) (source.Work, bool) { return source.Work{}, false }, nil)
	require.NoError(t, err)
	var out bytes.Buffer
	require.NoError(t, jsonreport.Assay(&out, s))
	var doc struct{ Chemistry map[string]any }
	require.NoError(t, json.Unmarshal(out.Bytes(), &doc))
	assert.Equal(t, []any{map[string]any{"food": "core:espresso", "low": 4.9, "high": 5.35, "source": "one other"}}, doc.Chemistry["calibrated_on"])
}

// only is a library of one food.
type only struct{ food *food.Food }

func (o only) Food(context.Context, food.ID) (*food.Food, error)    { return o.food, nil }
func (o only) Named(context.Context, string) (food.ID, bool, error) { return food.ID{}, false, nil }
func (o only) Near(context.Context, string) []string                { return nil }
