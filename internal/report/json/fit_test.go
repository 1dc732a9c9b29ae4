package jsonreport_test

import (
	"bytes"
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/composition"
	"sipsum/internal/fit"
	"sipsum/internal/report/json"
	"sipsum/internal/sheet"
	"sipsum/internal/unit"
)

// A fit in JSON has no list that is null, no number that is none, and its targets in their own unit.
func TestAFitIsWritten(t *testing.T) {
	gram, _ := unit.FindMeasure("g")
	none := math.NaN()
	s := small(t)
	f := &sheet.Fitted{Sheet: s, Result: &fit.Result{Sure: 0.92, May: 0.92, Proven: true, Held: []fit.Held{{
		Text: "serving(SUGAR) <= 8 g", Hurt: 0.92, Help: 0.92,
		Told: fit.Told{Words: "sugars", After: composition.Result{Unit: "g"}, Limit: 8, Reaches: 9.1, Gives: 1.1},
	}, {Text: "least serving(ENERC)", Goal: true, Hurt: none, Help: none, Told: fit.Told{Limit: none, Reaches: none, Gives: none}}}}}
	f.Moves = []sheet.FittedMove{{Name: "pear", End: "most", Move: fit.Move{To: 46, Range: fit.Range{Path: "build/pear", Of: "pear", Written: unit.Amount{Number: 40, Measure: gram}, From: 20, To: 46, Step: 1}}}}
	var out bytes.Buffer
	require.NoError(t, jsonreport.Fit(&out, f))
	assert.NotContains(t, out.String(), "NaN")
	var d struct {
		Schema string
		Moves  []struct {
			Before, After, From, To float64
			Unit                    string
			AtIts                   string `json:"at_its"`
		}
		Targets []struct {
			Reaches, Limit *float64
			Unit           string
		}
		Together []string `json:"cannot_be_met_together"`
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &d))
	assert.Equal(t, "sipsum.fit/1", d.Schema)
	assert.Equal(t, []float64{40, 46, 20, 46}, []float64{d.Moves[0].Before, d.Moves[0].After, d.Moves[0].From, d.Moves[0].To})
	assert.Equal(t, "most", d.Moves[0].AtIts)
	assert.InDelta(t, 9.1, *d.Targets[0].Reaches, 0)
	assert.Equal(t, "g", d.Targets[0].Unit)
	assert.Nil(t, d.Targets[1].Limit)
	assert.NotNil(t, d.Together)
}
