package textreport_test

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// water is the only food there is, with a trace of sodium that no scale shows.
type water struct{}

func (water) Food(_ context.Context, id food.ID) (*food.Food, error) {
	value := func(id string, amount float64) food.Value {
		return food.Value{Constituent: constituent.ID(id), Amount: amount, SD: food.None, Low: food.None, High: food.None, Limit: food.None}
	}
	return &food.Food{
		ID: id, Names: []food.Name{{Language: "en", Text: strings.Repeat("Long water ", 12)}}, Group: "water", Edible: 1,
		Density: food.Density{GramsPerMl: 1, SD: 0.001}, Values: []food.Value{value("WATER", 99.9), value("SUCS", 1.7e-13), value("NA", 1e-12)},
	}, nil
}
func (water) Named(context.Context, string) (food.ID, bool, error) { return food.ID{}, false, nil }
func (water) Near(context.Context, string) []string                { return nil }

// Names may be longer than a line, and figures smaller than what anybody weighs: no page
// is wider for them, and no figure is a row of zeros.
func TestLongNamesAndMinuteFiguresFitThePage(t *testing.T) {
	long := strings.TrimSpace(strings.Repeat("a name so long ", 8))
	file := "drink: \"" + long + "\"\nserves: 1\ncategories: {\"" + long + "\": [SUCS, NA]}\ncomponents:\n  \"" + long + "\": {ingredients: [100 g t:w], keeps: 5 days at 4 °C}\nbuild: [50 g " + long + ", 10 g t:w]\n"
	d, faults := drink.Parse("test", []byte(file), nil)
	a, err := assaytest.Run(context.Background(), d, faults, water{}, assaytest.Options{Draws: 50, Seed: 1, Want: assay.Want{Whole: true}})
	require.NoError(t, err)
	s, err := sheet.Build("sipsum", a, nil, func(string, string) (source.Work, bool) { return source.Work{}, false }, []string{"eu", "us"})
	require.NoError(t, err)
	var out bytes.Buffer
	for _, page := range []func() error{
		func() error { return textreport.Assay(&out, s, textreport.Style{}) },
		func() error { return textreport.Sheet(&out, s, textreport.Style{}) },
		func() error { return textreport.Evidence(&out, s, textreport.Style{}) },
	} {
		require.NoError(t, page())
	}
	energy := s.Cards()[0].Rows[0] // as of seeds and their butter
	energy.Per100g, energy.Serving.Printed = nil, "4940 kJ / 1192 kcal"
	if energy.Per100ml != nil {
		energy.Per100ml.Printed = "2410 kJ / 1581 kcal"
	}
	require.NoError(t, textreport.Cards(&out, s, textreport.Style{}))
	assert.Contains(t, out.String(), " 2410 kJ / 1581 kcal 4940 kJ / 1192 kcal")
	for line := range strings.SplitSeq(out.String(), "\n") {
		assert.LessOrEqual(t, len([]rune(line)), 80, line)
		assert.NotContains(t, line, "0.0000", line)
	}
	assert.Contains(t, out.String(), "< 0.001 µg")
}
