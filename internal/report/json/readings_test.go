package jsonreport_test

import (
	"bytes"
	"context"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/report/json"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// Assay and sheet hold what was read, expected and used; the drink's own path is empty.
func TestDocumentsHoldTheReadings(t *testing.T) {
	const text = `
drink: "Weighed"
serves: 1
foods:
  wet: {name: "Water", per: 100 g, values: {WATER: 100 g}, source: "invented"}
  dry: {name: "Sugar", per: 100 g, values: {WATER: 0 g, SUCS: 100 g}, source: "invented"}
components:
  syrup: {ingredients: [100 g own:wet, 100 g own:dry], measured: {brix: 65}}
build: [50 g syrup, 50 g own:wet]
finish:
  - measured: {mass: 100 g}
`
	d, faults := drink.Parse("test", []byte(text), nil)
	a, err := assaytest.Run(context.Background(), d, faults, nothing{}, assaytest.Options{Draws: 50, Seed: 1})
	require.NoError(t, err)
	s, err := sheet.Build("sipsum test", a, nil, func(string, string) (source.Work, bool) { return source.Work{}, false }, nil)
	require.NoError(t, err)

	type readingForm struct {
		Path                 []string
		Kind, Unit           string
		Read, Expected, Used float64
		Agrees               bool
	}
	var assayed struct{ Readings []readingForm }
	var whole struct {
		Assay struct{ Readings []readingForm }
	}
	var out bytes.Buffer
	require.NoError(t, jsonreport.Assay(&out, s))
	require.NoError(t, json.Unmarshal(out.Bytes(), &assayed))
	out.Reset()
	require.NoError(t, jsonreport.Sheet(&out, s))
	require.NoError(t, json.Unmarshal(out.Bytes(), &whole))
	assert.Equal(t, assayed.Readings, whole.Assay.Readings)

	require.Len(t, assayed.Readings, 2)
	brix, mass := assayed.Readings[0], assayed.Readings[1]
	assert.Equal(t, []string{"syrup"}, brix.Path)
	assert.Equal(t, "brix", brix.Kind)
	assert.InDelta(t, 65, brix.Read, 0)
	assert.InDelta(t, 50, brix.Expected, 1e-9, "as much sugar as water")
	assert.InDelta(t, 65, brix.Used, 0.01)
	assert.False(t, brix.Agrees)
	assert.Equal(t, []string{}, mass.Path)
	assert.Equal(t, "g", mass.Unit)
	assert.True(t, mass.Agrees)
}
