package afcd_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/tables/afcd"
	"sipsum/internal/tables/table"
	"sipsum/internal/tables/tablestest"
	"sipsum/internal/unit"
)

// TestMapIsWhole takes the columns from the header of the release, which the
// invented foods have whole.
func TestMapIsWhole(t *testing.T) {
	m := table.ReadMap("afcd")
	assert.Len(t, m.Rows, 290+3, "and the key, the group and the name")
	release := tablestest.Open(t, afcd.Format, invented)
	require.Len(t, release.Columns, 290)
	for _, c := range release.Columns {
		row, found := m.Find(c.Number)
		require.True(t, found, c.Number)
		if row.Fate == table.Kept {
			assert.NotEmpty(t, row.Why, c.Number)
			continue
		}
		factor, ok := unit.Convert(c.Unit, constituent.Must(c.ID).Unit)
		assert.True(t, ok, c.Number)
		assert.Equal(t, factor, row.Factor, c.Number)
	}
	for _, refused := range []string{"public-food-key", "classification", "food-name"} {
		row, found := m.Find(refused)
		assert.True(t, found && row.Fate == table.Refused, refused)
	}
}

// fatty is a fatty acid, or a class of them, that is printed both as a share of
// all fatty acids and as mass.
type fatty struct {
	share, mass         constituent.ID
	halfShare, halfMass float64 // of the last digit
	unitGrams           float64 // grams of one unit of the value
}

func pairs(release *table.Release) (all []fatty) {
	byNumber := map[string]food.Column{}
	for _, c := range release.Columns {
		byNumber[c.Number] = c
	}
	for _, c := range release.Columns {
		name, share := strings.CutSuffix(c.Number, "-share")
		mass, found := byNumber[name]
		if !share || !found {
			continue
		}
		grams, _ := unit.Convert(mass.Unit, "g")
		inValue := grams
		if mass.Constituent {
			inValue, _ = unit.Convert(constituent.Must(mass.ID).Unit, "g")
		}
		all = append(all, fatty{c.ID, mass.ID, math.Pow10(-c.Decimals) / 2, math.Pow10(-mass.Decimals) / 2 * grams, inValue})
	}
	return all
}

// The shares of fatty acids agree with their masses: for each food there is one
// mass of all its fatty acids that makes one of the other, to the digits printed.
// The counts are those of a second reading of the workbook without this program.
func TestSharesAgreeWithMasses(t *testing.T) {
	release := tablestest.Open(t, afcd.Format, tablestest.Published(t, "afcd2"))
	all := pairs(release)
	assert.Len(t, all, 70)
	foods, cells, off := 0, 0, 0
	for f, err := range release.Foods {
		require.NoError(t, err)
		type span struct{ low, high float64 }
		var spans []span
		for _, p := range all {
			share, ok := f.Value(p.share)
			mass, ok2 := f.Value(p.mass)
			if !ok || !ok2 || !(share.Amount > p.halfShare) || !(mass.Amount > 0) {
				continue
			}
			grams := mass.Amount * p.unitGrams
			spans = append(spans, span{(grams - p.halfMass) / (share.Amount + p.halfShare), (grams + p.halfMass) / (share.Amount - p.halfShare)})
		}
		if len(spans) < 3 {
			continue
		}
		best := 0
		for _, at := range spans {
			n := 0
			for _, s := range spans {
				if s.low <= at.low && at.low <= s.high {
					n++
				}
			}
			best = max(best, n)
		}
		foods, cells, off = foods+1, cells+len(spans), off+len(spans)-best
		assert.GreaterOrEqual(t, float64(best)/float64(len(spans)), 0.8, f.Name())
	}
	assert.Equal(t, 808, foods)
	assert.Equal(t, 13_277, cells)
	assert.Equal(t, 41, off, "cells that agree with no mass of all fatty acids that the others share")
}
