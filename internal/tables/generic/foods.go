package generic

import (
	"context"
	"fmt"
	"io"
	"io/fs"
	"math"
	"path"
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// reader is what the stream of foods needs.
type reader struct {
	raw     fs.FS // as they lie there, for workbooks
	files   fs.FS // decoded
	dir     string
	tableID string
	mapping *mapping
	width   int // cells in the header
	digits  table.LastDigits
	groups  map[string]bool
}

// prepare finds the columns and, if there is a mark for traces, to which decimal
// each is printed.
func (r *reader) prepare(ctx context.Context) (err error) {
	r.groups = groups()
	cells, err := r.open()
	if err != nil {
		return err
	}
	defer cells.Close()
	traces := false
	for _, mark := range r.mapping.marks {
		traces = traces || mark == roleTrace
	}
	if !traces {
		return nil
	}
	for {
		if err := ctx.Err(); err != nil {
			return err
		}
		row, err := cells.Next()
		if err == io.EOF {
			return nil
		} else if err != nil {
			return err
		}
		for i, c := range r.mapping.columns {
			if c.role == roleValue && c.at < len(row) {
				if x, ok := r.number(row[c.at]); ok {
					r.digits.Add(i, x)
				}
			}
		}
	}
}

// open opens the table and reads up to its header, which it matches with the
// mapping file.
func (r *reader) open() (table.Cells, error) {
	cells, err := r.cells()
	if err != nil {
		return nil, err
	}
	for {
		row, err := cells.Next()
		if err == io.EOF || err == nil && cells.Number() > r.mapping.header {
			err = fail.At(fail.Wrong, fail.Place{File: path.Join(r.dir, r.mapping.about[roleFile]), Line: r.mapping.header}, "there is no header in this row", "say in the mapping file which row has the names: header,,ROW,,,")
		}
		if err == nil && cells.Number() == r.mapping.header {
			if err = r.match(cells, row); err == nil {
				return cells, nil
			}
		}
		if err != nil {
			cells.Close()
			return nil, err
		}
	}
}

// cells opens the file or the sheet.
func (r *reader) cells() (table.Cells, error) {
	file := r.mapping.about[roleFile]
	if !strings.EqualFold(path.Ext(file), ".xlsx") {
		return table.OpenCSV(r.files, r.dir, file, r.mapping.comma, again)
	}
	book, err := table.OpenWorkbook(r.raw, r.dir, file, again)
	if err != nil {
		return nil, err
	}
	sheet := r.mapping.about[roleSheet]
	switch {
	case sheet == "":
		sheet = book.Sheets()[0]
	case !slices.Contains(book.Sheets(), sheet):
		return nil, fail.At(fail.Wrong, r.mapping.places[roleSheet], fmt.Sprintf("%s has no sheet %.60q", file, sheet), "its sheets are "+describe(book.Sheets()))
	}
	return book.Rows(sheet)
}

// match finds the columns of the mapping file in the header and collects what
// does not match.
func (r *reader) match(cells table.Cells, row []string) error {
	names := make([]string, len(row))
	at := map[string]int{}
	for i, text := range row {
		names[i] = strings.TrimSpace(text)
		if _, twice := at[names[i]]; twice && names[i] != "" {
			return cells.Wrong(i, fmt.Sprintf("column %.60q stands twice", names[i]))
		}
		at[names[i]] = i
	}
	r.width = len(row)
	faults := &fail.List{}
	for i, c := range r.mapping.columns {
		found, ok := at[c.name]
		if !ok {
			faults.Add(c.place, "its columns are "+describe(names), "column %.60q is not in %s", c.name, r.mapping.about[roleFile])
		}
		r.mapping.columns[i].at = found
		delete(at, c.name)
	}
	if !r.mapping.rest {
		for i, name := range names {
			if _, left := at[name]; left && name != "" {
				faults.Join(fail.Place{}, cells.Wrong(i, fmt.Sprintf("the mapping file has no row for column %.60q (add one, or: ignore,%s,,,,)", name, name)))
			}
		}
	}
	return faults.Err(fail.Wrong)
}

// columns says where each value goes.
func (r *reader) columns() []food.Column {
	var all []food.Column
	for _, c := range r.mapping.columns {
		if c.role == roleValue {
			all = append(all, food.Column{ID: r.id(c), Number: c.number, Name: c.name, Unit: c.unit, Decimals: -1, Constituent: c.known})
		}
	}
	return all
}

func (r *reader) id(c column) constituent.ID {
	if c.known {
		return c.id
	}
	return constituent.ID(r.tableID + ":" + c.number)
}

// stream gives the foods in the order of the file.
func (r *reader) stream(ctx context.Context, yield func(*food.Food, error) bool) {
	cells, err := r.open()
	if err != nil {
		yield(nil, err)
		return
	}
	defer cells.Close()
	seen := map[string]bool{}
	table.Stream(ctx, yield, func() (*food.Food, error) {
		row, err := cells.Next()
		if err == io.EOF && len(seen) == 0 {
			err = fail.At(fail.Wrong, fail.Place{File: path.Join(r.dir, r.mapping.about[roleFile])}, "holds no food", again)
		}
		if err != nil {
			return nil, err
		}
		line := &line{reader: r, cells: cells, row: row}
		return line.food(seen)
	})
}

// number reads a number with the decimal sign of the table.
func (r *reader) number(text string) (float64, bool) {
	text = strings.TrimSpace(text)
	if r.mapping.decimal == ',' {
		if strings.Contains(text, ".") && !r.workbook() {
			return math.NaN(), false
		}
		text = strings.Replace(text, ",", ".", 1)
	}
	return table.ParsePrinted(text)
}

// workbook tells whether the table is one: its number cells have a point
// whatever the decimal sign of its text cells.
func (r *reader) workbook() bool {
	return strings.EqualFold(path.Ext(r.mapping.about[roleFile]), ".xlsx")
}

// groups gives the names of sipsum's own groups.
func groups() map[string]bool {
	all := map[string]bool{}
	for _, g := range food.Groups() {
		all[g.Name] = true
	}
	return all
}
