package stfcj

import (
	"fmt"
	"io"
	"io/fs"
	"path"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
)

// part is a part of the table, as in data/maps/stfcj_columns.csv.
type part string

// The parts. Remarks stand in the workbooks of the others.
const (
	mainTable part = "main"
	sugars    part = "sugars"
	acids     part = "acids"
	fatty     part = "fatty"
	remarks   part = "remarks"
)

// parts lists the parts that are workbooks of their own, the main one first.
var parts = []part{mainTable, sugars, acids, fatty}

// telltale are columns that tell a part from the others.
var telltale = map[part][]string{
	mainTable: {"REFUSE", "CHOAVLM", "OA", "NACL_EQ"},
	sugars:    {"CHOAVLM", "SUCS", "SORTL"},
	acids:     {"CITAC", "QUINAC", "OA"},
	fatty:     {"FASAT", "FAPU", "F18D1"},
}

// work gives the id of the work that the values of a part cite.
func (p part) work() string {
	if p == mainTable {
		return "stfcj2020"
	}
	return "stfcj2020-" + string(p)
}

// title gives the name of a part.
func (p part) title() string {
	return map[part]string{
		mainTable: "chapter 2, main table",
		sugars:    "carbohydrate tables, available carbohydrates and polyols",
		acids:     "carbohydrate tables, annex 2: organic acids",
		fatty:     "fatty acid tables, table 1",
	}[p]
}

// book is an opened workbook.
type book struct {
	*table.Workbook
	file string
	path string // for messages
}

// findBooks opens the workbooks at the top of a release and recognises them by
// the columns of their first sheet. The main table must be there.
func findBooks(files fs.FS, dir string) (map[part]book, error) {
	entries, err := fs.ReadDir(files, ".")
	if err != nil {
		return nil, fail.Because(fail.Wrong, err, "cannot read "+dir, again)
	}
	books := map[part]book{}
	for _, e := range entries {
		file := e.Name()
		if e.IsDir() || !strings.EqualFold(path.Ext(file), ".xlsx") || strings.HasPrefix(file, "~$") {
			continue
		}
		b, p, err := recognise(files, dir, file)
		if err != nil {
			return nil, err
		}
		if p == "" {
			continue
		}
		if other, twice := books[p]; twice {
			return nil, fail.At(fail.Wrong, fail.Place{File: b.path}, fmt.Sprintf("is the same part of the table as %s (%s)", other.file, p.title()), "leave only one of them in the folder")
		}
		books[p] = b
	}
	if books[mainTable].file == "" {
		return nil, fail.At(fail.Wrong, fail.Place{File: dir}, "lacks the workbook of the main table (no .xlsx with the columns REFUSE, CHOAVLM, OA and NACL_EQ)", "give the folder that holds it")
	}
	return books, nil
}

// recognise opens a workbook; the part is empty if it is none of the table's.
func recognise(files fs.FS, dir, file string) (book, part, error) {
	b := book{file: file, path: path.Join(dir, file)}
	var err error
	if b.Workbook, err = table.OpenWorkbook(files, dir, file, again); err != nil {
		return b, "", err
	}
	rows, err := b.Rows(b.Sheets()[0])
	if err != nil {
		return b, "", err
	}
	defer rows.Close()
	h, err := readHeader(rows)
	if err == io.EOF {
		return b, "", fail.At(fail.Wrong, fail.Place{File: b.path}, fmt.Sprintf("is no workbook of this table: sheet %.60q has no rows marked 成分識別子 and 単位", b.Sheets()[0]), "take it out of the folder, or "+again)
	} else if err != nil {
		return b, "", err
	}
	for _, p := range parts {
		if h.has(telltale[p]...) {
			return b, p, nil
		}
	}
	return b, "", nil
}

// sheets gives the sheets of a part that are read: all of the main table, of an
// annex the one that holds all foods, if it has one.
func (b book) sheets(p part) []string {
	const whole = "表全体"
	for _, s := range b.Sheets() {
		if p != mainTable && s == whole {
			return []string{whole}
		}
	}
	return b.Sheets()
}
