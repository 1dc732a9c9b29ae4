package table_test

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
	"sipsum/internal/tables/tablestest"
)

// The least parts of a workbook, ECMA-376 part 1, annex L.
const (
	rels     = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">`
	officeNS = `http://schemas.openxmlformats.org/officeDocument/2006/relationships`
	mainNS   = `http://schemas.openxmlformats.org/spreadsheetml/2006/main`
)

func bookParts(sheetData string) map[string]string {
	return map[string]string{
		"_rels/.rels":                rels + `<Relationship Id="a" Type="` + officeNS + `/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
		"xl/workbook.xml":            `<workbook xmlns="` + mainNS + `" xmlns:r="` + officeNS + `"><sheets><sheet name="Foods" sheetId="1" r:id="s1"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels": rels + `<Relationship Id="s1" Type="` + officeNS + `/worksheet" Target="worksheets/one.xml"/><Relationship Id="t" Type="` + officeNS + `/sharedStrings" Target="/xl/texts.xml"/></Relationships>`,
		"xl/texts.xml":               `<sst xmlns="` + mainNS + `"><si><t>plain</t></si><si><r><t>ri</t></r><r><t xml:space="preserve">ch </t></r><rPh sb="0" eb="1"><t>PHONETIC</t></rPh></si><si><t>a_x000D_b_x005F_x</t></si></sst>`,
		"xl/worksheets/one.xml":      `<worksheet xmlns="` + mainNS + `"><sheetData>` + sheetData + `</sheetData></worksheet>`,
	}
}

func openParts(t *testing.T, parts map[string]string) (*table.Workbook, error) {
	t.Helper()
	var raw bytes.Buffer
	z := zip.NewWriter(&raw)
	for name, text := range parts {
		w, err := z.Create(name)
		require.NoError(t, err)
		_, err = io.WriteString(w, text)
		require.NoError(t, err)
	}
	require.NoError(t, z.Close())
	return table.OpenWorkbook(fstest.MapFS{"b.xlsx": {Data: raw.Bytes()}}, "dir", "b.xlsx", "mend it")
}

// readSheet gives the rows of a sheet by number.
func readSheet(w *table.Workbook, sheet string) (map[int][]string, error) {
	rows, err := w.Rows(sheet)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	all := map[int][]string{}
	for {
		cells, err := rows.Next()
		if err == io.EOF {
			return all, nil
		} else if err != nil {
			return all, err
		}
		all[rows.Number()] = slices.Clone(cells)
	}
}

func TestWorkbookCells(t *testing.T) {
	w, err := openParts(t, bookParts(`<row r="2"><c r="A2" t="s"><v>0</v></c><c r="C2"><v>0.30000000000000004</v></c><c r="D2" s="4"/></row>`+
		`<row r="3" spans="1:3"><c r="B3" t="s"><v>1</v></c><c t="s"><v>2</v></c><c t="b"><v>1</v></c><c t="inlineStr"><is><t>in</t><r><t>line</t></r></is></c>`+
		`<c t="str"><f>A1&amp;"x"</f><v>done</v></c><c t="e"><v>#N/A</v></c><c><f>1+1</f></c></row><row/><row><c><v>7</v></c></row>`))
	require.NoError(t, err)
	assert.Equal(t, []string{"Foods"}, w.Sheets())
	rows, err := readSheet(w, "Foods")
	require.NoError(t, err)
	assert.Equal(t, map[int][]string{
		2: {"plain", "", "0.30000000000000004"},
		3: {"", "rich ", "a\rb_x", "TRUE", "inline", "done", "#N/A"},
		5: {"7"},
	}, rows)
}

// digits gives a text that does not shrink much.
func digits(n int) string {
	random := rand.New(rand.NewPCG(1, 2))
	text := make([]byte, n)
	for i := range text {
		text[i] = byte('0' + random.IntN(10))
	}
	return string(text)
}

func emptyRows(n int) string {
	var text strings.Builder
	for i := range n {
		fmt.Fprintf(&text, `<row r="%d" ht="%d"/>`, i+1, i%17)
	}
	return text.String()
}

