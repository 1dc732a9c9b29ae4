package table

import (
	"io/fs"
	"slices"

	"sipsum/internal/fail"
)

// Cells is a sheet that is read row by row: of a workbook (SheetRows), or a CSV
// file (CSVRows). It knows nothing of a header.
type Cells interface {
	// Next reads the next row that has a filled cell; io.EOF after the last. The
	// cells are valid until the next call.
	Next() ([]string, error)
	// Number gives the number of the current row or line.
	Number() int
	// Wrong makes the error of a cell of the current row; column counts from 0.
	Wrong(column int, what string) error
	Close()
}

// CSVRows reads a CSV file row by row.
type CSVRows struct {
	csvFile
	cells int // in the current row
}

// OpenCSV opens a text file of cells separated by separator. dir names its place
// in messages; again is the advice for a damaged file.
func OpenCSV(fsys fs.FS, dir, name string, separator rune, again string) (*CSVRows, error) {
	file, err := openCSVFile(fsys, dir, name, "cell", again)
	if err != nil {
		return nil, err
	}
	file.csv.Comma, file.csv.FieldsPerRecord, file.csv.ReuseRecord = separator, -1, true
	return &CSVRows{csvFile: file}, nil
}

// Next reads the next row that has a filled cell.
func (r *CSVRows) Next() ([]string, error) {
	for {
		record, err := r.read()
		if err != nil {
			return nil, err
		}
		r.cells = len(record)
		if slices.ContainsFunc(record, func(cell string) bool { return cell != "" }) {
			return record, nil
		}
	}
}

// Number gives the line on which the current row begins.
func (r *CSVRows) Number() int {
	if r.cells == 0 {
		return 0
	}
	line, _ := r.csv.FieldPos(0)
	return line
}

// Wrong makes the error of a cell of the current row; column counts from 0. One
// beyond the last cell is told at the last.
func (r *CSVRows) Wrong(column int, what string) error {
	if r.cells == 0 {
		return fail.At(fail.Wrong, fail.Place{File: r.name}, what, r.again)
	}
	return r.wrong(min(column, r.cells-1), what)
}
