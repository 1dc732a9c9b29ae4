package jsonreport_test

import (
	"bytes"
	"context"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/report/json"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// What every food of a drink is known to lack is a zero in its document; what a food leaves
// open, or no food tells, does not become one.
func TestKnownZerosAreToldFromWhatNobodyTracks(t *testing.T) {
	const text = `
drink: "Zeros"
serves: 1
foods:
  wet: {name: "Wet", per: 100 g, values: {WATER: 100 g, CAFFN: 0 mg, THEBRN: 0 mg}, source: "invented"}
  dry: {name: "Dry", per: 100 g, values: {WATER: 0 g, SUCS: 100 g, CAFFN: 0 mg}, source: "invented"}
build: [50 g own:wet, 10 g own:dry]
`
	d, faults := drink.Parse("test", []byte(text), nil)
	a, err := assaytest.Run(context.Background(), d, faults, nothing{}, assaytest.Options{Draws: 50, Seed: 1, Want: assay.Want{Whole: true}})
	require.NoError(t, err)
	s, err := sheet.Build("sipsum test", a, nil, func(string, string) (source.Work, bool) { return source.Work{}, false }, nil)
	require.NoError(t, err)
	var out bytes.Buffer
	require.NoError(t, jsonreport.Assay(&out, s))
	type figure struct {
		Mean     *float64
		State    string
		Coverage float64
	}
	type figures struct{ Constituents map[string]figure }
	var document struct {
		Serving    figures
		Per100g    figures `json:"per_100_g"`
		Components []figures
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &document))
	for _, of := range append(document.Components, document.Serving, document.Per100g) {
		none, told := of.Constituents["CAFFN"]
		require.True(t, told, "both foods say that they have none")
		require.NotNil(t, none.Mean)
		assert.Zero(t, *none.Mean)
		assert.InDelta(t, 1, none.Coverage, 0)
		assert.NotEqual(t, "unknown", none.State)
		assert.NotContains(t, of.Constituents, "THEBRN", "one of the foods says nothing of it")
		assert.NotContains(t, of.Constituents, "trigonelline", "nobody says anything of it")
	}
}
