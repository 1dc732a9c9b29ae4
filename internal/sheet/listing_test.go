package sheet_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/sheet"
)

// Limits alone are no knowledge where they are lost beside what the unknown parts could be; a
// measured part is, however small, and so is a limit that is most of it.
func TestHollowAndNone(t *testing.T) {
	limit := partly(some("CITAC", 1, 1)).Result
	limit.State = estimate.Below
	for _, c := range []struct {
		coverage float64
		state    estimate.State
		hollow   bool
	}{{0.009, estimate.Below, true}, {0.01, estimate.Below, false}, {0.009, estimate.Trace, true}, {0.009, estimate.Assumed, false}} {
		limit.Coverage, limit.State = c.coverage, c.state
		assert.Equal(t, c.hollow, sheet.Hollow(limit), "%v", c)
		assert.False(t, sheet.None(limit))
	}
	whole := some("CITAC", 1, 1).Result
	whole.State, whole.Coverage = estimate.Below, 0
	assert.False(t, sheet.Hollow(whole), "nothing is unknown of it")
	assert.True(t, sheet.Hollow(unknown("CITAC").Result))
	assert.False(t, sheet.None(unknown("CITAC").Result))
	none := some("CITAC", 0, 0).Result
	assert.True(t, sheet.None(none))
	none.High = 0.1
	assert.False(t, sheet.None(none), "it may be some")
	none = partly(some("CITAC", 0, 0)).Result
	assert.False(t, sheet.None(none), "a part is unknown")
}

func TestComposition(t *testing.T) {
	got := told().Composition()
	rows := map[string]int{}
	for _, g := range got.Groups {
		require.NotEmpty(t, g.Rows, "%s: no heading without rows", g.Name)
		for _, r := range g.Rows {
			rows[r.Words] = r.Depth
		}
	}
	assert.Equal(t, map[string]int{"energy": 0, "protein": 0, "fat": 0, "saturated fat": 1, "caffeine": 0, "citric acid": 0}, rows)
	require.Len(t, got.Unknown, 1)
	assert.Equal(t, "malic acid", got.Unknown[0].Words)
	assert.Equal(t, []string{"alcohol"}, got.None)

	rest := &sheet.Sheet{Assay: &assay.Assay{Basis: assay.Basis{PerServing: composition.Composition{some("FAT-other", 0, 0)}}}}
	assert.Empty(t, rest.Composition().None, "that no rest is left says nothing")
}

// A short page adds what its evidence does not tell, of the constituents that are short.
func TestFurther(t *testing.T) {
	got := []string{}
	for _, r := range told().Further() {
		got = append(got, r.Words)
		assert.Zero(t, r.Depth)
	}
	assert.Equal(t, []string{"energy", "protein", "fat", "saturated fat"}, got)
}

func TestWordsFor(t *testing.T) {
	assert.Equal(t, "saturated fat", sheet.WordsFor(constituent.Must("FASAT")))
	for _, c := range constituent.All() {
		assert.NotEmpty(t, sheet.WordsFor(c), c.ID)
	}
	unlisted := &constituent.Constituent{ID: "nowhere", Name: "a name"}
	assert.Equal(t, "a name", sheet.WordsFor(unlisted))
}

// The parts of each page stand in an order that somebody chose: what may be wrong first, what
// may hurt before the notes, sources last; no page lacks a way to say what its signs mean.
func TestPartsOfPages(t *testing.T) {
	place := func(p sheet.Page, part sheet.Part) int {
		for i, x := range p.Parts {
			if x == part {
				return i
			}
		}
		return -1
	}
	for _, p := range []sheet.Page{sheet.AssayPage, sheet.EvidencePage, sheet.WholePage, sheet.CardPage, sheet.WorkingPage, sheet.AllergensPage} {
		seen := map[sheet.Part]bool{}
		for _, part := range p.Parts {
			assert.False(t, seen[part], "%s has part %d twice", p.Kind, part)
			seen[part] = true
		}
		assert.True(t, seen[sheet.Signs] != seen[sheet.Daggers], p.Kind)
		if seen[sheet.Readings] {
			assert.Equal(t, 0, place(p, sheet.Readings), p.Kind)
		}
		if seen[sheet.Sources] {
			assert.Equal(t, len(p.Parts)-1, place(p, sheet.Sources), p.Kind)
		}
	}
	whole := sheet.WholePage
	assert.Less(t, place(whole, sheet.Readings), place(whole, sheet.InWords))
	assert.Less(t, place(whole, sheet.Declared), place(whole, sheet.ToNote))
	assert.Less(t, place(whole, sheet.CardsShortly), place(whole, sheet.Declared))
	assert.Positive(t, place(sheet.AssayPage, sheet.UnknownOf))
	assert.Negative(t, place(sheet.AssayPage, sheet.Declared), "allergens hang on rules, an assay does not")
	assert.True(t, sheet.AssayPage.Whole)
	assert.False(t, whole.Whole)
}
