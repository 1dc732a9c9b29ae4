package sheet_test

import (
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// What water brings from the ground is no sparkle: 2 mg in 120 g are 18 mg/kg, of the 250 mg/kg of
// Directive 2009/54/EC. Beside a tonic of which nobody has stated the gas it is not all that is known.
func TestWhatWaterBringsIsStill(t *testing.T) {
	sparkle := func(build string) (sheet.Sense, bool) {
		b, s := sheetAndBrief(t, build)
		told := slices.ContainsFunc(s.Evidence.Categories, func(c evidence.Category) bool {
			return slices.ContainsFunc(c.Entries, func(e evidence.Entry) bool { return e.Constituent.ID == constituent.CarbonDioxide })
		})
		return b.Senses[len(b.Senses)-1], told
	}
	still, told := sparkle("40 g core:espresso, 60 g core:water-brew, 20 g core:orange-juice")
	assert.Equal(t, "still", still.None)
	assert.False(t, told)
	tonic, told := sparkle("40 g core:espresso, 60 g core:water-brew, 50 g core:tonic-water")
	assert.Empty(t, tonic.None)
	assert.Empty(t, tonic.Figures)
	assert.Equal(t, []string{"carbon dioxide"}, tonic.Unmeasured)
	assert.True(t, told)
}

// Of the gas of two still drinks no word is said and no line told; of one that sparkles both are.
func TestTheGasOfStillDrinksIsNotCompared(t *testing.T) {
	mentions := func(a, b string) bool {
		c := compared(t, a, b)
		f, _ := c.Find(constituent.CarbonDioxide)
		in := slices.ContainsFunc(c.Words(), func(w sheet.Word) bool { return w.About == string(constituent.CarbonDioxide) })
		for _, of := range c.Told().Told {
			in = in || of.Constituent == f.Constituent
		}
		return in
	}
	assert.False(t, mentions("build: [40 g core:espresso, 60 g core:water-brew]", "build: [40 g core:espresso, 120 g core:water-brew]"))
	assert.True(t, mentions("build: [40 g core:espresso, 60 g core:water-brew]", "build: [40 g core:espresso, 120 g core:water-brew]\nfinish: [carbonate: {left: 4 g/l}]"))
}

func sheetAndBrief(t *testing.T, build string) (*sheet.Brief, *sheet.Sheet) {
	t.Helper()
	s := ranAs(t, "build: ["+build+"]")
	return sheet.BriefOf(s), s
}

// ranAs is the sheet of a drink, run as a comparison wants it.
func ranAs(t *testing.T, text string) *sheet.Sheet {
	t.Helper()
	text = "drink: x\nserves: 1\n" + text + "\n"
	d, _ := drink.Parse("test", []byte(text), nil)
	r := assaytest.Found(t, assaytest.Core(t), text)
	a, err := assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 201}).Run(context.Background(), nil, assay.Want{Figures: sheet.ComparedFigures(d, d), Intervals: true, Chemistry: true, Draws: true})
	require.NoError(t, err)
	s, err := sheet.Build("test", a, nil, func(_, id string) (source.Work, bool) { return source.Work{ID: id, Citation: "a paper"}, true }, []string{"eu"})
	require.NoError(t, err)
	return s
}

func compared(t *testing.T, a, b string) *sheet.Compared {
	t.Helper()
	return sheet.Compare(ranAs(t, a), ranAs(t, b))
}
