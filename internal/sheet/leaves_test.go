package sheet_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/reporttest"
	"sipsum/internal/sheet"
)

// said is everything that a leaf says.
func said(l *sheet.Leaf) string {
	words := append([]string{l.Title, l.Label}, append(l.Below, l.Foot...)...)
	for _, b := range l.Blocks {
		words = append(words, b.Heading)
		for _, f := range b.Figures {
			words = append(words, f.Label, f.Text)
		}
		for _, line := range b.Lines {
			words = append(words, line.Sentence())
		}
		if b.Grid != nil {
			words = append(words, b.Grid.Caption, strings.Join(b.Grid.Head, "\n"))
			for _, r := range b.Grid.Rows {
				words = append(words, r.Label)
				for _, c := range r.Cells {
					words = append(words, c.Text)
				}
			}
		}
	}
	return strings.Join(words, "\n")
}

// One food of which nobody has looked for allergens.
const unlooked = `
drink: "Open Question"
serves: 1
rules: [eu, us]
foods:
  bitters: {name: "House bitters", per: 100 g, values: {SUGAR: 10 g}, source: "invented"}
build: [100 g core:milk-skim, 40 g core:milk-whole, 5 g own:bitters]
may-contain: [almond]
`

// A guest reads what is known, and is told to ask for the rest; no leaf says that a drink is
// without anything.
func TestAGuestIsToldToAsk(t *testing.T) {
	s := reporttest.Read(t, unlooked)
	guest := said(s.GuestLeaf())
	assert.Contains(t, guest, "Contains: Milk")
	assert.Contains(t, guest, "May contain: Nuts (almonds)")
	assert.Contains(t, guest, "Nobody has assessed House bitters: ask us before you order.")
	for _, leaf := range reporttest.Leaves(s) {
		assert.NotRegexp(t, `(?i)free from|free of|without (milk|nuts|allergens)|contains no`, said(leaf))
	}
}

// What nobody knows of a drink stands on the bar's card, and on the guest's as a question.
func TestWhatNobodyKnowsIsAskedFor(t *testing.T) {
	s := reporttest.Read(t, `
drink: "Sugar Only"
serves: 1
rules: [eu]
foods:
  syrup: {name: "House syrup", per: 100 g, values: {SUGAR: 10 g}, allergens: [], source: "invented"}
build: [100 g own:syrup]
`)
	v := s.Served()
	require.NotEmpty(t, v.Ask)
	assert.Contains(t, said(s.GuestLeaf()), "Ask us about: "+strings.Join(v.Ask, ", "))
	for _, r := range v.Card.Rows {
		assert.False(t, r.Unknown, r.Label)
	}
	card := said(s.CardLeaf())
	for _, label := range v.Ask {
		assert.Contains(t, card, label, "the card of the bar keeps the row")
	}
	assert.Contains(t, card, "hatched: nobody has measured it")
	assert.NotContains(t, said(s.GuestLeaf()), "hatched")
}

// Allergens stand under the rules of all, each once: what the US call wheat is told with the
// cereal of the EU.
func TestAllergensAreNamedOnce(t *testing.T) {
	s := reporttest.Read(t, `
drink: "Wheat"
serves: 1
rules: [eu, us]
foods:
  beer: {name: "Malt drink", per: 100 g, values: {SUGAR: 4 g}, allergens: [wheat, cow milk], source: "invented"}
build: [100 g own:beer]
`)
	names := s.Served().Allergens[0].Strong
	assert.Equal(t, "Cereals containing gluten (wheat) · Milk", names)
}

// Every class of the rules has a state for every drink, and none is found in what nobody has
// assessed.
func TestTheMatrixHasNoBlank(t *testing.T) {
	open := reporttest.Read(t, unlooked)
	demo := reporttest.Demos(t, "eu", "us")["garden-tide"]
	m := reporttest.Menu([]string{"eu", "us"}, open, demo)
	for _, x := range m.Matrices() {
		require.Len(t, x.States, 2)
		for i, states := range x.States {
			require.Len(t, states, len(x.Classes))
			for j, state := range states {
				assert.NotEmpty(t, state, x.Classes[j].Name)
				if i == 0 {
					assert.NotEqual(t, "none found", string(state), x.Classes[j].Name)
				}
			}
		}
	}
	leaf := said(m.Leaf(3))
	for _, word := range []string{"contains: it is in the drink", "may contain", "to check", "none found"} {
		assert.Contains(t, leaf, word)
	}
}

// The rows of cards that differ stand in one table, each in its place, and what a card has
// not says so.
func TestFiguresSideBySideKeepEveryRow(t *testing.T) {
	demos := reporttest.Demos(t, "eu", "us")
	m := reporttest.Menu([]string{"eu", "us"}, demos["slow-lantern"], demos["garden-tide"])
	for _, table := range m.Figures() {
		for n, d := range m.Drinks {
			at := -1
			for i := range d.Cards {
				if d.Cards[i].Rules != table.Rules {
					continue
				}
				for _, r := range d.Cards[i].Rows {
					found := -1
					for k, row := range table.Rows {
						if row.Key == r.Key {
							found = k
							require.NotNil(t, row.Rows[n])
						}
					}
					assert.Greater(t, found, at, "%s, %s: the order of the card is kept", table.Rules, r.Key)
					at = found
				}
			}
		}
	}
}

// Every text has a place to stand: the keys of the states, and no advice that is said twice.
func TestAdviceIsSaidOnce(t *testing.T) {
	for name, s := range reporttest.Demos(t) {
		seen := map[string]bool{}
		for _, a := range s.Served().Advice {
			assert.False(t, seen[a], "%s: %s", name, a)
			seen[a] = true
		}
		assert.NotEmpty(t, seen, "%s has caffeine", name)
	}
}

// A row whose figure spans both a reading and the recipe that it contradicts is no figure for a guest:
// it is asked about. Without the reading the row stands.
func TestAGuestIsToldNoFigureThatSpansBoth(t *testing.T) {
	const drink = `
drink: "Sour Glass"
serves: 1
rules: [eu]
components:
  syrup: {ingredients: [100 g core:lemon-juice, 80 g core:sugar-white]%s}
build: [100 g core:water-pure, 40 g syrup]
%s`
	rows := func(of, finish string) (keys []string) {
		for _, r := range reporttest.Read(t, fmt.Sprintf(drink, of, finish)).Served().Card.Rows {
			keys = append(keys, r.Key)
		}
		return keys
	}
	assert.Contains(t, rows("", ""), "sugars")
	assert.NotContains(t, rows("", "finish: [measured: {brix: 2}]\n"), "sugars", "per 100 ml it spans")
	assert.NotContains(t, rows(", measured: {mass: 90 g}", ""), "sugars")
	assert.Contains(t, rows(", measured: {ta: 90 g/l}", ""), "sugars", "an acidity tells nothing of it")
}
