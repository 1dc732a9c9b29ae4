package textreport_test

import (
	"bytes"
	"errors"
	"flag"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/report/text"
	"sipsum/internal/source"
)

var update = flag.Bool("update", false, "write the golden files anew")

// views are all pages, by the name of their golden file.
var views = map[string]func(io.Writer, textreport.Style) error{
	"assay":     func(w io.Writer, st textreport.Style) error { return textreport.Assay(w, tide(), st) },
	"brief":     func(w io.Writer, st textreport.Style) error { return textreport.Brief(w, tide(), st) },
	"evidence":  func(w io.Writer, st textreport.Style) error { return textreport.Evidence(w, tide(), st) },
	"sheet":     func(w io.Writer, st textreport.Style) error { return textreport.Sheet(w, tide(), st) },
	"card":      func(w io.Writer, st textreport.Style) error { return textreport.Cards(w, tide(), st) },
	"allergens": func(w io.Writer, st textreport.Style) error { return textreport.Allergens(w, tide(), st) },
	"why":       func(w io.Writer, st textreport.Style) error { return textreport.Why(w, questioned(), st) },
	"next":      func(w io.Writer, st textreport.Style) error { return textreport.Next(w, questioned(), "", st) },
	"curdlemap": func(w io.Writer, st textreport.Style) error { return textreport.CurdleMap(w, veiled(), true, st) },
	"solutions": func(w io.Writer, st textreport.Style) error {
		return textreport.Solutions(w, dissolved(), published, st)
	},
	"food": cordial,
	"hits": func(w io.Writer, st textreport.Style) error {
		return textreport.Hits(w, []textreport.Hit{
			{ID: "core:lemon-juice", Name: "Lemon juice", Matched: "Lemon juice"},
			{ID: "sr:09152", Name: "Lemon juice, raw", Matched: "jus de citron\x1b[1m"},
			{ID: "x:" + strings.Repeat("9", 40), Name: strings.Repeat("long name ", 30)},
		}, st)
	},
	"near": func(w io.Writer, st textreport.Style) error {
		return textreport.Hits(w, []textreport.Hit{{ID: "core:lemon-juice", Name: "Lemon juice", Near: true}}, st)
	},
	"nohits": func(w io.Writer, st textreport.Style) error { return textreport.Hits(w, nil, st) },
	"tables": func(w io.Writer, st textreport.Style) error {
		return textreport.Tables(w, []textreport.Table{
			{Table: source.Table{ID: "core", Title: "A table of drink foods", Edition: "3", Licence: "public domain", Hash: "00ff"}, Foods: 296, Values: 9000},
			{Table: source.Table{ID: "own\x1b]0;x\x07", Publisher: "A house"}, Foods: 8789, Values: 679045},
		}, st)
	},
	"formats": func(w io.Writer, st textreport.Style) error {
		return textreport.Formats(w, []textreport.Format{{Name: "sr", Title: "A published table", Licence: "public domain", Needs: "the folder with the files as published"}}, st)
	},
	"error": func(w io.Writer, _ textreport.Style) error {
		textreport.Error(w, &fail.Error{Exit: fail.Wrong, Faults: []fail.Fault{
			{Place: fail.Place{File: "tide.yaml", Line: 12, Col: 7}, What: "unknown food \"core:lemn\x1b[2J\"", Do: "near: core:lemon-juice"},
			{What: "nothing to build"},
		}})
		return nil
	},
}

// cordial is a made-up food with every form of value.
func cordial(w io.Writer, st textreport.Style) error {
	none := food.Value{SD: food.None, Low: food.None, High: food.None, Limit: food.None, Amount: food.None}
	value := func(id constituent.ID, set func(*food.Value)) food.Value {
		v := none
		v.Constituent, v.Source = id, "w1"
		set(&v)
		return v
	}
	f := &food.Food{
		ID: food.ID{Table: "sr", Code: "09999"}, Group: "juice", PublisherGroup: "Fruits\u202e and juices",
		Names:   []food.Name{{Language: "en", Text: "Harbour cordial\x1b[2J, bottled"}, {Language: "fr", Text: "cordial du port"}},
		Density: food.Density{GramsPerMl: 1.031, SD: 0.002, Source: "weighed"}, Edible: 0.48,
		Portions: []food.Portion{{Name: "cup", Grams: 248, SD: food.None}},
		Marks:    []food.Mark{{Kind: "allergen"}, {Kind: "caution", Value: "honey", Source: "its name"}, {Kind: "added sugar", Share: 0.25}},
		Note:     "made up",
		Values: []food.Value{
			value("SUGAR", func(v *food.Value) { v.Amount, v.N, v.Low, v.High = 2.4, 6, 1.9, 3.25 }),
			value("CITAC", func(v *food.Value) { v.Amount, v.SD, v.State, v.Source = 0.1+0.2, 0.04, estimate.Calculated, "w1 w2" }),
			value("MALAC", func(v *food.Value) { v.State, v.Limit = estimate.Unknown, 709 }),
			value("QUINAC", func(v *food.Value) { v.State = estimate.Unknown }),
			value("STARCH", func(v *food.Value) { v.State, v.Limit = estimate.Trace, 0.05 }),
			value("FIBTG", func(v *food.Value) { v.State = estimate.Trace }),
			value("CAFFN", func(v *food.Value) { v.State, v.Limit = estimate.Below, 0.5 }),
			value("ALC", func(v *food.Value) { v.State, v.Amount, v.Source = estimate.Assumed, 0, "wm" }),
			value("sr:573", func(v *food.Value) { v.Amount, v.Source = 1.5, "" }),
		},
	}
	columns := []food.Column{{ID: "sr:573", Number: "573", Name: "Something added\x07", Unit: "mg"}}
	return textreport.Food(w, f, columns, func(id string) (source.Work, bool) {
		switch id {
		case "w1":
			return works("w1")[0], true
		case "wm":
			return source.Work{ID: "wm", Citation: "a figure from memory"}, true
		}
		return source.Work{}, false
	}, st)
}

