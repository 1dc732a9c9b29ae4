package jsonreport_test

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/report/json"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
	"sipsum/internal/speech"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// nothing is a library without foods: the fixture brings its own.
type nothing struct{}

func (nothing) Food(context.Context, food.ID) (*food.Food, error) {
	return nil, fail.New(fail.Wrong, "no foods here", "")
}
func (nothing) Named(context.Context, string) (food.ID, bool, error) { return food.ID{}, false, nil }
func (nothing) Near(context.Context, string) []string                { return nil }

func small(t *testing.T) *sheet.Sheet { return asked(t, assaytest.Options{}) }

// asked is the fixture with a question put to it.
func asked(t *testing.T, o assaytest.Options) *sheet.Sheet {
	t.Helper()
	text, err := os.ReadFile("testdata/small.drink.yaml")
	require.NoError(t, err)
	d, faults := drink.Parse("small.drink.yaml", text, nil)
	o.Draws, o.Seed, o.Figures, o.Whole = 50, 1, evidence.Constituents(d), true
	a, err := assaytest.Run(context.Background(), d, faults, nothing{}, o)
	require.NoError(t, err)
	works := func(string, string) (source.Work, bool) { return source.Work{}, false }
	s, err := sheet.Build("sipsum test", a, []source.Table{{ID: "own", Edition: "none", Licence: "none", Hash: "00"}}, works, nil)
	require.NoError(t, err)
	return s
}

// documents are all documents of the contract, by the name of their golden file.
func documents(t *testing.T) map[string]func(io.Writer) error {
	s := small(t)
	of := func(write func(io.Writer, *sheet.Sheet) error) func(io.Writer) error {
		return func(w io.Writer) error { return write(w, s) }
	}
	f := &food.Food{
		ID: food.ID{Table: "own", Code: "x"}, Names: []food.Name{{Language: "en", Text: "Lemon <juice>"}}, Group: "citrus juice",
		Values: []food.Value{
			{Constituent: "CITAC", Amount: 4800, SD: 380, N: 6, Low: food.None, High: food.None, Limit: food.None, State: estimate.Measured, Source: "paper", Ref: "Table 1"},
			{Constituent: "QUINAC", Amount: food.None, SD: food.None, Low: food.None, High: food.None, Limit: 40, State: estimate.Unknown},
			{Constituent: "own:1", Amount: 1, SD: food.None, Low: food.None, High: food.None, Limit: food.None},
		},
		Density: food.Density{GramsPerMl: 1.03, SD: food.None, Source: "a scale"}, Edible: food.None,
		Portions: []food.Portion{{Name: "slice", Grams: 8, SD: food.None}},
		Marks:    []food.Mark{{Kind: "allergen", Source: "a list"}},
	}
	columns := []food.Column{{ID: "own:1", Name: "A column", Unit: "g"}}
	cited := func(id string) (source.Work, bool) { return source.Work{ID: id, Citation: "A paper"}, id == "paper" }
	fault := &fail.Error{Exit: fail.Wrong, Faults: []fail.Fault{
		{Place: fail.Place{File: "a.yaml", Line: 12, Col: 7}, What: "unknown unit", Do: "write g"}, {What: "no such file"},
	}}
	return map[string]func(io.Writer) error{
		"assay":    of(jsonreport.Assay),
		"evidence": of(jsonreport.Evidence),
		"brief": func(w io.Writer) error {
			return jsonreport.Brief(w, asked(t, assaytest.Options{Want: assay.Want{Next: true}}))
		},
		"speech":      func(w io.Writer) error { return jsonreport.Speech(w, s, speech.Registers) },
		"card":        of(jsonreport.Card),
		"cardworking": of(jsonreport.CardWorking),
		"allergens":   of(jsonreport.Allergens),
		"sheet":       of(jsonreport.Sheet),
		"why": func(w io.Writer) error {
			return jsonreport.Why(w, asked(t, assaytest.Options{Want: assay.Want{Why: constituent.Sugar}}))
		},
		"next": func(w io.Writer) error {
			return jsonreport.Next(w, asked(t, assaytest.Options{Want: assay.Want{Next: true, Kits: true}}), "")
		},
		"food": func(w io.Writer) error { return jsonreport.Food(w, f, columns, cited) },
		"find": func(w io.Writer) error {
			return jsonreport.Hits(w, "lem", []jsonreport.Hit{{Food: "own:x", Name: "Lemon", Matched: "Lemon", Near: true}})
		},
		"tables": func(w io.Writer) error {
			return jsonreport.Tables(w, []jsonreport.Table{{Table: source.Table{ID: "sr", Edition: "28"}, Foods: 8789, Values: 679045, LoadedAt: "1970-01-01T00:00:00Z"}})
		},
		"load":    func(w io.Writer) error { return jsonreport.Loaded(w, "sr", "28", 8789, 679045, true) },
		"remove":  func(w io.Writer) error { return jsonreport.Removed(w, "sr") },
		"formats": func(w io.Writer) error { return jsonreport.Formats(w, []jsonreport.Format{{Name: "sr", Title: "SR"}}) },
		"version": func(w io.Writer) error { return jsonreport.Version(w, "sipsum test") },
		"new":     func(w io.Writer) error { return jsonreport.New(w, "a.drink.yaml") },
		"serve":   func(w io.Writer) error { return jsonreport.Serving(w, "http://127.0.0.1:4000/") },
		"steps": func(w io.Writer) error {
			return jsonreport.Steps(w, []jsonreport.StepGroup{{What: "Take water away", Steps: []jsonreport.Step{{Word: "reduce", Does: "boil water off", Example: "- reduce: {to: 375 g}"}}}})
		},
		"error": func(w io.Writer) error { return jsonreport.Error(w, fault) },
	}
}

