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
	"sipsum/internal/estimate"
	"sipsum/internal/label"
	"sipsum/internal/ledger"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// ofWater is what a fixture serves where a page does not tell what it is: a liquid.
func ofWater() *ledger.Pot {
	pot, _ := assaytest.Pot(1, assaytest.Poured{Code: "water", Grams: 100, Holds: map[constituent.ID]float64{"WATER": 1}})
	return pot
}

// Whatever the figures: no cell runs into its neighbour, no line is wider than the page, and
// every row of every set of rules is there but those that a short table leaves out.
func TestCardsKeepTheirColumns(t *testing.T) {
	d, faults := drink.Parse("test", []byte("drink: \"Wide\"\nserves: 1\nbuild: [60 g t:w]\n"), nil)
	a, err := assaytest.Run(context.Background(), d, faults, water{}, assaytest.Options{Draws: 20, Seed: 1, Want: assay.Want{}})
	require.NoError(t, err)
	for _, times := range []float64{0.01, 1, 40, 400} {
		f := label.Facts{ServingG: 900, ServingMl: 1000, Serving: map[constituent.ID]estimate.Amount{}}
		for _, c := range constituent.All() {
			if c.Parent != constituent.Mass && c.PerGram > 0 {
				f.Serving[c.ID] = estimate.Amount{Mean: times * c.PerGram / 10, WithBounds: times * c.PerGram / 10, Known: true}
			}
		}
		for _, rules := range label.Rules() {
			c, err := label.Make(rules, f)
			require.NoError(t, err)
			s, err := sheet.Build("sipsum", a, nil, func(string, string) (source.Work, bool) { return source.Work{}, false }, []string{"eu"})
			require.NoError(t, err)
			s.Cards = func() []label.Card { return []label.Card{c} }
			var out bytes.Buffer
			require.NoError(t, textreport.Cards(&out, s, textreport.Style{}))
			for line := range strings.SplitSeq(out.String(), "\n") {
				assert.LessOrEqual(t, len([]rune(line)), 80, line)
			}
			for _, r := range c.Rows {
				if r.LeftOut || r.Line != "" {
					assert.Equal(t, r.LeftOut, !strings.Contains(out.String(), r.Line+" ") || r.Line == "", r.Key)
					continue
				}
				want := r.Label
				for _, basis := range c.Columns {
					cell := r.On(basis)
					want += " " + cell.Printed
					if basis != label.PerServing && cell.Reference != "" {
						want += " (" + cell.Reference + ")"
					}
				}
				found := false
				for line := range strings.SplitSeq(strings.ReplaceAll(out.String(), " †", ""), "\n") {
					found = found || strings.HasPrefix(strings.Join(strings.Fields(line), " "), want)
				}
				assert.True(t, found, "%s: %s", rules, want)
			}
		}
	}
}

// A long name takes room of the cell beside it, and leaves a space before what stands there.
func TestALongNameLeavesItsNeighbourAlone(t *testing.T) {
	d, faults := drink.Parse("test", []byte("drink: \"Wide\"\nserves: 1\nbuild: [60 g t:w]\n"), nil)
	a, err := assaytest.Run(context.Background(), d, faults, water{}, assaytest.Options{Draws: 20, Seed: 1, Want: assay.Want{}})
	require.NoError(t, err)
	s, err := sheet.Build("sipsum", a, nil, func(string, string) (source.Work, bool) { return source.Work{}, false }, []string{"eu"})
	require.NoError(t, err)
	full := &label.Cell{Printed: "2410 kJ / 1581 kcal"}
	s.Cards = func() []label.Card {
		return []label.Card{{
			Rules: "eu", Title: "Made up", Basis: label.Per100ml, Columns: []string{label.Per100ml, label.PerServing}, ServingG: 60,
			Rows: []label.Row{{Label: "of which something of a long name", Per100ml: full, Serving: full}},
		}}
	}
	var out bytes.Buffer
	require.NoError(t, textreport.Cards(&out, s, textreport.Style{}))
	assert.Contains(t, out.String(), "of a long name 2410 kJ / 1581 kcal 2410 kJ / 1581 kcal")
}
