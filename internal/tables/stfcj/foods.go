package stfcj

import (
	"context"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"

	"golang.org/x/text/unicode/norm"

	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// reader is what the stream of foods needs.
type reader struct {
	tableID string
	rules   *table.Groups
	wrong   []embedded.Row // data/maps/stfcj_misprints.csv
	all     []*column      // in the order of the file
	byID    map[string]*column
	main    book
	annexes map[string][]food.Value // by code, in the order of the parts
	codes   map[string]fail.Place   // of the annexes, to tell strays
}

// prepare reads the annexes whole, a few hundred rows each, and keeps the main
// table for the stream.
func (r *reader) prepare(ctx context.Context, books map[part]book) error {
	for _, c := range r.all {
		if err := c.checkUnits(); err != nil {
			return err
		}
	}
	r.main = books[mainTable]
	r.annexes, r.codes = map[string][]food.Value{}, map[string]fail.Place{}
	for _, p := range parts[1:] {
		b, found := books[p]
		if !found {
			continue
		}
		seen := map[string]bool{}
		for _, sheet := range b.sheets(p) {
			err := r.sheet(ctx, b, sheet, p, seen, func(row line) bool {
				code := row.code
				r.codes[code] = fail.Place{File: b.path, Line: row.number, Col: row.header.code + 1}
				r.annexes[code] = append(r.annexes[code], row.values...)
				return true
			})
			if err != nil {
				return err
			}
		}
	}
	return nil
}

// foods is the stream.
func (r *reader) foods(ctx context.Context, yield func(*food.Food, error) bool) {
	seen := map[string]bool{}
	for _, sheet := range r.main.sheets(mainTable) {
		stopped := false
		err := r.sheet(ctx, r.main, sheet, mainTable, seen, func(row line) bool {
			stopped = !yield(r.food(row, groupOf(sheet)), nil)
			return !stopped
		})
		if err != nil {
			yield(nil, err)
			return
		}
		if stopped {
			return
		}
	}
	if err := r.strays(seen); err != nil {
		yield(nil, err)
	}
}

// strays makes sure that all foods of the annexes are in the main table.
func (r *reader) strays(seen map[string]bool) error {
	var faults fail.List
	for code, at := range r.codes {
		if !seen[code] {
			faults.Add(at, again, "food %s is not in the main table", code)
		}
	}
	return faults.Err(fail.Wrong)
}

// line is a row of a sheet, read.
type line struct {
	header *header
	number int
	code   string
	cells  []string
	values []food.Value
	edible float64
}

func (l line) cell(at int) string {
	if at < len(l.cells) {
		return l.cells[at]
	}
	return ""
}

var codeShape = regexp.MustCompile(`^[0-9]{5}$`)

// sheet reads the foods of a sheet; use gives false to stop.
func (r *reader) sheet(ctx context.Context, b book, sheet string, p part, seen map[string]bool, use func(line) bool) error {
	rows, err := b.Rows(sheet)
	if err != nil {
		return err
	}
	defer rows.Close()
	h, err := readHeader(rows)
	if err == io.EOF {
		return fail.At(fail.Wrong, fail.Place{File: b.path}, fmt.Sprintf("sheet %.60q has no header with 成分識別子, 単位, 食品番号 and 備考", sheet), again)
	} else if err != nil {
		return err
	}
	columns, err := r.match(rows, h, p)
	if err != nil {
		return err
	}
	for {
		if err := ctx.Err(); err != nil {
			return err
		}
		cells, err := rows.Next()
		if err == io.EOF {
			return nil
		} else if err != nil {
			return err
		}
		row := line{header: h, number: rows.Number(), cells: cells}
		row.code = strings.TrimSpace(norm.NFKC.String(row.cell(h.code)))
		if !codeShape.MatchString(row.code) || seen[row.code] {
			return rows.Wrong(h.code, fmt.Sprintf("food number %.40q has not five digits, or stands twice", row.code))
		}
		if text(row.cell(h.name)) == "" {
			return rows.Wrong(h.name, "the food has no name")
		}
		seen[row.code] = true
		if err := r.line(rows, &row, columns, p); err != nil {
			return err
		}
		if !use(row) {
			return nil
		}
	}
}

// line reads the values of a row. Columns of another part are left to it.
func (r *reader) line(rows *table.SheetRows, row *line, columns []*column, p part) error {
	row.edible = food.None
	row.values = make([]food.Value, 0, len(columns)+4)
	for i, c := range columns {
		at := row.header.columns[i].at
		if c.Column == "REFUSE" {
			refuse, what := number(strings.TrimSpace(norm.NFKC.String(row.cell(at))))
			if what == "" && refuse > 100 {
				what = fmt.Sprintf("a refuse of %.20s %% is more than all", row.cell(at))
			}
			if what != "" {
				return rows.Wrong(at, what)
			}
			row.edible = 1 - refuse/100
			continue
		}
		v, stated, what := c.value(shown(row.cell(at), rows.Format(at)), p)
		if what == "" && stated {
			if what = table.CannotBe(v); what != "" {
				what = c.Column + " " + what
			}
		}
		if what != "" && r.misprinted(row.code, c.Column, row.cell(at)) {
			v.State, stated, what = estimate.Unknown, true, ""
			v.Ref = c.Column + ", printed " + row.cell(at)
		}
		if what != "" {
			return rows.Wrong(at, what)
		}
		if stated && c.part == p && c.Fate != table.Refused {
			row.values = append(row.values, v)
		}
	}
	row.values = add(row.values, r.noted(row.cell(row.header.remarks), p))
	return nil
}

// add appends values of constituents that have none yet.
func add(values, more []food.Value) []food.Value {
	for _, m := range more {
		if !slices.ContainsFunc(values, func(v food.Value) bool { return v.Constituent == m.Constituent }) {
			values = append(values, m)
		}
	}
	return values
}

// food makes a food of a row of the main table and of the annexes.
func (r *reader) food(row line, group string) *food.Food {
	remark := row.cell(row.header.remarks)
	f := &food.Food{
		ID:             food.ID{Table: r.tableID, Code: row.code},
		Names:          []food.Name{{Language: "ja", Text: text(row.cell(row.header.name))}},
		PublisherGroup: group,
		Values:         add(row.values, r.annexes[row.code]),
		Density:        density(remark),
		Edible:         row.edible,
		Note:           lines(remark),
	}
	f.Group = r.rules.Group(f.PublisherGroup, f.Name())
	return f
}

// groupOf gives the name of a sheet without its number.
func groupOf(sheet string) string { return strings.TrimLeft(plain(sheet), "0123456789") }