func TestDocumentsKeepTheirForm(t *testing.T) {
	for name, write := range documents(t) {
		var got bytes.Buffer
		require.NoError(t, write(&got), name)
		path := filepath.Join("testdata", name+".json")
		if *update {
			require.NoError(t, os.WriteFile(path, got.Bytes(), 0o644))
		}
		want, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.Equal(t, string(want), got.String(), "%s: run with -update and read the difference", name)
	}
}

func TestEveryGoldenFileHasADocument(t *testing.T) {
	files, err := filepath.Glob("testdata/*.json")
	require.NoError(t, err)
	all := documents(t)
	for _, file := range files {
		name := filepath.Base(file[:len(file)-len(".json")])
		assert.Contains(t, all, name)
	}
	assert.Len(t, files, len(all))
}

func TestDocumentsAreJSONWithASchemaFirst(t *testing.T) {
	for name, write := range documents(t) {
		var out bytes.Buffer
		require.NoError(t, write(&out), name)
		decoder := json.NewDecoder(&out)
		token, err := decoder.Token()
		require.NoError(t, err)
		require.Equal(t, json.Delim('{'), token)
		key, err := decoder.Token()
		require.NoError(t, err)
		assert.Equal(t, "schema", key, name)
		for err == nil {
			_, err = decoder.Token()
		}
		assert.True(t, errors.Is(err, io.EOF), "%s: %v", name, err)
	}
}

func TestContributionsSumToTheTotal(t *testing.T) {
	var out bytes.Buffer
	require.NoError(t, jsonreport.Assay(&out, small(t)))
	var document struct {
		Serving struct {
			Constituents map[string]struct{ Mean *float64 }
		}
		Contributions map[string][]struct{ Mean float64 }
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &document))
	for id, total := range document.Serving.Constituents {
		if total.Mean == nil {
			continue
		}
		sum := 0.0
		for _, c := range document.Contributions[id] {
			sum += c.Mean
		}
		assert.InDelta(t, *total.Mean, sum, 1e-9*max(1, *total.Mean), id)
	}
}