func TestWorkbookRefusesDamage(t *testing.T) {
	cell := `<c><v>1</v></c>`
	cases := []struct{ name, data, says string }{
		{"cut off", `<row r="1">` + cell, "is damaged in its part xl/worksheets/one.xml"},
		{"crossed tags", `<row r="1"><c><v>1</c></v></row>`, "is damaged in its part"},
		{"unknown entity", `<row r="1"><c><v>&bomb;</v></c></row>`, "is damaged in its part"},
		{"text that is not there", `<row r="4"><c r="C4" t="s"><v>99</v></c></row>`, `dir/b.xlsx:4:3: sheet "Foods", cell C4: the cell points to text "99"`},
		{"negative text", `<row r="4"><c t="s"><v>-1</v></c></row>`, `points to text "-1"`},
		{"row twice", `<row r="4">` + cell + `</row><row r="4">` + cell + `</row>`, `dir/b.xlsx:5:1: sheet "Foods", cell A5: row number "4" is not one that can follow row 4`},
		{"row back", `<row r="4"/><row r="3"/>`, `row number "3"`},
		{"row of words", `<row r="x"/>`, `row number "x"`},
		{"cell twice", `<row r="1"><c r="B1"/><c r="B1"/></row>`, `cell "B1" is out of order`},
		{"cell without a column", `<row r="1"><c r="1"/></row>`, `cell "1" is out of order`},
		{"far cell", `<row r="1"><c r="XFD1">` + `<v>1</v></c></row>`, "beyond column 4096"},
		{"many cells", `<row r="1">` + strings.Repeat(cell, 4097) + `</row>`, "more than 4096 columns"},
		{"huge cell", `<row r="9"><c r="B9" t="str"><v>` + digits(10<<20) + `</v></c></row>`, `dir/b.xlsx:9:2: sheet "Foods", cell B9: more than 32767 characters`},
		{"long cell", `<row r="9"><c r="B9" t="str"><v>` + digits(32_768) + `</v></c></row>`, "cell B9: more than 32767 characters"},
		{"zero byte", `<row r="9"><c r="B9" t="str"><v>a_x0000_</v></c></row>`, `cell B9: a zero byte`},
		{"million blank rows", emptyRows(1_000_000), "more than 100000 empty rows in a run"},
		{"far row", `<row r="1">` + cell + `</row><row r="1048576"><c r="A1048576"><v>1</v></c></row>`, "cell A1048576: more than 100000 empty rows"},
		{"beyond the last row", `<row r="1048577"/>`, `row number "1048577"`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			w, err := openParts(t, bookParts(c.data))
			if err == nil {
				_, err = readSheet(w, "Foods")
			}
			require.ErrorContains(t, err, c.says)
			assert.Equal(t, fail.Wrong, fail.ExitCode(err))
			assert.Contains(t, err.Error(), "dir/b.xlsx")
		})
	}
}

func TestWorkbookRefusesOtherFiles(t *testing.T) {
	open := func(raw []byte) error {
		_, err := table.OpenWorkbook(fstest.MapFS{"b.xlsx": {Data: raw}}, "", "b.xlsx", "mend it")
		return err
	}
	assert.ErrorContains(t, open([]byte("a,b\n1,2\n")), "b.xlsx: is not a whole .xlsx workbook")
	assert.ErrorContains(t, open(nil), "b.xlsx: is not a whole .xlsx workbook")
	assert.ErrorContains(t, open([]byte("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1")), "save it as .xlsx")
	_, err := table.OpenWorkbook(fstest.MapFS{}, "", "b.xlsx", "mend it")
	assert.ErrorContains(t, err, "cannot read b.xlsx")

	for _, part := range []string{"_rels/.rels", "xl/workbook.xml", "xl/_rels/workbook.xml.rels", "xl/texts.xml"} {
		parts := bookParts("")
		delete(parts, part)
		_, err := openParts(t, parts)
		assert.ErrorContains(t, err, "it has no part "+part)
		parts[part] = "<a>"
		_, err = openParts(t, parts)
		assert.ErrorContains(t, err, "damaged in its part "+part)
	}
	parts := bookParts("")
	parts["_rels/.rels"] = rels + "</Relationships>"
	_, err = openParts(t, parts)
	assert.ErrorContains(t, err, "names no main part")
	parts = bookParts("")
	parts["xl/media/bomb.bin"] = string(make([]byte, 8<<20))
	_, err = openParts(t, parts)
	assert.ErrorContains(t, err, "more than 200 times its size")
	parts = bookParts("")
	parts["../evil"] = "x"
	_, err = openParts(t, parts)
	assert.ErrorContains(t, err, "leads outside")

	w, err := openParts(t, bookParts(""))
	require.NoError(t, err)
	_, err = w.Rows("Other")
	assert.ErrorContains(t, err, `has no sheet "Other"`)
}

