package sheet_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/reporttest"
	"sipsum/internal/sheet"
)

// On every picture: each bar has room on its axis or runs off it, its segments make up what is known,
// and nothing of which all is known is hatched; a pot weighs what it is put together from.
func TestPicturesHoldTheirFigures(t *testing.T) {
	all := reporttest.Demos(t)
	for name, text := range reporttest.PaperDrinks(t) {
		all[name] = reporttest.Read(t, text)
	}
	for name, s := range all {
		p := sheet.PaperOf(s)
		for _, x := range p.Senses {
			for _, b := range x.Pictures {
				barsHold(t, name+", "+x.Name, b)
			}
		}
		i := slices.IndexFunc(p.Annex, func(x sheet.Section) bool { return x.ID == "flow" })
		require.GreaterOrEqual(t, i, 0, name)
		for _, pot := range p.Annex[i].Blocks[0].Picture.(*sheet.Flow).Pots {
			sum := 0.0
			for _, part := range pot.Stages[0].Segments {
				sum += part.Amount
			}
			assert.InDelta(t, pot.Stages[0].Grams, sum, 0.06, "%s, %s", name, pot.Heading)
		}
	}
}

func barsHold(t *testing.T, name string, b *sheet.Bars) {
	t.Helper()
	ticks := b.Axis.Ticks
	require.GreaterOrEqual(t, len(ticks), 2, name)
	assert.InDelta(t, b.Axis.From, ticks[0].At, 1e-9, name)
	assert.InDelta(t, b.Axis.To, ticks[len(ticks)-1].At, 1e-6*b.Axis.To, name)
	for _, x := range b.Bars {
		assert.LessOrEqual(t, x.High, b.Axis.To+1e-9, "%s, %s", name, x.Words)
		assert.LessOrEqual(t, x.Low, x.Mean+1e-9, "%s, %s", name, x.Words)
		if x.Point {
			assert.GreaterOrEqual(t, x.Low, b.Axis.From, "%s, %s", name, x.Words)
			continue
		}
		sum := 0.0
		for _, s := range x.Segments {
			sum += s.Amount
		}
		assert.InDelta(t, x.Mean, sum, 0.01*x.Mean, "%s, %s", name, x.Words)
		assert.Equal(t, x.Figure.AtLeast, x.Unknown != "", "%s, %s: what is not known is named", name, x.Words)
		if !x.Figure.AtLeast {
			assert.InDelta(t, x.Mean, x.Most, 1e-9, "%s, %s", name, x.Words)
		}
		assert.False(t, math.IsNaN(x.Most), "%s, %s", name, x.Words)
	}
}

// An ingredient has one hue in every bar.
func TestAnIngredientKeepsItsHue(t *testing.T) {
	for name, s := range reporttest.Demos(t) {
		hues, several := map[string]sheet.Hue{}, 0
		for _, x := range sheet.PaperOf(s).Senses {
			for _, b := range x.Pictures {
				for _, bar := range b.Bars {
					for _, part := range bar.Segments {
						if part.Hue == sheet.HueRest {
							continue
						}
						if hue, seen := hues[part.Word]; seen {
							assert.Equal(t, hue, part.Hue, "%s, %s", name, part.Word)
							several++
						}
						hues[part.Word] = part.Hue
					}
				}
			}
		}
		assert.Positive(t, several, name)
		assert.Greater(t, len(hues), 2, name)
	}
}

// What nothing took from or was added to is drawn as what was put in: soda is not all of the colour of its acid.
func TestWhatIsOnlyFoamedKeepsItsParts(t *testing.T) {
	s := reporttest.Read(t, `
drink: Charged tide
serves: 2
components:
  soda:
    ingredients: [300 g core:water-pure, 3 g core:citric-acid]
    steps: [carbonate: {left: 1 g/l}]
  brew:
    ingredients: [30 g core:orange-juice, 100 g core:milk-whole]
    steps: [foam: {overrun: 50 %}, dilute: {to: 200 g}]
build: [200 g soda, 40 g brew]
`)
	p := sheet.PaperOf(s)
	i := slices.IndexFunc(p.Annex, func(x sheet.Section) bool { return x.ID == "flow" })
	pots := p.Annex[i].Blocks[0].Picture.(*sheet.Flow).Pots
	soda := pots[slices.IndexFunc(pots, func(x sheet.FlowPot) bool { return x.Heading == "soda" })]
	for _, stage := range soda.Stages {
		require.Len(t, stage.Segments, 2, stage.Words)
		assert.Equal(t, sheet.HueWater, stage.Segments[0].Hue)
		assert.InDelta(t, 100, stage.Segments[0].Amount/stage.Segments[1].Amount, 1e-6, "300 g to 3 g")
		assert.InDelta(t, stage.Grams, stage.Segments[0].Amount+stage.Segments[1].Amount, 1e-6)
	}
	brew := pots[slices.IndexFunc(pots, func(x sheet.FlowPot) bool { return x.Heading == "brew" })]
	require.Len(t, brew.Stages[1].Segments, 2, "foamed")
	assert.Empty(t, brew.Stages[2].Segments, "diluted: some of it is water that no line pours")
}
