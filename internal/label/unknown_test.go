package label_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/label"
)

func TestUnknownIsNeverZero(t *testing.T) {
	f := facts(100, map[constituent.ID]float64{"CHOAVL": 10, "SUGAR": 3})
	delete(f.Serving, "FASAT")                                                          // nobody knows
	f.Serving["SUGAR"] = estimate.Amount{Mean: 3, WithBounds: 4.2, Known: true}         // partly, with a bound
	f.Serving["PROCNT"] = estimate.Amount{Mean: 2, WithBounds: math.NaN(), Known: true} // partly, without one
	f.Serving["FAT"] = estimate.Amount{Mean: 0, WithBounds: 0.3, Known: true}           // 0 known, at most a little
	f.Serving["NA"] = estimate.Amount{Mean: 99, WithBounds: 50, Known: false}           // nothing known, a bound
	f.Serving["FIBTG"] = estimate.Amount{Mean: 0, WithBounds: math.NaN(), Known: true}  // 0 known, the rest unknown
	c := card(t, "eu", f)

	assert.Equal(t, "unknown", row(t, c, "saturates").Serving.Printed)
	assert.Nil(t, row(t, c, "saturates").Serving.Value)
	assert.Empty(t, row(t, c, "saturates").Serving.Reference)
	assert.Equal(t, "3.0 g", row(t, c, "sugars").Serving.Printed)
	assert.InDelta(t, 4.2, *row(t, c, "sugars").Serving.Most, 1e-12)
	assert.Equal(t, "<0.5 g", row(t, c, "fat").Serving.Printed, "not 0, and at most 0.3 g")
	assert.Equal(t, "unknown", row(t, c, "salt").Serving.Printed)
	assert.NotContains(t, keys(c), "fibre", "an optional row of which nothing is known is left out")

	all := notes(c)
	assert.Contains(t, all, "saturates: Of which saturates: not known, and neither is how much it can be at most.")
	assert.Contains(t, all, "sugars: Of which sugars: not complete; the card prints what is known (3 g per serving), and it can be up to 4.2 g.")
	assert.Contains(t, all, "protein: Protein: not complete; the card prints what is known (2 g per serving), and how much more there is nobody knows.")
	assert.Contains(t, all, "salt: Salt: not known; at most 0.125 g per serving.")
	assert.Contains(t, all, "energy: Energy: not complete")

	us := card(t, "us", label.Facts{ServingG: 100, Serving: map[constituent.ID]estimate.Amount{}})
	for _, r := range us.Rows {
		want := "unknown"
		if r.Key == "added-sugars" {
			want = "not declared"
		}
		assert.Equal(t, want, r.Serving.Printed, r.Key)
		assert.Nil(t, r.Serving.Value, r.Key)
		assert.Empty(t, r.Line, r.Key)
	}
	assert.Len(t, us.Notes, len(us.Rows)+1, "one for each row, and the scope")
}

// What is missing is noted only where it could change what is printed: 10.01 and 10.02 g of
// protein are both 10 g, and 10.6 g would be 11 g.
func TestWhatIsMissingIsNotedWhereItWouldPrintOtherwise(t *testing.T) {
	for most, noted := range map[float64]bool{10.01: false, 10.02: false, 10.6: true} {
		f := facts(100, nil)
		f.Serving["PROCNT"] = estimate.Amount{Mean: 10.01, WithBounds: most, Known: true}
		c := card(t, "eu", f)
		assert.Equal(t, "10 g", row(t, c, "protein").Serving.Printed)
		assert.Equal(t, most > 10.01, row(t, c, "protein").Serving.Most != nil, "%g", most)
		if noted {
			assert.Contains(t, notes(c), "protein: Protein: not complete")
		} else {
			assert.NotContains(t, notes(c), "protein: Protein", "%g", most)
		}
	}
}

// What nobody knows of the polyols lies within the rest of carbohydrate by difference, which
// energy counts: they add no more than that total lacks, at 10 kJ/g (Annex XIV).
func TestAPartLacksNoMoreThanItsTotal(t *testing.T) {
	for lacks, more := range map[float64]float64{0: 0, 2: 20, 9: 50} {
		f := facts(100, nil)
		f.Serving["CHOCDF"] = estimate.Amount{Mean: 10, WithBounds: 10 + lacks, Known: true}
		f.Serving["POLYL"] = estimate.Amount{WithBounds: 5}
		energy := row(t, card(t, "eu", f), "energy").Serving
		if more == 0 {
			assert.Nil(t, energy.Most, "nothing is missing of the whole")
			continue
		}
		require.NotNil(t, energy.Most, lacks)
		assert.InDelta(t, *energy.Value+more, *energy.Most, 1e-9, lacks)
	}
}

// A term of a working says how much it could be at most where it lacks something, and only
// there.
func TestTermsSayTheirMostWhereTheyLackSomething(t *testing.T) {
	f := facts(100, nil)
	f.Serving["FAT"] = estimate.Amount{Mean: 2, WithBounds: 3, Known: true}
	works, err := label.Explain("eu", f)
	require.NoError(t, err)
	for _, w := range works {
		for _, term := range w.Terms {
			if term.Tag != "FAT" {
				assert.Nil(t, term.Most, "%s of %s is known", term.Tag, w.Row)
			} else if assert.NotNil(t, term.Most, w.Row) {
				assert.InDelta(t, 3, *term.Most, 1e-12, w.Row)
			}
		}
	}
}

func TestRulesFromMemoryAreMarked(t *testing.T) {
	us := card(t, "us", facts(100, map[constituent.ID]float64{"CA": 300, "SUGAR": 3}))
	assert.True(t, row(t, us, "calcium").FromMemory)
	assert.False(t, row(t, us, "sugars").FromMemory)
	assert.False(t, row(t, us, "calories").FromMemory)
	strong := card(t, "us", facts(100, map[constituent.ID]float64{"ALC": 5}))
	assert.True(t, row(t, strong, "calories").FromMemory, "the factor of alcohol")
	eu := card(t, "eu", facts(100, map[constituent.ID]float64{"ALC": 5}))
	assert.False(t, row(t, eu, "energy").FromMemory)
	assert.True(t, row(t, eu, "fibre").FromMemory, "the place of the row")
	assert.Contains(t, notes(eu), "1.2 % alcohol by volume")
	assert.NotContains(t, notes(card(t, "eu", facts(100, nil))), "1.2 % alcohol by volume")
}
