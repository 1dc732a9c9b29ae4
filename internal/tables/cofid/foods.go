package cofid

import (
	"context"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
	"sipsum/internal/unit"
)

// reader holds the sheets of the table.
type reader struct {
	raw     fs.FS // as they lie there, for workbooks
	files   fs.FS // decoded
	dir     string
	tableID string
	rules   *table.Groups
	mapping *table.ColumnMap
	taken   map[constituent.ID]bool
	sheets  []*sheet // the leading one first
	used    []string // files that hold them
	order   []string // codes of the foods
}

// prepare reads all sheets.
func (r *reader) prepare(ctx context.Context, files []string) (err error) {
	r.rules = table.GroupsOf(name)
	r.mapping = table.ReadMap(name)
	r.taken = map[constituent.ID]bool{}
	for _, file := range files {
		if err := r.readFile(ctx, file); err != nil {
			return err
		}
	}
	lead := slices.IndexFunc(r.sheets, func(s *sheet) bool {
		return slices.ContainsFunc(s.columns, func(c column) bool { return c.id == constituent.Water })
	})
	if lead < 0 {
		return fail.At(fail.Wrong, fail.Place{File: r.dir}, `lacks the sheet of proximates (1.3 Proximates.csv), with the columns "Food Name" and "Water (g)"`,
			"give the workbook, or all its sheets as CSV files")
	}
	first := r.sheets[lead]
	r.sheets = slices.Insert(slices.Delete(r.sheets, lead, lead+1), 0, first)
	seen := map[string]bool{}
	for _, s := range r.sheets {
		for _, row := range s.rows {
			if !seen[row.code] {
				seen[row.code] = true
				r.order = append(r.order, row.code)
			}
		}
	}
	return nil
}

// place finds where a column's values go, and the factor to the unit stored.
func (r *reader) place(c *column, sheet string, wrong func(string) error) error {
	c.fate, c.fat = fateOf(r.mapping, c.heading, sheet), ofFat(sheet, c.label)
	if c.fate.Fate == table.Mapped && r.taken[c.fate.Constituent.ID] {
		c.fate = table.Mapping{Column: c.slug, Fate: table.Kept, Factor: 1}
	}
	if c.fate.Fate == table.Mapped {
		factor, ok := unit.Convert(c.unit, c.fate.Constituent.Unit)
		if !ok {
			return wrong(fmt.Sprintf("%s is printed in %s, which cannot become %s", c.label, c.unit, c.fate.Constituent.Unit))
		}
		c.scale = factor * c.fate.Factor
	}
	c.id = c.fate.ID(r.tableID)
	if r.taken[c.id] {
		c.fate.Column = slugOf(sheet) + "." + c.slug
		c.id = c.fate.ID(r.tableID)
	}
	if r.taken[c.id] {
		return wrong(fmt.Sprintf("%.60q stands on two sheets of one name", c.label))
	}
	r.taken[c.id] = true
	return nil
}

// columns says where each column goes.
func (r *reader) columns() []food.Column {
	var all []food.Column
	for _, s := range r.sheets {
		for _, c := range s.columns {
			if c.kind == amount {
				all = append(all, food.Column{
					ID: c.id, Number: c.fate.Column, Name: c.label, Unit: c.unit, Decimals: -1, Constituent: c.fate.Fate == table.Mapped,
				})
			}
		}
	}
	return all
}

// stream gives the foods.
func (r *reader) stream(ctx context.Context, yield func(*food.Food, error) bool) {
	for _, code := range r.order {
		if err := ctx.Err(); err != nil {
			yield(nil, err)
			return
		}
		if !yield(r.food(code), nil) {
			return
		}
	}
}

// food gathers a food from all sheets.
func (r *reader) food(code string) *food.Food {
	f := table.NewFood(r.tableID, code)
	var notes []string
	for _, s := range r.sheets {
		if at, ok := s.byCode[code]; ok {
			notes = s.describe(f, s.rows[at], notes)
		}
	}
	if len(f.Names) == 0 {
		f.Names = []food.Name{{Language: "en", Text: code}}
	}
	f.Group = r.rules.Group(f.PublisherGroup, f.Name())
	gravity := 1.0
	if strings.HasPrefix(f.PublisherGroup, "Q") {
		gravity = f.Density.GramsPerMl
		if !food.Stated(gravity) {
			notes = append(notes, "Printed per 100 ml and no specific gravity is stated: its values are left out.")
		}
	}
	if food.Stated(gravity) {
		for _, s := range r.sheets {
			if at, ok := s.byCode[code]; ok {
				f.Values = s.values(f.Values, s.rows[at], gravity)
			}
		}
	}
	f.Note = strings.Join(notes, "\n")
	return f
}

// describe takes from a row what is not a constituent; what no earlier sheet
// said goes into the notes.
func (s *sheet) describe(f *food.Food, r row, notes []string) []string {
	for i, c := range s.columns {
		in := r.cells[i]
		if !in.filled() {
			continue
		}
		switch c.kind {
		case foodOf:
			if len(f.Names) == 0 {
				f.Names = []food.Name{{Language: "en", Text: in.text}}
			}
		case more:
			notes = addNote(notes, in.text)
		case group:
			if f.PublisherGroup == "" {
				f.PublisherGroup = in.text
			}
		case edible:
			f.Edible = in.x
		case gravity:
			if food.Stated(in.x) {
				f.Density = food.Density{GramsPerMl: in.x, SD: food.None, Source: work}
			}
		case text:
			notes = addNote(notes, c.label+": "+in.text)
		}
	}
	return notes
}

func addNote(notes []string, note string) []string {
	if slices.Contains(notes, note) {
		return notes
	}
	return append(notes, note)
}

// values adds the values of a row.
func (s *sheet) values(all []food.Value, r row, gravity float64) []food.Value {
	for i, c := range s.columns {
		if c.kind != amount {
			continue
		}
		if v, ok := valueOf(c, r.cells[i], gravity); ok {
			all = append(all, v)
		}
	}
	return all
}
