package ciqual_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
	"golang.org/x/text/encoding/charmap"

	"sipsum/internal/food"
	"sipsum/internal/tables/ciqual"
	"sipsum/internal/tables/tablestest"
)

func wantFault(t *testing.T, err error, says ...string) {
	t.Helper()
	tablestest.Fault(t, err)
	for _, text := range says {
		assert.Contains(t, err.Error(), text)
	}
	assert.Less(t, len(err.Error()), 1000)
}

// Line 9 is espresso, whose water is 97,8.
func TestRefusedCells(t *testing.T) {
	for name, c := range map[string]struct{ cell, says string }{
		"word":            {"x", `"x" is not a number`},
		"too large":       {"1e400", `"1e400" is not a number`},
		"very many":       {strings.Repeat("9", 400), "too large"},
		"NaN":             {"NaN", "is not a number"},
		"infinite":        {"Inf", "is not a number"},
		"hexadecimal":     {"0x1p4", "is not a number"},
		"negative":        {"-1,5", "is negative"},
		"two signs":       {"1,2,3", "is not a number"},
		"no whole":        {",5", "is not a number"},
		"no fraction":     {"5,", "is not a number"},
		"below a word":    {"< x", "is not a number"},
		"below a minus":   {"< -1", "is negative"},
		"zero byte":       {"97\x00", "a zero byte"},
		"another mark":    {"Tr", `"Tr" is not a number`},
		"ten million":     {strings.Repeat("8", 10_000_000), "longer than"},
		"quote in a cell": {`9"7`, "bare"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := tablestest.Read(t, ciqual.Format, tablestest.Change(t, fourteen, "ciqual.csv", tablestest.Swap(t, ";97,8;", ";"+c.cell+";")))
			wantFault(t, err, "ciqual.csv:9:", c.says)
		})
	}
}

