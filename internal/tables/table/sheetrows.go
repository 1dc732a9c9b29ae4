package table

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"sipsum/internal/fail"
)

// What a sheet may hold at most. A spreadsheet program lets a cell hold 32,767
// characters and a sheet 1,048,576 rows.
const (
	maxCell      = 32_767 // characters
	maxColumns   = 4_096
	maxSheetRows = 1_048_576
	maxBlankRows = 100_000 // in a run
)

// SheetRows reads the rows of a sheet in their order, from top to bottom. Rows
// without a filled cell are left out; Number tells them.
//
// A cell is the text that the file holds: a number with all its digits, not as
// its format shows it; TRUE or FALSE; the last result of a formula. Dates are
// the numbers that they are stored as. Only the first cell of a merged area is
// filled.
type SheetRows struct {
	book   *Workbook
	sheet  sheet
	part   io.ReadCloser
	xml    *xml.Decoder
	row    int // counted from 1
	filled int // the last row with a filled cell
	cells  []string
	styles []string // of the cells: a number of the workbook's list of styles
	ended  bool
}

// Rows opens a sheet.
func (w *Workbook) Rows(name string) (*SheetRows, error) {
	at := slices.IndexFunc(w.sheets, func(s sheet) bool { return s.name == name })
	if at < 0 {
		return nil, w.wrong(fmt.Sprintf("has no sheet %.60q", name), w.again)
	}
	part, err := w.part(w.sheets[at].part)
	if err != nil {
		return nil, err
	}
	return &SheetRows{book: w, sheet: w.sheets[at], part: part, xml: xml.NewDecoder(&shortTexts{Reader: part})}, nil
}

// Format gives the number format of a cell of the current row, such as "0.00";
// "General" if it has none of its own. Column counts from 0. Formats can carry
// meaning: one that sets negative numbers in parentheses, for instance.
func (r *SheetRows) Format(column int) string {
	if column >= len(r.styles) {
		return general
	}
	style, err := strconv.Atoi(r.styles[column])
	if err != nil || style < 0 || style >= len(r.book.formats) {
		return general
	}
	return r.book.formats[style]
}

// Close ends the reading.
func (r *SheetRows) Close() { r.part.Close() }

// Number gives the number of the current row, as the spreadsheet shows it.
func (r *SheetRows) Number() int { return r.row }

// Next reads the next row that has a filled cell; io.EOF after the last. The
// cells are those of the row up to its last filled one, and stay valid until the
// next call.
func (r *SheetRows) Next() ([]string, error) {
	for !r.ended {
		token, err := r.xml.Token()
		switch {
		case err == io.EOF:
			r.ended = true
		case err != nil:
			return nil, r.book.damaged(r.sheet.part, err)
		}
		start, ok := token.(xml.StartElement)
		if !ok || start.Name.Local != "row" {
			continue
		}
		if err := r.readRow(start); err != nil {
			return nil, err
		}
		if len(r.cells) > 0 {
			r.filled = r.row
			return r.cells, nil
		}
	}
	return nil, io.EOF
}

// readRow reads a row element whole.
func (r *SheetRows) readRow(start xml.StartElement) error {
	number := r.row + 1
	if text := attribute(start, "r"); text != "" {
		var err error
		if number, err = strconv.Atoi(text); err != nil || number <= r.row || number > maxSheetRows {
			return r.wrong(r.row+1, 0, fmt.Sprintf("row number %.20q is not one that can follow row %d", text, r.row))
		}
	}
	if number-r.filled > maxBlankRows {
		return r.do(number, 0, fmt.Sprintf("more than %d empty rows in a run", maxBlankRows), "delete the empty rows of the sheet and save it again")
	}
	r.row, r.cells, r.styles = number, r.cells[:0], r.styles[:0]
	at := 0 // columns read, filled or not
	for {
		token, err := r.xml.Token()
		if err != nil {
			return r.book.damaged(r.sheet.part, err)
		}
		switch e := token.(type) {
		case xml.EndElement:
			return nil // the only end that is left is the row's own
		case xml.StartElement:
			if e.Name.Local != "c" {
				err = r.xml.Skip()
			} else {
				at, err = r.readCell(e, at)
			}
			if err != nil {
				return r.fault(err)
			}
		}
	}
}

// fault keeps an error that already has its place.
func (r *SheetRows) fault(err error) error {
	if _, ours := err.(*fail.Error); ours {
		return err
	}
	return r.book.damaged(r.sheet.part, err)
}

// readCell reads a cell element and puts its text in its column; it gives the
// number of columns read.
func (r *SheetRows) readCell(start xml.StartElement, at int) (int, error) {
	column := at + 1
	if text := attribute(start, "r"); text != "" {
		if column = columnOf(text); column <= at || column > maxColumns {
			return at, r.wrong(r.row, at, fmt.Sprintf("cell %.20q is out of order or beyond column %d", text, maxColumns))
		}
	}
	if column > maxColumns {
		return at, r.wrong(r.row, at, fmt.Sprintf("more than %d columns", maxColumns))
	}
	text, err := r.cellText(attribute(start, "t"), column-1)
	switch {
	case errors.Is(err, errLong) || len(text) > maxCell && utf8.RuneCountInString(text) > maxCell:
		return column, r.wrong(r.row, column-1, fmt.Sprintf("more than %d characters in a cell", maxCell))
	case err != nil || text == "":
		return column, err
	case strings.IndexByte(text, 0) >= 0:
		return column, r.wrong(r.row, column-1, "a zero byte stands in this cell")
	}
	for len(r.cells) < column-1 {
		r.cells, r.styles = append(r.cells, ""), append(r.styles, "")
	}
	r.cells, r.styles = append(r.cells, text), append(r.styles, attribute(start, "s"))
	return column, nil
}

// cellText reads the content of a cell of a kind: s shared, inlineStr, b, else
// as written.
func (r *SheetRows) cellText(kind string, column int) (string, error) {
	var written strings.Builder
	for {
		token, err := r.xml.Token()
		if err != nil {
			return "", err
		}
		switch e := token.(type) {
		case xml.StartElement:
			switch e.Name.Local {
			case "v":
				err = characters(r.xml, &written)
			case "is":
				err = richText(r.xml, &written)
			default: // the formula, extensions
				err = r.xml.Skip()
			}
			if err != nil {
				return "", err
			}
		case xml.EndElement:
			return r.meaning(kind, written.String(), column)
		}
	}
}

func (r *SheetRows) meaning(kind, written string, column int) (string, error) {
	switch {
	case kind == "s" && written != "":
		i, err := strconv.Atoi(written)
		if err != nil || i < 0 || i >= len(r.book.texts) {
			return "", r.wrong(r.row, column, fmt.Sprintf("the cell points to text %.20q of the workbook, which is not there", written))
		}
		return r.book.texts[i], nil
	case kind == "b" && written == "1":
		return "TRUE", nil
	case kind == "b" && written == "0":
		return "FALSE", nil
	case kind == "str" || kind == "inlineStr":
		return unescape(written), nil
	}
	return written, nil
}

// Wrong makes the error of a cell of the current row; column counts from 0.
func (r *SheetRows) Wrong(column int, what string) error { return r.wrong(r.row, column, what) }

func (r *SheetRows) wrong(row, column int, what string) error {
	return r.do(row, column, what, r.book.again)
}

func (r *SheetRows) do(row, column int, what, do string) error {
	place := fail.Place{File: r.book.name, Line: row, Col: column + 1}
	return fail.At(fail.Wrong, place, fmt.Sprintf("sheet %.60q, cell %s: %s", r.sheet.name, cellName(row, column), what), do)
}
