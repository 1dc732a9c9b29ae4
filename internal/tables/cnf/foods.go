package cnf

import (
	"context"
	"fmt"
	"io/fs"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

// reader is what the stream of foods needs from the small files.
type reader struct {
	files    fs.FS
	dir      string
	tableID  string
	rules    *table.Groups
	columns  []food.Column
	fates    []column       // beside columns
	byNumber map[string]int // NutrientID: index of the column
	works    []source.Work
	origins  []origin
	bySource map[string]int // NutrientSourceID: index of the origin
	groups   map[string]string
	measures map[string]string
	foods    int
	codes    map[string]bool // FoodIDs
}

// prepare reads all but the amounts, the portions and what is said of foods.
func (r *reader) prepare() (err error) {
	r.rules = table.GroupsOf(name)
	if err = r.readColumns(); err != nil {
		return err
	}
	if err = r.readSources(); err != nil {
		return err
	}
	if r.groups, err = r.readPairs(groupFile, "FoodGroupID", "FoodGroupName"); err != nil {
		return err
	}
	if r.measures, err = r.readPairs(measureFile, "MeasureID", "MeasureDescription"); err != nil {
		return err
	}
	r.codes = map[string]bool{}
	err = r.each(foodFile, "FoodID", []string{"FoodGroupID", "FoodDescription"}, func(rows *table.Rows) error {
		code := rows.Text("FoodID")
		if strings.Trim(code, "0123456789") != "" {
			return rows.Wrong("FoodID", fmt.Sprintf("%.40q is not a number", code))
		}
		r.foods++
		r.codes[code] = true
		return nil
	})
	if err == nil && r.foods == 0 {
		err = fail.At(fail.Wrong, fail.Place{File: r.dir + "/" + foodFile}, "holds no food", again)
	}
	return err
}

// stream gives the foods in the order of FOOD NAME.
func (r *reader) stream(ctx context.Context, yield func(*food.Food, error) bool) {
	if err := r.eachFood(ctx, yield); err != nil {
		yield(nil, err)
	}
}

// eachFood gives the error of the files that are read before the first food.
func (r *reader) eachFood(ctx context.Context, yield func(*food.Food, error) bool) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	amounts, err := r.readAmounts()
	if err != nil {
		return err
	}
	portions, err := r.readPortions()
	if err != nil {
		return err
	}
	rows, err := r.open(foodFile, "FoodID", "FoodGroupID", "FoodDescription")
	if err != nil {
		return err
	}
	defer rows.Close()
	table.Stream(ctx, yield, func() (*food.Food, error) {
		if err := rows.Next(); err != nil {
			return nil, err
		}
		f, err := r.describe(rows)
		if err != nil {
			return nil, err
		}
		f.Values = make([]food.Value, 0, len(amounts[f.ID.Code]))
		for _, a := range amounts[f.ID.Code] {
			f.Values = append(f.Values, r.value(a))
		}
		f.Portions = portions[f.ID.Code]
		return f, nil
	})
	return nil
}

// describe makes a food of the current row of FOOD NAME, without values.
func (r *reader) describe(rows *table.Rows) (*food.Food, error) {
	english := strings.TrimSpace(rows.Text("FoodDescription"))
	if english == "" {
		return nil, rows.Wrong("FoodDescription", "the name is empty")
	}
	f := table.NewFood(r.tableID, rows.Text("FoodID"))
	f.Names = []food.Name{{Language: "en", Text: english}}
	addName(f, rows, "FoodDescriptionF", "fr")
	addName(f, rows, "ScientificName", "la")
	group := strings.TrimSpace(rows.Text("FoodGroupID"))
	f.Group = r.rules.Group(group, english)
	switch meaning, ok := r.groups[group]; {
	case ok:
		f.PublisherGroup = meaning
	case len(r.groups) > 0:
		return nil, rows.Wrong("FoodGroupID", fmt.Sprintf("group %.40q is not in %s", group, groupFile))
	default:
		f.PublisherGroup = group
	}
	return f, nil
}

// addName adds the name in a column that not every copy has.
func addName(f *food.Food, rows *table.Rows, column, language string) {
	if rows.Need(column) != nil {
		return
	}
	if text := strings.TrimSpace(rows.Text(column)); text != "" {
		f.Names = append(f.Names, food.Name{Language: language, Text: text})
	}
}