// TestWorkbookReadsWhatALibraryWrites reads a workbook written by another
// program, and compares published workbooks with what that program reads.
func TestWorkbookReadsWhatALibraryWrites(t *testing.T) {
	book := excelize.NewFile()
	require.NoError(t, book.SetSheetName("Sheet1", "Übersicht & Ｆｏｏｄｓ"))
	for cell, value := range map[string]any{"A1": "code", "B1": "Sugars\n(g)", "A3": 25606, "B3": 0.1, "D3": true, "C4": " x "} {
		require.NoError(t, book.SetCellValue("Übersicht & Ｆｏｏｄｓ", cell, value))
	}
	var raw bytes.Buffer
	require.NoError(t, book.Write(&raw))
	w, err := table.OpenWorkbook(fstest.MapFS{"b.xlsx": {Data: raw.Bytes()}}, "", "b.xlsx", "")
	require.NoError(t, err)
	rows, err := readSheet(w, "Übersicht & Ｆｏｏｄｓ")
	require.NoError(t, err)
	assert.Equal(t, map[int][]string{1: {"code", "Sugars\n(g)"}, 3: {"25606", "0.1", "", "TRUE"}, 4: {"", "", " x "}}, rows)
}

func TestWorkbookTellsNumberFormats(t *testing.T) {
	book := excelize.NewFile()
	code := `0.0_);\(0.0\)`
	style, err := book.NewStyle(&excelize.Style{CustomNumFmt: &code})
	require.NoError(t, err)
	require.NoError(t, book.SetCellValue("Sheet1", "A1", -1.5))
	require.NoError(t, book.SetCellValue("Sheet1", "C1", -1.5))
	require.NoError(t, book.SetCellStyle("Sheet1", "C1", "C1", style))
	var raw bytes.Buffer
	require.NoError(t, book.Write(&raw))
	w, err := table.OpenWorkbook(fstest.MapFS{"b.xlsx": {Data: raw.Bytes()}}, "", "b.xlsx", "")
	require.NoError(t, err)
	rows, err := w.Rows("Sheet1")
	require.NoError(t, err)
	defer rows.Close()
	cells, err := rows.Next()
	require.NoError(t, err)
	assert.Equal(t, []string{"-1.5", "", "-1.5"}, cells)
	assert.Equal(t, []string{"General", "General", code, "General"}, []string{rows.Format(0), rows.Format(1), rows.Format(2), rows.Format(3)})
}

func TestWorkbookAgreesWithALibraryOnPublishedFiles(t *testing.T) {
	books, err := filepath.Glob(tablestest.Published(t, "*", "*.xlsx"))
	require.NoError(t, err)
	require.NotEmpty(t, books)
	for _, path := range books {
		t.Run(filepath.Base(path), func(t *testing.T) {
			dir, name := filepath.Split(path)
			w, err := table.OpenWorkbook(os.DirFS(dir), dir, name, "")
			require.NoError(t, err)
			other, err := excelize.OpenFile(path, excelize.Options{RawCellValue: true})
			require.NoError(t, err)
			defer other.Close()
			require.Equal(t, other.GetSheetList(), w.Sheets())
			for _, sheet := range w.Sheets() {
				have, err := readSheet(w, sheet)
				require.NoError(t, err)
				want, err := readWith(other, sheet)
				require.NoError(t, err)
				require.Equal(t, len(want), len(have), sheet)
				for number, cells := range want {
					if !slices.Equal(cells, have[number]) {
						t.Fatalf("sheet %s row %d: %q, want %q", sheet, number, have[number], cells)
					}
				}
			}
		})
	}
}

// readWith reads a sheet with the library, blank cells at the end left out.
func readWith(book *excelize.File, sheet string) (map[int][]string, error) {
	rows, err := book.Rows(sheet)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	all := map[int][]string{}
	for number := 1; rows.Next(); number++ {
		cells, err := rows.Columns()
		if err != nil {
			return nil, fmt.Errorf("row %d: %w", number, err)
		}
		for len(cells) > 0 && cells[len(cells)-1] == "" {
			cells = cells[:len(cells)-1]
		}
		if len(cells) > 0 {
			all[number] = slices.Clone(cells)
		}
	}
	return all, nil
}