func TestRefusedFolders(t *testing.T) {
	for name, c := range map[string]struct {
		file string
		edit func([]byte) []byte
		says []string
	}{
		"more than the whole": {"ciqual.csv", tablestest.Swap(t, ";97,8;", ";978;"), []string{"ciqual.csv:9:", `"978" makes water of 978 g`}},
		"unknown heading":     {"ciqual.csv", tablestest.Swap(t, "Eau (g/100 g)", "Eau (mg/100 g)"), []string{"ciqual.csv:1:", "is not known"}},
		"heading twice":       {"ciqual.csv", tablestest.Swap(t, "Fructose (g/100 g)", "Galactose (g/100 g)"), []string{"ciqual.csv:1:", "stands twice"}},
		"no code":             {"ciqual.csv", tablestest.Swap(t, "alim_code", "alim_kode"), []string{"ciqual.csv:1:", `"alim_kode" is not known`}},
		"no name":             {"ciqual.csv", tablestest.Swap(t, ";Miel;", "; ;"), []string{"ciqual.csv:11:", "no name"}},
		"third row of 9621":   {"ciqual.csv", tablestest.Swap(t, ";5001.0;", ";9621;"), []string{"ciqual.csv:15:", "food 9621~2 stands twice"}},
		"unterminated quote":  {"ciqual.csv", tablestest.Swap(t, ";Miel;", `;"Miel;`), []string{"ciqual.csv:"}},
		"commas for fields":   {"ciqual.csv", func(b []byte) []byte { return bytes.ReplaceAll(b, []byte(";"), []byte(",")) }, []string{"ciqual.csv:1:"}},
		"headings only":       {"ciqual.csv", func(b []byte) []byte { return b[:bytes.IndexByte(b, '\n')+1] }, []string{"no food"}},
		"names cut off":       {"alim_utf8.xml", func(b []byte) []byte { return b[:len(b)/2] }, []string{"alim_utf8.xml:", "cut off"}},
		"names without a row": {"alim_utf8.xml", func([]byte) []byte { return []byte("<TABLE></TABLE>") }, []string{"alim_utf8.xml", "no record"}},
		"names of no table":   {"alim_utf8.xml", func([]byte) []byte { return []byte("hello") }, []string{"alim_utf8.xml:1:"}},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := tablestest.Read(t, ciqual.Format, tablestest.Change(t, fourteen, c.file, c.edit))
			wantFault(t, err, c.says...)
		})
	}
	for name, c := range map[string]struct {
		file string
		edit func([]byte) []byte
		says []string
	}{
		"more than the whole":   {"compo_2020_07_07.xml", tablestest.Swap(t, "<teneur> 90,5 <", "<teneur> 905 <"), []string{"compo_2020_07_07.xml:15:7", `"905" makes water of 905 g in 100 g`}},
		"unknown constituent":   {"compo_2020_07_07.xml", tablestest.Swap(t, "<const_code> 65000 <", "<const_code> 65001 <"), []string{"compo_2020_07_07.xml:5:7", "65001"}},
		"unknown food":          {"compo_2020_07_07.xml", tablestest.Swap(t, "<alim_code> 90001 <", "<alim_code> 90009 <"), []string{"compo_2020_07_07.xml:4:7", "90009"}},
		"value twice":           {"compo_2020_07_07.xml", tablestest.Swap(t, "<const_code> 400 <", "<const_code> 65000 <"), []string{"compo_2020_07_07.xml:14:7", "twice"}},
		"not a number":          {"compo_2020_07_07.xml", tablestest.Swap(t, "5,2", "5;2"), []string{"compo_2020_07_07.xml:6:7", "not a number"}},
		"confidence":            {"compo_2020_07_07.xml", tablestest.Swap(t, "> A <", "> E <"), []string{"compo_2020_07_07.xml:9:7", `"E"`}},
		"a least that is wrong": {"compo_2020_07_07.xml", tablestest.Swap(t, "4,9", "-4,9"), []string{"compo_2020_07_07.xml:7:7", "negative"}},
		"field twice":           {"compo_2020_07_07.xml", tablestest.Swap(t, "<min> 4,9 </min>", "<teneur> 4,9 </teneur>"), []string{"compo_2020_07_07.xml:7:7", "twice"}},
		"wrong end":             {"compo_2020_07_07.xml", tablestest.Swap(t, "</teneur>", "</min>"), []string{"compo_2020_07_07.xml:6:", "</teneur>"}},
		"zero byte":             {"compo_2020_07_07.xml", tablestest.Swap(t, "5,2", "5\x002"), []string{"compo_2020_07_07.xml:6:", "zero byte"}},
		"cut off":               {"compo_2020_07_07.xml", func(b []byte) []byte { return b[:len(b)-12] }, []string{"compo_2020_07_07.xml:", "cut off"}},
		"endless tag":           {"compo_2020_07_07.xml", tablestest.Swap(t, "<teneur>", "<teneur "+strings.Repeat("x", 1000)), []string{"compo_2020_07_07.xml:6:7", "no end"}},
		"text behind":           {"compo_2020_07_07.xml", func(b []byte) []byte { return append(b, "more"...) }, []string{"compo_2020_07_07.xml:", "behind"}},
		"another unit":          {"const_2020_07_07.xml", tablestest.Swap(t, "Eau (g/100 g)", "Eau (mg/100 g)"), []string{"const_2020_07_07.xml:10:7", "unit"}},
		"food twice":            {"alim_2020_07_07.xml", tablestest.Swap(t, "90002", "90001"), []string{"alim_2020_07_07.xml:14:7", "twice"}},
		"food without a code":   {"alim_2020_07_07.xml", tablestest.Swap(t, "90002", " "), []string{"alim_2020_07_07.xml:14:7", "code"}},
		"ten million":           {"alim_2020_07_07.xml", tablestest.Swap(t, "90002", strings.Repeat("x", 10_000_000)), []string{"alim_2020_07_07.xml:14:", "longer"}},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := tablestest.Read(t, ciqual.Format, tablestest.Change(t, invented, c.file, c.edit))
			wantFault(t, err, c.says...)
		})
	}
}

func TestRefusedSets(t *testing.T) {
	empty := t.TempDir()
	_, err := tablestest.Read(t, ciqual.Format, empty)
	wantFault(t, err, empty, "lacks")
	tablestest.Write(t, empty, "Table.xls", []byte("\xd0\xcf\x11\xe0"))
	_, err = tablestest.Read(t, ciqual.Format, empty)
	wantFault(t, err, "Table.xls", "save its sheet")
	tablestest.Write(t, empty, "compo.xml", nil)
	_, err = tablestest.Read(t, ciqual.Format, empty)
	wantFault(t, err, "lacks alim*.xml")
}

// A folder with a workbook and values in XML, or with two workbooks, is not
// guessed about.
func TestRefusesTheTableTwice(t *testing.T) {
	content := tablestest.Bytes(t, fourteen, "ciqual.csv")
	for _, dir := range []string{invented, fourteen} {
		copied := tablestest.Change(t, dir, "README.md", func(b []byte) []byte { return b })
		tablestest.Write(t, copied, "Ciqual again.csv", content)
		_, err := tablestest.Read(t, ciqual.Format, copied)
		wantFault(t, err, copied, "holds the table twice", "Ciqual again.csv")
	}
}

