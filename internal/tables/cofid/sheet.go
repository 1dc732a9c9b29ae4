package cofid

import (
	"context"
	"fmt"
	"io"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// sheet is one sheet of the table, held whole.
type sheet struct {
	name    string
	columns []column // those of the header that are not empty
	rows    []row
	byCode  map[string]int
}

// column is a column of a sheet.
type column struct {
	heading
	at    int // its place in the row
	fate  table.Mapping
	id    constituent.ID
	scale float64 // from the printed unit to the one stored
	fat   bool    // per 100 g of fatty acids
	limit float64 // half the last digit printed, in the unit stored
}

// row is a food on a sheet; cells stand beside the sheet's columns.
type row struct {
	code  string
	cells []cell
}

// cell is a cell of a row: a number, a mark or a text.
type cell struct {
	text string // "" for a number
	x    float64
}

// filled is a cell that says something.
func (c cell) filled() bool { return c.text != "" || food.Stated(c.x) }

// Specific gravities outside of these are slips.
const lightest, heaviest = 0.1, 10

// search is how many rows may stand above a header.
const search = 12

// readSheet reads a sheet; nil if it is none of the table.
func (r *reader) readSheet(ctx context.Context, name string, cells table.Cells) (*sheet, error) {
	s := &sheet{name: name, byCode: map[string]int{}}
	for n := 0; s.columns == nil; n++ {
		row, err := cells.Next()
		if err == io.EOF || n == search {
			return nil, nil
		} else if err != nil {
			return nil, err
		}
		if err := r.readHeader(s, cells, row); err != nil {
			return nil, err
		}
	}
	digits := &table.LastDigits{}
	for {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		row, err := cells.Next()
		if err == io.EOF {
			break
		} else if err != nil {
			return nil, err
		}
		if err := s.add(cells, row, digits); err != nil {
			return nil, err
		}
	}
	for i := range s.columns {
		s.columns[i].limit = digits.Half(i) * s.columns[i].scale
	}
	return s, nil
}

// readHeader fills the columns of a sheet if the row is its header.
func (r *reader) readHeader(s *sheet, cells table.Cells, row []string) error {
	nameAt := -1
	for i, text := range row {
		if described[headingOf(text).slug] == foodOf {
			nameAt = i
		}
	}
	if nameAt < 1 {
		return nil
	}
	seen := map[string]bool{}
	for i, text := range row {
		h := headingOf(text)
		switch {
		case i == nameAt-1 && h.slug == "":
			h = heading{label: "Food Code", slug: "food-code", kind: code}
		case h.slug == "":
			continue
		}
		if seen[h.slug+h.unit] {
			return cells.Wrong(i, fmt.Sprintf("column %.60q stands twice", text))
		}
		seen[h.slug+h.unit] = true
		c := column{heading: h, at: i, scale: 1}
		if h.kind == amount {
			if err := r.place(&c, s.name, func(what string) error { return cells.Wrong(i, what) }); err != nil {
				return err
			}
		}
		s.columns = append(s.columns, c)
	}
	for _, c := range s.columns {
		if c.kind == code {
			return nil
		}
	}
	return cells.Wrong(nameAt, `the sheet has "Food Name" but no "Food Code"`)
}

// add adds a row of the sheet.
func (s *sheet) add(cells table.Cells, from []string, digits *table.LastDigits) error {
	new := row{cells: make([]cell, len(s.columns))}
	for i, c := range s.columns {
		text := ""
		if c.at < len(from) {
			text = strings.TrimSpace(from[c.at])
		}
		new.cells[i] = cell{text: text, x: food.None}
		switch c.kind {
		case code:
			new.code = text
		case amount, edible, gravity:
			if x, ok := table.ParsePrinted(text); ok {
				new.cells[i] = cell{x: x}
				digits.Add(i, x)
			}
		}
	}
	if new.code == "" {
		return s.withoutCode(cells, new)
	}
	if err := s.width(cells, from); err != nil {
		return err
	}
	if _, twice := s.byCode[new.code]; twice {
		return cells.Wrong(s.codeAt(), fmt.Sprintf("food %.40q stands twice on this sheet", new.code))
	}
	if err := s.check(cells, new); err != nil {
		return err
	}
	s.byCode[new.code] = len(s.rows)
	s.rows = append(s.rows, new)
	return nil
}

// width refuses a row that does not fit the header. Rows of a workbook may be
// shorter: empty cells at their end are not stored.
func (s *sheet) width(cells table.Cells, from []string) error {
	last := s.columns[len(s.columns)-1].at
	for i := last + 1; i < len(from); i++ {
		if strings.TrimSpace(from[i]) != "" {
			return cells.Wrong(i, "the row has a cell beyond the last column of the header")
		}
	}
	if _, csv := cells.(*table.CSVRows); csv && len(from) <= last {
		return cells.Wrong(len(from)-1, "the row has fewer cells than the header")
	}
	return nil
}

// withoutCode passes over the short names below a header; further down a row
// without a code is a fault if it has a number.
func (s *sheet) withoutCode(cells table.Cells, r row) error {
	for i, c := range s.columns {
		if c.kind == amount && food.Stated(r.cells[i].x) {
			return cells.Wrong(s.codeAt(), "the row has figures but no food code")
		}
	}
	return nil
}

// check refuses a cell of a constituent that is neither number nor mark, or what no food can
// have; what is printed per 100 ml is of drinks, and none of them is much denser than water.
func (s *sheet) check(cells table.Cells, r row) error {
	for i, c := range s.columns {
		text := r.cells[i].text
		switch c.kind {
		case amount:
			if _, known := meaning(text); text != "" && !known {
				return cells.Wrong(c.at, fmt.Sprintf("%.40q is neither a number nor Tr, N or a limit", text))
			}
			if v, ok := valueOf(c, r.cells[i], 1); ok {
				if what := table.CannotBe(v); what != "" {
					return cells.Wrong(c.at, c.label+" "+what)
				}
			}
		case edible, gravity:
			if text != "" && text != "N" {
				return cells.Wrong(c.at, fmt.Sprintf("%.40q is not a number", text))
			}
			if x := r.cells[i].x; c.kind == edible && x > 1 || c.kind == gravity && (x < lightest || x > heaviest) {
				return cells.Wrong(c.at, fmt.Sprintf("%g cannot be the %s of a food", x, strings.ToLower(c.label)))
			}
		}
	}
	return nil
}

func (s *sheet) codeAt() int {
	for _, c := range s.columns {
		if c.kind == code {
			return c.at
		}
	}
	return 0
}
