package fndds

import (
	"context"
	"fmt"
	"io"
	"path"
	"regexp"
	"strings"

	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// nutrient is a column that becomes a value.
type nutrient struct {
	table.Mapping
	header string
}

// reader is what the stream of foods needs.
type reader struct {
	file      file
	tableID   string
	rules     *table.Groups
	title     string // of the workbook
	nutrients []nutrient
}

// prepare reads the map, the rules and the header, and matches them.
func (r *reader) prepare() (err error) {
	r.rules = table.GroupsOf(name)
	mapping := table.ReadMap(name)
	numbers := embedded.Rows("maps/fndds_headers.csv")
	rows, err := r.file.open()
	if err != nil {
		return err
	}
	defer rows.Close()
	if s, ok := rows.(*sheet); ok {
		r.title = s.Title
	}
	there := map[string]bool{}
	for _, column := range rows.columns() {
		there[column] = true
		if column == codeColumn || column == nameColumn || column == categoryNumber || column == categoryColumn {
			continue
		}
		known := false
		for _, row := range numbers {
			if row.Text("header") != column {
				continue
			}
			m, ok := mapping.Find(row.Text("column"))
			if !ok {
				row.Fail("column %s is not in fndds.csv", row.Text("column"))
			}
			r.nutrients, known = append(r.nutrients, nutrient{Mapping: m, header: column}), true
		}
		if !known {
			return rows.Wrong(column, fmt.Sprintf("column %.60q is not known to sipsum", column))
		}
	}
	wanted := []string{codeColumn, nameColumn, categoryNumber, categoryColumn}
	for _, row := range numbers {
		wanted = append(wanted, row.Text("header"))
	}
	for _, column := range wanted {
		if !there[column] {
			return rows.Wrong(codeColumn, fmt.Sprintf("column %q is missing in this header", column))
		}
	}
	return nil
}

var years = regexp.MustCompile(`\b[0-9]{4}-[0-9]{4}\b`)

// edition takes the edition from the title, or from the counts of a CSV copy.
func (r *reader) edition() (string, error) {
	if r.file.book != nil {
		if found := years.FindString(r.title); found != "" {
			return found, nil
		}
		return "not stated", nil
	}
	foods, err := r.file.count()
	if err != nil {
		return "", err
	}
	return table.EditionOf(name, foods, len(r.nutrients)).Name, nil
}

// columns says where each nutrient goes.
func (r *reader) columns() []food.Column {
	all := make([]food.Column, len(r.nutrients))
	for i, n := range r.nutrients {
		open := strings.LastIndex(n.header, " (")
		all[i] = food.Column{
			ID: n.ID(r.tableID), Number: n.Column, Name: n.header[:open], Unit: strings.Trim(n.header[open:], " ()"),
			Decimals: -1, Constituent: n.Fate == table.Mapped,
		}
	}
	return all
}

// foods is the stream.
func (r *reader) foods(ctx context.Context, yield func(*food.Food, error) bool) {
	rows, err := r.file.open()
	if err != nil {
		yield(nil, err)
		return
	}
	defer rows.Close()
	seen := map[string]bool{}
	table.Stream(ctx, yield, func() (*food.Food, error) {
		err := rows.Next()
		if err == io.EOF && len(seen) == 0 {
			err = fail.At(fail.Wrong, fail.Place{File: path.Join(r.file.dir, r.file.name)}, "has no food", again)
		}
		if err != nil {
			return nil, err
		}
		return r.food(rows, seen)
	})
}

var codeShape = regexp.MustCompile(`^[0-9]{8}$`)

// food reads the current row.
func (r *reader) food(rows rows, seen map[string]bool) (*food.Food, error) {
	code := rows.Text(codeColumn)
	if !codeShape.MatchString(code) || seen[code] {
		return nil, rows.Wrong(codeColumn, fmt.Sprintf("food code %.40q has not eight digits, or stands twice", code))
	}
	seen[code] = true
	text := table.OneLine(rows.Text(nameColumn))
	if text == "" {
		return nil, rows.Wrong(nameColumn, "the food has no name")
	}
	f := table.NewFood(r.tableID, code)
	f.Names = []food.Name{{Language: "en", Text: text}}
	f.PublisherGroup = table.OneLine(rows.Text(categoryColumn))
	f.Note = "WWEIA category " + table.OneLine(rows.Text(categoryNumber))
	f.Values = make([]food.Value, len(r.nutrients))
	f.Group = r.rules.Group(f.PublisherGroup, f.Name())
	for i, n := range r.nutrients {
		amount, err := rows.Number(n.header)
		if err == nil && !food.Stated(amount) {
			err = rows.Wrong(n.header, "the value is empty")
		}
		if err != nil {
			return nil, err
		}
		f.Values[i] = table.NewValue(n.ID(r.tableID), work, n.Column)
		f.Values[i].Amount, f.Values[i].State = amount*n.Factor, estimate.Calculated
		if what := table.CannotBe(f.Values[i]); what != "" {
			return nil, rows.Wrong(n.header, fmt.Sprintf("%.40q %s", rows.Text(n.header), what))
		}
	}
	return f, nil
}
