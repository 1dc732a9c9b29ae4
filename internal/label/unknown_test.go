package label_test

import (
	"math"
	"strings"
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

	assert.Equal(t, "not determined", row(t, c, "saturates").Serving.Printed)
	assert.Nil(t, row(t, c, "saturates").Serving.Value)
	assert.Empty(t, row(t, c, "saturates").Serving.Reference)
	assert.Equal(t, "3.0 g", row(t, c, "sugars").Serving.Printed)
	assert.InDelta(t, 4.2, *row(t, c, "sugars").Serving.Most, 1e-12)
	assert.Equal(t, "<0.5 g", row(t, c, "fat").Serving.Printed, "not 0, and at most 0.3 g")
	assert.Equal(t, "not determined", row(t, c, "salt").Serving.Printed)
	assert.NotContains(t, keys(c), "fibre", "an optional row of which nothing is known is left out")

	all := notes(c)
	assert.Contains(t, all, "saturates: Of which saturates: not determined, and nothing says how much it can be at most.")
	assert.Contains(t, all, "sugars: Of which sugars: at least 3 g per serving, which the card prints; with what is not known it can be up to 4.2 g.")
	assert.Contains(t, all, "protein: Protein: at least 2 g per serving, which the card prints; how much more there is nobody knows.")
	assert.Contains(t, all, "salt: Salt: not determined; at most 0.125 g per serving.")
	assert.Contains(t, all, "energy: Energy: at least")

	us := card(t, "us", label.Facts{ServingG: 100, Serving: map[constituent.ID]estimate.Amount{}})
	for _, r := range us.Rows {
		assert.Equal(t, "not determined", r.Serving.Printed, r.Key)
		assert.Nil(t, r.Serving.Value, r.Key)
		assert.Empty(t, r.Line, r.Key)
	}
	assert.Len(t, us.Notes, len(us.Rows)+2, "one for each row, the scope and the reference amounts")
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
			assert.Contains(t, notes(c), "protein: Protein: at least")
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

// What nobody has read in the official text is marked; what a copy or a quotation says is
// secondary (facts of 2026 about the sources; the rows of data/card_*.csv).
func TestRulesFromMemoryAreMarked(t *testing.T) {
	us := card(t, "us", facts(100, map[constituent.ID]float64{"CA": 300, "SUGAR": 3, "ALC": 5}))
	for _, r := range us.Rows {
		assert.False(t, r.FromMemory, r.Key)
	}
	assert.Equal(t, label.Secondary, row(t, us, "calcium").Status)
	assert.Equal(t, label.Secondary, row(t, us, "calories").Status, "no US text for the factor of alcohol was found")
	ca := card(t, "ca", facts(100, map[constituent.ID]float64{"CHOCDF": 10}))
	assert.True(t, row(t, ca, "carbohydrate").FromMemory)
	assert.Equal(t, label.Unverified, row(t, ca, "carbohydrate").Status)
	assert.False(t, row(t, ca, "protein").FromMemory)
	anz := card(t, "anz", facts(100, map[constituent.ID]float64{"CHOAVL": 10}))
	assert.False(t, row(t, anz, "energy").FromMemory, "the general factors are confirmed")
	anz = card(t, "anz", facts(100, map[constituent.ID]float64{"CHOAVL": 10, "OA": 1}))
	assert.True(t, row(t, anz, "energy").FromMemory, "the factor of organic acids is not")
	assert.False(t, row(t, card(t, "eu", facts(100, map[constituent.ID]float64{"OA": 1})), "energy").FromMemory)
}

// Regulation (EU) No 1169/2011, Article 16(4): more than 1.2 % by volume. 0.947 g of ethanol in
// 100 ml are 1.2 % (0.789 g/ml).
func TestTheNoteOnStrongDrinksIsAboveItsLimit(t *testing.T) {
	for grams, noted := range map[float64]bool{0: false, 0.71: false, 0.946: false, 0.948: true, 5: true} {
		c := card(t, "eu", facts(100, map[constituent.ID]float64{"ALC": grams}))
		assert.Equal(t, noted, strings.Contains(notes(c), "1.2 % alcohol by volume"), "%g g", grams)
	}
	unknown := facts(100, nil)
	delete(unknown.Serving, "ALC")
	for _, rules := range label.Rules() {
		c := card(t, rules, unknown)
		for _, s := range c.Statements {
			assert.NotContains(t, s.Text, "% alcohol", rules)
		}
	}
}

// A lower limit far below its end is no figure to hand out: a cordial of which only the water is
// known says "at least" on its card and "ask us" on the guest's.
func TestALowerLimitIsNoFigure(t *testing.T) {
	open := func(of estimate.Amount) bool {
		f := facts(100, map[constituent.ID]float64{"FAT": 1})
		f.Serving["FAT"] = of
		r := row(t, card(t, "eu", f), "fat")
		return r.Open()
	}
	assert.False(t, open(estimate.Amount{Mean: 2, WithBounds: 2, High: 2.2, UpTo: 2.2, Known: true}), "known")
	assert.False(t, open(estimate.Amount{Mean: 2, WithBounds: 2.2, Known: true}), "a tenth more at most")
	assert.True(t, open(estimate.Amount{Mean: 2, WithBounds: 9, Known: true}))
	assert.True(t, open(estimate.Amount{Mean: 2, WithBounds: math.NaN(), Known: true}))
	assert.True(t, open(estimate.Amount{WithBounds: math.NaN()}), "nothing is known")
}
