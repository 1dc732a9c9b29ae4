package csvreport_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/caution"
	"sipsum/internal/drink"
	"sipsum/internal/label"
	"sipsum/internal/report/csv"
	"sipsum/internal/report/reporttest"
	"sipsum/internal/sheet"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// harbour is a made-up drink; its figures speak of no food.
func harbour() *sheet.Sheet {
	known, most := 0.00885, 0.16885
	cards := []label.Card{{
		Rules: "eu", Basis: label.Per100ml, Columns: []string{label.Per100ml, label.PerServing},
		Rows: []label.Row{
			{Key: "saturates", Label: "of which saturates", Per100ml: &label.Cell{Value: &known, Most: &most, Printed: "<0.1 g"}, Serving: &label.Cell{Value: &known, Printed: "<0.1 g", Reference: "0 %"}},
			{Key: "fibre", Label: "Fibre", FromMemory: true, Unknown: true, Per100ml: &label.Cell{Printed: "unknown"}, Serving: &label.Cell{Printed: "unknown"}},
		},
	}}
	declared := []sheet.Declaration{{
		Declaration: allergen.Declaration{
			Rules:      "eu",
			Contains:   []allergen.Entry{{Code: "milk", Name: "Milk", From: []string{"core:whey-acid", "own:" + reporttest.At}, Via: []string{"whey"}, Source: "Annex II, item 7"}},
			MayContain: []allergen.Entry{{Code: "nuts", Name: "Nuts"}},
			Check:      []allergen.Check{{Code: allergen.CheckNotAssessed, Foods: []string{"own:oat"}, Text: "Read its label."}},
		},
		Cautions: []caution.Caution{{Code: "caffeine", Text: "One serving holds about 72 mg.", Source: "EFSA"}},
	}}
	return &sheet.Sheet{
		Assay: &assay.Assay{Drink: &drink.Drink{Name: reporttest.Formula, Serves: 2}},
		Cards: func() []label.Card { return cards }, Allergens: func() []sheet.Declaration { return declared },
	}
}

func tables() map[string]func(io.Writer) error {
	s := harbour()
	m := &sheet.Menu{Rules: []string{"eu"}, Drinks: []sheet.Offer{{File: "a.drink.yaml", Name: reporttest.Sums, Cards: s.Cards(), Allergens: s.Allergens()}}}
	return map[string]func(io.Writer) error{
		"cards":     func(w io.Writer) error { return csvreport.Cards(w, s) },
		"allergens": func(w io.Writer) error { return csvreport.Allergens(w, s) },
		"menu":      func(w io.Writer) error { return csvreport.Menu(w, m) },
		"leaf":      func(w io.Writer) error { return csvreport.Leaf(w, reporttest.Leaf()) },
	}
}

func TestTablesKeepTheirForm(t *testing.T) {
	all := tables()
	for name, write := range all {
		var got bytes.Buffer
		require.NoError(t, write(&got), name)
		path := filepath.Join("testdata", name+".csv")
		if *update {
			require.NoError(t, os.WriteFile(path, got.Bytes(), 0o644))
		}
		want, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.Equal(t, string(want), got.String(), "%s: run with -update and read the difference", name)
	}
	files, err := filepath.Glob("testdata/*.csv")
	require.NoError(t, err)
	assert.Len(t, files, len(all))
}

// No cell begins with what a spreadsheet runs (OWASP, CSV injection), and every row has the
// columns of the header.
func TestNoCellIsAFormula(t *testing.T) {
	s := reporttest.Read(t, reporttest.HostileDrink())
	m := reporttest.Menu(s.Rules, s)
	all := tables()
	all["hostile cards"] = func(w io.Writer) error { return csvreport.Cards(w, s) }
	all["hostile allergens"] = func(w io.Writer) error { return csvreport.Allergens(w, s) }
	all["hostile menu"] = func(w io.Writer) error { return csvreport.Menu(w, m) }
	all["hostile sheet"] = func(w io.Writer) error { return csvreport.Sheet(w, sheet.PaperOf(s)) }
	for kind, l := range reporttest.Leaves(s) {
		all["hostile "+kind] = func(w io.Writer) error { return csvreport.Leaf(w, l) }
	}
	for name, write := range all {
		var out bytes.Buffer
		require.NoError(t, write(&out), name)
		rows, err := csv.NewReader(&out).ReadAll()
		require.NoError(t, err, name)
		for _, row := range rows {
			for _, cell := range row {
				assert.False(t, strings.ContainsAny(firstOf(cell), "=+-@＝＋－＠\t\r\n"), "%s: %q", name, cell)
			}
		}
	}
}

func firstOf(text string) string {
	for _, r := range text {
		return string(r)
	}
	return ""
}

// What nobody knows is an empty figure, never 0.
func TestUnknownIsNotZero(t *testing.T) {
	var out bytes.Buffer
	require.NoError(t, csvreport.Cards(&out, harbour()))
	rows, err := csv.NewReader(&out).ReadAll()
	require.NoError(t, err)
	at := map[string]int{}
	for i, name := range rows[0] {
		at[name] = i
	}
	seen := 0
	for _, row := range rows[1:] {
		if row[at["row"]] == "fibre" {
			seen++
			assert.Empty(t, row[at["value"]])
			assert.Equal(t, "false", row[at["known"]])
		}
	}
	assert.Equal(t, 2, seen)
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestErrorsOfTheWriterAreReported(t *testing.T) {
	for name, write := range tables() {
		assert.ErrorContains(t, write(full{}), "disk full", name)
	}
}
