package swiss

import (
	"context"
	"fmt"
	"io/fs"
	"math"
	"strings"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// reader is what the stream of foods needs.
type reader struct {
	files   fs.FS
	dir     string
	file    string
	tableID string
	rules   *table.Groups
	types   map[string]estimate.State
	columns []column
}

func (r *reader) open() (*table.Rows, error) {
	return table.OpenRows(r.files, r.dir, r.file, renamer(), again)
}

// foods is the stream.
func (r *reader) foods(ctx context.Context, yield func(*food.Food, error) bool) {
	rows, err := r.open()
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
	code := rows.Text("ID")
	if code == "" || strings.Trim(code, "0123456789") != "" {
		return nil, rows.Wrong("ID", fmt.Sprintf("code %.40q is not a whole number", code))
	}
	if seen[code] {
		return nil, rows.Wrong("ID", fmt.Sprintf("food %s stands twice", code))
	}
	seen[code] = true
	f := table.NewFood(r.tableID, code)
	f.Names = names(rows)
	f.PublisherGroup = rows.Text("category E")
	f.Values = make([]food.Value, 0, len(r.columns))
	if len(f.Names) == 0 {
		return nil, rows.Wrong("name E", "the food has no name")
	}
	f.Group = r.rules.Group(f.PublisherGroup, f.Name())
	var err error
	if f.Density, err = density(rows); err != nil {
		return nil, err
	}
	for _, c := range r.columns {
		v, there, err := r.value(rows, c, f.Density.GramsPerMl)
		if err != nil {
			return nil, err
		}
		if !there {
			continue
		}
		if v.State == estimate.Unknown {
			f.Note = "figures per 100 ml without a specific gravity: not known per 100 g"
		}
		f.Values = append(f.Values, v)
	}
	return f, nil
}

// languages are the publisher's letters in the order in which names are given.
var languages = []struct{ letter, code string }{{"E", "en"}, {"D", "de"}, {"F", "fr"}, {"I", "it"}}

func names(rows *table.Rows) []food.Name {
	var all []food.Name
	for _, language := range languages {
		for _, column := range []string{"name ", "synonyms "} {
			column += language.letter
			for text := range strings.SplitSeq(rows.Text(column), ";") {
				text = strings.Join(strings.Fields(text), " ")
				if text != "" {
					all = append(all, food.Name{Language: language.code, Text: text})
				}
			}
		}
	}
	return all
}

// The specific gravities that a food can have: from a foam to far above syrup.
const (
	leastGravity = 0.05
	mostGravity  = 5
)

// density reads the specific gravity. Its spread is that of its rounding: to the
// decimals printed, to one at least; rectangular (JCGM 100:2008, 4.3.7).
func density(rows *table.Rows) (food.Density, error) {
	const column = "specific gravity"
	d := food.Density{GramsPerMl: food.None, SD: food.None}
	gravity, err := rows.Number(column)
	if err != nil || !food.Stated(gravity) {
		return d, err
	}
	text := rows.Text(column)
	if gravity < leastGravity || gravity > mostGravity {
		return d, rows.Wrong(column, fmt.Sprintf("%.40q is not the specific gravity of a food", text))
	}
	_, decimals, _ := strings.Cut(text, ".")
	d.GramsPerMl = gravity
	d.SD = math.Pow10(-max(len(decimals), 1)) / 2 / math.Sqrt(3)
	d.Source = sourced + ": specific gravity " + text
	return d, nil
}
