package core

import (
	"context"
	"fmt"
	"io/fs"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

const again = "correct the file, or rebuild the table as data/core/README.md says"

// reader holds the table while it is read.
type reader struct {
	files   fs.FS
	dir     string
	tableID string
	foods   []*food.Food
	byCode  map[string]*food.Food
	works   []source.Work
	known   map[string]bool // ids of works
	used    map[constituent.ID]bool
}

func (r *reader) read() error {
	r.known, r.used = map[string]bool{}, map[constituent.ID]bool{}
	for _, part := range []struct {
		file    string
		columns []string
		row     func(*table.Rows) error
	}{
		{sourceFile, []string{"id", "citation", "url", "licence", "grade", "provenance", "note"}, r.source},
		{foodFile, []string{"code", "name", "group", "sr", "use", "density", "density_sd", "density_source", "edible", "edible_source", "note"}, r.food},
		{nameFile, []string{"code", "language", "name"}, r.name},
		{portionFile, []string{"code", "portion", "grams", "sd", "source"}, r.portion},
		{markFile, []string{"code", "kind", "value", "share", "source"}, r.mark},
		{valueFile, []string{"code", "constituent", "amount", "sd", "n", "low", "high", "state", "source", "ref"}, r.value},
	} {
		if err := r.each(part.file, part.columns, part.row); err != nil {
			return err
		}
	}
	return nil
}

// each calls use for every row of a file.
func (r *reader) each(file string, columns []string, use func(*table.Rows) error) error {
	rows, err := table.OpenRows(r.files, r.dir, file, func(cell string) string { return cell }, again)
	if err != nil {
		return err
	}
	defer rows.Close()
	if err := rows.Need(columns...); err != nil {
		return err
	}
	return rows.Each(func() error { return use(rows) })
}

// owner gives the food of a row of a file beside foods.csv.
func (r *reader) owner(rows *table.Rows) (*food.Food, error) {
	f, ok := r.byCode[rows.Text("code")]
	if !ok {
		return nil, rows.Wrong("code", fmt.Sprintf("food %.40q is not in %s", rows.Text("code"), foodFile))
	}
	return f, nil
}

func (r *reader) source(rows *table.Rows) error {
	id := rows.Text("id")
	if id == "" || r.known[id] {
		return rows.Wrong("id", fmt.Sprintf("id %.40q is empty or stands twice", id))
	}
	r.known[id] = true
	r.works = append(r.works, source.Work{
		ID: id, Citation: rows.Text("citation"), URL: rows.Text("url"), Licence: rows.Text("licence"),
		Grade: rows.Text("grade"), Note: rows.Text("note"),
	})
	return nil
}

func (r *reader) food(rows *table.Rows) error {
	code := rows.Text("code")
	if _, twice := r.byCode[code]; twice || code == "" {
		return rows.Wrong("code", fmt.Sprintf("code %.40q is empty or stands twice", code))
	}
	f := &food.Food{
		ID:    food.ID{Table: r.tableID, Code: code},
		Names: []food.Name{{Language: "en", Text: rows.Text("name")}},
		Group: rows.Text("group"), PublisherGroup: rows.Text("group"),
		Density:  food.Density{Source: rows.Text("density_source")},
		Chemical: rows.Text("use") == "chemical",
		Note:     rows.Text("note"),
	}
	faults := fail.List{}
	f.Density.GramsPerMl = number(rows, &faults, "density")
	f.Density.SD = number(rows, &faults, "density_sd")
	f.Edible = number(rows, &faults, "edible")
	r.foods = append(r.foods, f)
	r.byCode[code] = f
	return faults.Err(fail.Wrong)
}

func (r *reader) name(rows *table.Rows) error {
	f, err := r.owner(rows)
	if err == nil {
		f.Names = append(f.Names, food.Name{Language: rows.Text("language"), Text: rows.Text("name")})
	}
	return err
}

func (r *reader) portion(rows *table.Rows) error {
	f, err := r.owner(rows)
	if err != nil {
		return err
	}
	faults := fail.List{}
	p := food.Portion{Name: rows.Text("portion"), Grams: number(rows, &faults, "grams"), SD: number(rows, &faults, "sd")}
	if faults.Len() == 0 && !food.Stated(p.Grams) {
		return rows.Wrong("grams", "the mass is empty")
	}
	f.Portions = append(f.Portions, p)
	return faults.Err(fail.Wrong)
}

func (r *reader) mark(rows *table.Rows) error {
	f, err := r.owner(rows)
	if err != nil {
		return err
	}
	faults := fail.List{}
	f.Marks = append(f.Marks, food.Mark{Kind: rows.Text("kind"), Value: rows.Text("value"), Share: number(rows, &faults, "share"), Source: rows.Text("source")})
	return faults.Err(fail.Wrong)
}

// number reads a number and notes the fault.
func number(rows *table.Rows, faults *fail.List, column string) float64 {
	x, err := rows.Number(column)
	faults.Join(fail.Place{}, err)
	return x
}

// columns gives the constituents that the table has, in vocabulary order.
func (r *reader) columns() []food.Column {
	var all []food.Column
	for _, c := range constituent.All() {
		if r.used[c.ID] {
			all = append(all, food.Column{ID: c.ID, Number: string(c.ID), Name: c.Name, Unit: c.Unit, Decimals: -1, Constituent: true})
		}
	}
	return all
}

// stream gives copies, so that a food that was given can be changed.
func (r *reader) stream(ctx context.Context, yield func(*food.Food, error) bool) {
	for _, f := range r.foods {
		if err := ctx.Err(); err != nil {
			yield(nil, err)
			return
		}
		fresh := *f
		fresh.Names, fresh.Values = slices.Clone(f.Names), slices.Clone(f.Values)
		fresh.Portions, fresh.Marks = slices.Clone(f.Portions), slices.Clone(f.Marks)
		if !yield(&fresh, nil) {
			return
		}
	}
}

// state reads the state of a value.
func state(rows *table.Rows) (estimate.State, error) {
	s, err := estimate.ParseState(rows.Text("state"))
	if err != nil {
		return s, rows.Wrong("state", err.Error())
	}
	return s, nil
}
