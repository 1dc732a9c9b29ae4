package afcd

import (
	"fmt"
	"io"
	"io/fs"
	"path"
	"regexp"
	"slices"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
)

// The columns that are not constituents, in small letters: one sheet says "Food
// Name", the other "Food name".
const (
	keyColumn   = "public food key"
	classColumn = "classification"
	nameColumn  = "food name"
	waterColumn = "moisture (water) (g)" // tells the nutrients from the other sheets
)

// sheet is a sheet of a release, by the place where it lies.
type sheet struct {
	book *table.Workbook
	name string
	file string // as messages name it
}

// there tells whether the sheet was found.
func (s sheet) there() bool { return s.book != nil }

// open opens the sheet below its header.
func (s sheet) open() (*table.HeadedSheet, error) {
	rows, err := s.book.Headed(s.name, isHeader)
	if err == nil && rows == nil {
		err = fail.At(fail.Wrong, fail.Place{File: s.file}, fmt.Sprintf("sheet %.60q has no header", s.name), again)
	}
	return rows, err
}

// isHeader recognises the header of every sheet of a release by its first cell.
func isHeader(cells []string) bool { return strings.EqualFold(table.OneLine(cells[0]), keyColumn) }

// release is what was found of a release.
type release struct {
	solids, liquids            sheet // foods per 100 g, and some of them per 100 mL
	details, measures, recipes sheet
	files                      []string // that hold them
	titles                     string   // what stands on sheets without a header
}

// find recognises the sheets of all workbooks by their columns. A workbook that
// cannot be read is an error: nobody knows what it would have said.
func find(files fs.FS, dir string) (*release, error) {
	entries, err := fs.ReadDir(files, ".")
	if err != nil {
		return nil, fail.Because(fail.Wrong, err, "cannot read "+dir, again)
	}
	found := &release{}
	for _, e := range entries {
		if e.IsDir() || !strings.EqualFold(path.Ext(e.Name()), ".xlsx") || strings.HasPrefix(e.Name(), "~$") {
			continue
		}
		book, err := table.OpenWorkbook(files, dir, e.Name(), again)
		if err == nil {
			err = found.take(book, dir, e.Name())
		}
		if err != nil {
			return nil, err
		}
	}
	if !found.solids.there() {
		return nil, fail.At(fail.Wrong, fail.Place{File: dir}, `lacks the nutrients per 100 g: no .xlsx has a sheet with the columns "Public Food Key" and "Moisture (water) (g)"`, "give the folder that holds the workbook")
	}
	return found, nil
}

// take adds the sheets of a workbook that belong to the release.
func (r *release) take(book *table.Workbook, dir, file string) error {
	for _, name := range book.Sheets() {
		s := sheet{book: book, name: name, file: path.Join(dir, file)}
		rows, err := book.Headed(name, isHeader)
		if err != nil {
			return err
		}
		if rows == nil {
			if strings.Contains(squeezed(name), "per100") {
				return fail.At(fail.Wrong, fail.Place{File: s.file}, fmt.Sprintf("sheet %.60q has no header that begins with \"Public Food Key\"", name), again)
			}
			if err := r.readTitle(s); err != nil {
				return err
			}
			continue
		}
		into := r.place(name, rows)
		rows.Close()
		if into == nil {
			continue
		}
		if into.there() {
			return fail.At(fail.Wrong, fail.Place{File: s.file}, fmt.Sprintf("sheet %.60q holds what sheet %.60q of %s holds", name, into.name, into.file), "leave only one of them in the folder, or give the file itself")
		}
		*into = s
		if !slices.Contains(r.files, file) {
			r.files = append(r.files, file)
		}
	}
	return nil
}

// place tells by its columns what a sheet holds; nil for what is not read.
func (r *release) place(name string, rows *table.HeadedSheet) *sheet {
	h := headings(rows)
	switch {
	case h.is(waterColumn) != "" && strings.Contains(squeezed(name), "100ml"):
		return &r.liquids
	case h.is(waterColumn) != "":
		return &r.solids
	case h.with("specific gravity") != "" || h.with("derivation") != "":
		return &r.details
	case h.with("ingredient") != "":
		return &r.recipes
	case h.with("weight") != "" && h.with("measure", "description", "quantity") != "":
		return &r.measures
	}
	return nil
}

// squeezed writes a text in small letters without blanks: one release says "per
// 100 g", another "per 100g".
func squeezed(text string) string { return strings.ToLower(strings.ReplaceAll(text, " ", "")) }

// readTitle keeps what the first rows of another sheet say.
func (r *release) readTitle(s sheet) error {
	rows, err := s.book.Rows(s.name)
	if err != nil {
		return err
	}
	defer rows.Close()
	for range 10 {
		cells, err := rows.Next()
		if err == io.EOF {
			return nil
		} else if err != nil {
			return err
		}
		r.titles += table.OneLine(strings.Join(cells, " ")) + "\n"
	}
	return nil
}

var editions = regexp.MustCompile(`(?i)\brelease [0-9]+(\.[0-9]+)*\b`)

// edition is what the workbook says on its index, else what its file is called.
func (r *release) edition() string {
	for _, text := range []string{r.titles, path.Base(r.solids.file)} {
		if e := editions.FindString(text); e != "" {
			return "R" + e[1:]
		}
	}
	return "not stated"
}

// headers finds the columns of a sheet, whose spelling differs between files and
// releases, by their words.
type headers []string

func headings(rows *table.HeadedSheet) headers { return rows.Header }

// is gives the column of this name, case aside; empty if there is none.
func (h headers) is(name string) string {
	return h.first(func(low string) bool { return low == name })
}

// with gives the first column in whose name one of the words stands.
func (h headers) with(words ...string) string {
	for _, w := range words {
		if found := h.first(func(low string) bool { return strings.Contains(low, w) }); found != "" {
			return found
		}
	}
	return ""
}

func (h headers) first(fits func(low string) bool) string {
	for _, column := range h {
		if fits(strings.ToLower(column)) {
			return column
		}
	}
	return ""
}
