package sheet_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/drivers"
	"sipsum/internal/estimate"
	"sipsum/internal/sheet"
)

// What moves a figure by less than half a per cent of its spread is counted, not listed.
func TestDriversAreListedFromHalfAPercent(t *testing.T) {
	d := &drivers.Drivers{
		Shares: map[estimate.Cause]float64{estimate.Hand: 0.6, estimate.Tables: 0.005, estimate.Steps: 0.0049}, Rest: 0.1,
		Inputs: []drivers.Driver{{Name: "a", Share: 0.6}, {Name: "b", Share: 0.005}, {Name: "c", Share: 0.0049}, {Name: "d"}},
	}
	causes, rest := sheet.Causes(d)
	assert.ElementsMatch(t, []sheet.CauseShare{{estimate.Hand, 0.6}, {estimate.Tables, 0.005}}, causes)
	assert.InDelta(t, 0.1, rest, 0)
	inputs, more := sheet.Drivers(d)
	require.Len(t, inputs, 2)
	assert.Equal(t, "b", inputs[1].Name)
	assert.Equal(t, 2, more)
	d.Rest = 0.0049
	_, rest = sheet.Causes(d)
	assert.Zero(t, rest)
}

// Ten readings are worth a line, each with up to four constituents that it narrows by 1 % or
// more, if it narrows one by as much as data/worth.csv asks; the assay keeps them all.
func TestSuggestionsAreFew(t *testing.T) {
	narrows := func(by ...float64) []drivers.Narrowing {
		var list []drivers.Narrowing
		for _, x := range by {
			list = append(list, drivers.Narrowing{By: x})
		}
		return list
	}
	s := &sheet.Sheet{Assay: &assay.Assay{}}
	assert.Empty(t, s.Suggestions())
	s.Assay.Suggestions = make([]drivers.Suggestion, 12)
	for i := range s.Assay.Suggestions {
		s.Assay.Suggestions[i].Narrows = narrows(0.3)
	}
	s.Assay.Suggestions[0].Narrows = narrows(0.5, 0.4, 0.3, 0.2, 0.1)
	s.Assay.Suggestions[1].Narrows = narrows(0.5, 0.006, 0.005, 0.004)
	got := s.Suggestions()
	require.Len(t, got, 10)
	assert.Len(t, got[0].Narrows, 4)
	assert.Len(t, got[1].Narrows, 2)
	assert.Len(t, s.Assay.Suggestions[0].Narrows, 5)
	s.Assay.Suggestions[2].Narrows = narrows(0.1)
	assert.Len(t, s.Suggestions(), 10, "the eleventh takes its place")
	s.Assay.Suggestions = s.Assay.Suggestions[1:3]
	assert.Len(t, s.Suggestions(), 1)
}