func TestGolden(t *testing.T) {
	files, err := filepath.Glob("testdata/*.txt")
	require.NoError(t, err)
	for _, file := range files {
		assert.Contains(t, views, strings.TrimSuffix(filepath.Base(file), ".txt"), "%s belongs to no view", file)
	}
	for name, view := range views {
		file := filepath.Join("testdata", name+".txt")
		var out bytes.Buffer
		require.NoError(t, view(&out, textreport.Style{}), name)
		if *update {
			require.NoError(t, os.WriteFile(file, out.Bytes(), 0o644))
			continue
		}
		want, err := os.ReadFile(file)
		require.NoError(t, err, "write it with -update, and read it")
		assert.Equal(t, string(want), out.String(), name)
	}
}

// What holds of every page, whatever is on it.
func TestEveryPage(t *testing.T) {
	escape := regexp.MustCompile("\x1b\\[[0-9;]*m")
	for name, view := range views {
		var plain, coloured bytes.Buffer
		require.NoError(t, view(&plain, textreport.Style{}))
		require.NoError(t, view(&coloured, textreport.Style{Colour: true}))
		assert.Equal(t, plain.String(), unpadded(escape.ReplaceAllString(coloured.String(), "")), "%s: colour changes nothing else", name)
		for _, code := range escape.FindAllString(coloured.String(), -1) {
			assert.Contains(t, []string{"\x1b[1m", "\x1b[38;5;131m", "\x1b[0m"}, code, name)
		}
		for _, r := range strings.NewReplacer("\n", "", "\u2009", "").Replace(plain.String()) {
			text := "." + string(r) + "."
			assert.Equal(t, text, textreport.Clean(text, len(text)), "%s: %U", name, r)
		}
		assert.NotContains(t, strings.ToLower(plain.String()), "free from", name)
		if name == "error" {
			continue // a fault stays one line, so that it can be searched for
		}
		for _, columns := range []int{0, 80, 132} {
			var out bytes.Buffer
			require.NoError(t, view(&out, textreport.Style{Width: columns}))
			for line := range strings.Lines(out.String()) {
				line = strings.TrimSuffix(line, "\n")
				most := columns
				if columns == 0 {
					most = 80
				}
				assert.LessOrEqual(t, textreport.Width(line), most, "%s: %q", name, line)
				assert.Equal(t, strings.TrimRight(line, " "), line, name)
			}
			assert.NotContains(t, out.String(), "\n\n\n", name)
		}
	}
}

// unpadded takes off the blanks that a coloured line may end with.
func unpadded(text string) string {
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.Join(lines, "\n")
}

func TestUnknownIsNeverAFigure(t *testing.T) {
	s := tide()
	for i := range s.Assay.PerServing {
		f := &s.Assay.PerServing[i]
		*f = nothing(f.Constituent.ID, math.NaN())
	}
	s.Assay.Components, s.Evidence.Categories = nil, nil
	for name, view := range map[string]func(io.Writer) error{
		"assay": func(w io.Writer) error { return textreport.Assay(w, s, textreport.Style{}) },
		"sheet": func(w io.Writer) error {
			bare := unruled(s.Assay)
			return textreport.Sheet(w, bare, textreport.Style{})
		},
	} {
		var out bytes.Buffer
		require.NoError(t, view(&out), name)
		assert.NotContains(t, out.String(), "NaN", name)
		assert.NotContains(t, out.String(), " 0 ", name)
		assert.NotContains(t, out.String(), "≥ 0", name)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestErrorsOfTheWriterAreReported(t *testing.T) {
	for name, view := range views {
		if name != "error" {
			assert.ErrorContains(t, view(full{}, textreport.Style{}), "disk full", name)
		}
	}
}
