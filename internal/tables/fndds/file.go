package fndds

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
)

// The columns that are not nutrients.
const (
	codeColumn     = "Food code"
	nameColumn     = "Main food description"
	categoryNumber = "WWEIA Category number"
	categoryColumn = "WWEIA Category description"
	energyColumn   = "Energy (kcal)" // tells the nutrient values from the ingredients
)

// file is the workbook or CSV of the nutrient values.
type file struct {
	files fs.FS
	dir   string
	name  string
	book  *table.Workbook // nil for a CSV
}

// find recognises the file by its columns; a workbook goes before a copy. A file
// that cannot be read is an error if no other is the one.
func find(files fs.FS, dir string) (file, error) {
	entries, err := fs.ReadDir(files, ".")
	if err != nil {
		return file{}, fail.Because(fail.Wrong, err, "cannot read "+dir, again)
	}
	var unread error
	for _, extension := range []string{".xlsx", ".csv"} {
		var found []file
		for _, e := range entries {
			if e.IsDir() || !strings.EqualFold(path.Ext(e.Name()), extension) || strings.HasPrefix(e.Name(), "~$") {
				continue
			}
			f := file{files: files, dir: dir, name: e.Name()}
			switch err := f.recognise(extension); {
			case err == nil:
				found = append(found, f)
			case !errors.Is(err, errOther) && unread == nil:
				unread = err
			}
		}
		switch len(found) {
		case 0:
		case 1:
			return found[0], nil
		default:
			return file{}, fail.At(fail.Wrong, fail.Place{File: dir}, fmt.Sprintf("has the nutrient values twice, in %s and %s", found[0].name, found[1].name), "leave only one of them in the folder, or give the file itself")
		}
	}
	if unread != nil {
		return file{}, unread
	}
	return file{}, fail.At(fail.Wrong, fail.Place{File: dir}, fmt.Sprintf("lacks the nutrient values: no .xlsx or .csv with the columns %q and %q", codeColumn, energyColumn), "give the folder that holds the workbook")
}

// recognise reads the header; errOther means another file.
func (f *file) recognise(extension string) error {
	if extension == ".xlsx" {
		book, err := table.OpenWorkbook(f.files, f.dir, f.name, again)
		if err != nil {
			return err
		}
		f.book = book
	}
	rows, err := f.open()
	if err != nil {
		return err
	}
	rows.Close()
	return nil
}

// errOther says that a file holds something else.
var errOther = errors.New("not the nutrient values")

// rows is a table of rows with named columns: a CSV or a sheet.
type rows interface {
	Next() error
	Text(column string) string
	Number(column string) (float64, error)
	Wrong(column, what string) error
	Close()
	columns() []string // on one line each
}

// copied is a CSV copy of the workbook.
type copied struct{ *table.Rows }

func (c copied) columns() []string {
	names := make([]string, len(c.Header))
	for i, cell := range c.Header {
		names[i] = table.OneLine(cell)
	}
	return names
}

// open opens the file and reads its header.
func (f *file) open() (rows, error) {
	if f.book != nil {
		return openSheet(f.book)
	}
	r, err := table.OpenRows(f.files, f.dir, f.name, table.OneLine, again)
	if err != nil {
		return nil, err
	}
	if r.Need(codeColumn, energyColumn) != nil {
		r.Close()
		return nil, errOther
	}
	return copied{r}, nil
}

// count counts the rows of a CSV copy.
func (f *file) count() (int, error) {
	rows, err := f.open()
	if err != nil {
		return 0, err
	}
	defer rows.Close()
	for n := 0; ; n++ {
		if err := rows.Next(); err == io.EOF {
			return n, nil
		} else if err != nil {
			return 0, err
		}
	}
}
