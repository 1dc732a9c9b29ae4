package ifct

import (
	"context"
	"fmt"
	"io/fs"
	"strings"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// reader is what the stream of foods needs.
type reader struct {
	files      fs.FS
	dir        string
	tableID    string
	rules      *table.Groups
	languages  map[string]string
	components []component
}

// foods is the stream.
func (r *reader) foods(ctx context.Context, yield func(*food.Food, error) bool) {
	rows, err := table.OpenRows(r.files, r.dir, file, codeOf, again)
	if err != nil {
		yield(nil, err)
		return
	}
	defer rows.Close()
	seen := map[string]bool{}
	table.Stream(ctx, yield, func() (*food.Food, error) {
		if err := rows.Next(); err != nil {
			return nil, err
		}
		return r.food(rows, seen)
	})
}

// food reads the current row.
func (r *reader) food(rows *table.Rows, seen map[string]bool) (*food.Food, error) {
	code := rows.Text("code")
	if code == "" || seen[code] {
		return nil, rows.Wrong("code", fmt.Sprintf("code %.40q is empty or stands twice", code))
	}
	seen[code] = true
	f := table.NewFood(r.tableID, code)
	f.Names = []food.Name{{Language: "en", Text: rows.Text("name")}}
	f.PublisherGroup = rows.Text("grup")
	f.Values = make([]food.Value, 0, len(r.components))
	f.Group = r.rules.Group(f.PublisherGroup, f.Name())
	if latin := rows.Text("scie"); latin != "" {
		f.Names = append(f.Names, food.Name{Language: "la", Text: latin})
	}
	r.localNames(f, rows.Text("lang"))
	regions, err := rows.Number("regn")
	if err != nil {
		return nil, err
	}
	for _, c := range r.components {
		v, err := r.value(rows, c, regions)
		if err != nil {
			return nil, err
		}
		f.Values = append(f.Values, v)
	}
	return f, nil
}

// value reads a component of the current row.
func (r *reader) value(rows *table.Rows, c component, regions float64) (food.Value, error) {
	v := table.NewValue(c.ID(r.tableID), work, c.Column)
	amount, err := rows.Number(c.Column)
	if err != nil {
		return v, err
	}
	if !food.Stated(amount) {
		return v, rows.Wrong(c.Column, "the value is empty")
	}
	if amount == 0 {
		v.State = estimate.Unknown
		return v, nil
	}
	v.Amount, v.State = amount*c.Factor, estimate.Measured
	if what := table.CannotBe(v); what != "" {
		return v, rows.Wrong(c.Column, fmt.Sprintf("%.40q %s", rows.Text(c.Column), what))
	}
	if food.Stated(regions) {
		v.N = int(regions)
	}
	if c.deviation == "" {
		return v, nil
	}
	sd, err := rows.Number(c.deviation)
	if err == nil && sd > 0 {
		v.SD = sd * c.Factor
	}
	return v, err
}

// localNames reads "H. Nimbhu; Tel. Nimapandu": the abbreviation of a language,
// then the name. What has no clear language goes into the note.
func (r *reader) localNames(f *food.Food, text string) {
	var rest []string
	for part := range strings.SplitSeq(text, ";") {
		part = strings.TrimSpace(part)
		abbreviation, local, found := strings.Cut(part, ". ")
		language, known := r.languages[abbreviation]
		switch local = strings.TrimSpace(strings.TrimSuffix(local, ".")); {
		case part == "":
		case found && known && local != "":
			f.Names = append(f.Names, food.Name{Language: language, Text: local})
		default:
			rest = append(rest, part)
		}
	}
	f.Note = strings.Join(rest, "; ")
}
