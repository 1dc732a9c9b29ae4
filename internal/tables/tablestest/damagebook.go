package tablestest

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
)

// BookDamage says where a release in workbooks is to be damaged: a cell with a
// number, in a row of a food that is neither the first nor the last of its sheet.
type BookDamage struct {
	File, Sheet string
	Row, Column int  // counted from 1
	Header      int  // the row that names the columns
	MayBeEmpty  bool // an empty cell is no value and no fault
	MayBeBelow0 bool // the cell may hold a number below zero
	Compared    bool // the cell is held against another and makes no figure
}

// RunBook damages a copy of a release in every way that is known to happen to a
// workbook and reads it.
func RunBook(t *testing.T, format table.Format, dir string, d BookDamage) {
	t.Helper()
	name, err := excelize.CoordinatesToCellName(d.Column, d.Row)
	require.NoError(t, err)
	set := func(value any) func(*excelize.File) error {
		return func(book *excelize.File) error { return book.SetCellValue(d.Sheet, name, value) }
	}
	for _, c := range []struct {
		name   string
		change func(*excelize.File) error
		line   int // 0: any place
		skip   bool
	}{
		{"not a number", set("x1"), d.Row, false},
		{"too large for a number", set("1e400"), d.Row, false},
		{"NaN", set("NaN"), d.Row, false},
		{"Inf", set("Inf"), d.Row, false},
		{"hexadecimal", set("0x1p4"), d.Row, false},
		{"negative", set(-1.5), d.Row, d.MayBeBelow0},
		{"negative text", set("-1.5"), d.Row, d.MayBeBelow0},
		{tooMuch, set(tooMuchOf), d.Row, d.Compared},
		{"semicolon", set("1;5"), d.Row, false},
		{"date", set("2020-12-25"), d.Row, false},
		{"error of a formula", set("#N/A"), d.Row, false},
		{"truth", set(true), d.Row, false},
		{"long cell", set(strings.Repeat("9", 32_000)), d.Row, false},
		{"empty number", set(nil), d.Row, d.MayBeEmpty},
		{"row twice", func(book *excelize.File) error { return book.DuplicateRow(d.Sheet, d.Row) }, d.Row + 1, false},
		{"row of something else", func(book *excelize.File) error {
			if err := book.InsertRows(d.Sheet, d.Row, 1); err != nil {
				return err
			}
			first, err := excelize.CoordinatesToCellName(1, d.Row)
			if err != nil {
				return err
			}
			return book.SetSheetRow(d.Sheet, first, &[]any{"hello", "hello", "hello"})
		}, d.Row, false},
		{"no header", func(book *excelize.File) error { return book.RemoveRow(d.Sheet, d.Header) }, 0, false},
	} {
		if c.skip {
			continue
		}
		t.Run(c.name, func(t *testing.T) {
			copied := Copy(t, dir)
			path := filepath.Join(copied, d.File)
			book, err := excelize.OpenFile(path)
			require.NoError(t, err)
			require.NoError(t, c.change(book))
			require.NoError(t, book.Save())
			_, err = Read(t, format, copied)
			at := Fault(t, err).Faults[0].Place
			if c.line > 0 {
				assert.Equal(t, d.File, filepath.Base(at.File))
				assert.Equal(t, c.line, at.Line)
			}
		})
	}
	whole := Bytes(t, dir, d.File)
	for name, content := range map[string][]byte{
		"empty file": nil, "cut off": whole[:len(whole)/2], "cut off before the end": whole[:len(whole)-9], "text": []byte("a,b\n1,2\n"),
	} {
		t.Run(name, func(t *testing.T) {
			_, err := Read(t, format, Change(t, dir, d.File, func([]byte) []byte { return content }))
			Fault(t, err)
		})
	}
	t.Run("not a folder", func(t *testing.T) {
		_, err := format.Open(t.Context(), filepath.Join(dir, "nowhere"), "")
		assert.Equal(t, fail.Wrong, fail.ExitCode(err))
	})
}

// ChangeBook copies a release and sets a cell of one of its workbooks; without a
// cell the sheet gets the value as its name.
func ChangeBook(t testing.TB, dir, file, sheet, cell string, value any) string {
	t.Helper()
	copied := Copy(t, dir)
	path := filepath.Join(copied, file)
	book, err := excelize.OpenFile(path)
	require.NoError(t, err)
	defer book.Close()
	if cell == "" {
		require.NoError(t, book.SetSheetName(sheet, value.(string)))
	} else {
		require.NoError(t, book.SetCellValue(sheet, cell, value))
	}
	require.NoError(t, book.Save())
	return copied
}