// print gives all that foods hold, as a text.
func print(foods []*food.Food) string {
	var b strings.Builder
	for _, f := range foods {
		fmt.Fprintf(&b, "%+v\n", *f)
	}
	return b.String()
}

// The same rows give the same foods in Windows-1252, with a byte order mark, with
// CRLF, as a single file and as a workbook.
func TestFormsOfTheWorkbook(t *testing.T) {
	want, err := tablestest.Read(t, ciqual.Format, fourteen)
	require.NoError(t, err)
	for name, edit := range map[string]func([]byte) []byte{
		"byte order mark": func(b []byte) []byte { return append([]byte("\ufeff"), b...) },
		"CRLF":            func(b []byte) []byte { return bytes.ReplaceAll(b, []byte("\n"), []byte("\r\n")) },
		"Windows-1252": func(b []byte) []byte {
			encoded, err := charmap.Windows1252.NewEncoder().Bytes(b)
			require.NoError(t, err)
			return encoded
		},
		"codes without .0": func(b []byte) []byte { return bytes.ReplaceAll(b, []byte(".0;"), []byte(";")) },
		"decimal points":   func(b []byte) []byte { return bytes.ReplaceAll(b, []byte("97,8"), []byte("97.8")) },
	} {
		have, err := tablestest.Read(t, ciqual.Format, tablestest.Change(t, fourteen, "ciqual.csv", edit))
		require.NoError(t, err, name)
		assert.Equal(t, print(want), print(have), name)
	}
	have, err := tablestest.Read(t, ciqual.Format, asWorkbook(t, filepath.Join(fourteen, "ciqual.csv"), filepath.Join(fourteen, "alim_utf8.xml")))
	require.NoError(t, err)
	assert.Equal(t, print(want), print(have))

	french, err := tablestest.Read(t, ciqual.Format, filepath.Join(fourteen, "ciqual.csv"))
	require.NoError(t, err)
	assert.Equal(t, food.Name{Language: "fr", Text: "Miel"}, french[9].Names[0])
	assert.Equal(t, "honey", french[9].Group, "the group does not depend on the English name")
}

func TestWholeReleaseAsWorkbook(t *testing.T) {
	dir := tablestest.Published(t, "ciqual2020")
	assertWhole(t, asWorkbook(t, filepath.Join(dir, "ciqual2020_fr.csv"), filepath.Join(dir, "alim_utf8.xml")))
}

// asWorkbook saves a CSV file as .xlsx, behind a sheet of something else.
func asWorkbook(t *testing.T, file, foods string) string {
	t.Helper()
	in, err := os.Open(file)
	require.NoError(t, err)
	defer in.Close()
	rows := csv.NewReader(in)
	rows.Comma = ';'
	all, err := rows.ReadAll()
	require.NoError(t, err)
	book := excelize.NewFile()
	defer book.Close()
	require.NoError(t, book.SetCellStr("Sheet1", "A1", "about"))
	_, err = book.NewSheet("compo")
	require.NoError(t, err)
	out, err := book.NewStreamWriter("compo")
	require.NoError(t, err)
	for i, row := range all {
		cells := make([]any, len(row))
		for j, cell := range row {
			cells[j] = cell
		}
		require.NoError(t, out.SetRow(fmt.Sprintf("A%d", i+1), cells))
	}
	require.NoError(t, out.Flush())
	dir := t.TempDir()
	require.NoError(t, book.SaveAs(filepath.Join(dir, "Table Ciqual.xlsx")))
	tablestest.Write(t, dir, "alim.xml", tablestest.Bytes(t, foods))
	return dir
}

// A name in English is taken only where both files have the same French one.
func TestNamesOfAnotherEdition(t *testing.T) {
	foods, err := tablestest.Read(t, ciqual.Format, tablestest.Change(t, fourteen, "alim_utf8.xml", tablestest.Swap(t, "<alim_nom_fr> Miel <", "<alim_nom_fr> Sirop <")))
	require.NoError(t, err)
	assert.Equal(t, []food.Name{{Language: "fr", Text: "Miel"}}, foods[9].Names)
	assert.Equal(t, "en", foods[8].Names[0].Language)
}
