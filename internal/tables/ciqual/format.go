package ciqual

import (
	"context"
	"io/fs"
	"path"
	"strings"

	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

const (
	name      = "ciqual"
	licence   = "Licence Ouverte / Open Licence (Etalab)"
	publisher = "Anses, French agency for food, environmental and occupational health & safety"
	title     = "Ciqual French food composition table"
	work      = "ciqual"
)

// Format is the French table Ciqual.
var Format = table.Format{
	Name:    name,
	Title:   title + ", workbook or XML files",
	Licence: licence,
	Needs:   needs,
	Open:    table.Opening(open),
	Sniff:   sniff,
}

// open reads all but the values; dir names the place of the files in messages.
func open(ctx context.Context, fsys fs.FS, dir, id string) (*table.Release, error) {
	if id == "" {
		id = name
	}
	files, err := find(fsys, dir)
	if err != nil {
		return nil, err
	}
	r := &reader{files: files, tableID: id}
	r.prepare()
	count := r.countBook
	foods := r.foodsOfBook
	if files.book == "" {
		count, foods = r.countSet, r.foodsOfSet
	}
	n, cols, err := count(ctx)
	if err != nil {
		return nil, err
	}
	released, err := r.release(n, len(cols))
	if err != nil {
		return nil, err
	}
	described := make([]food.Column, len(cols))
	for i, c := range cols {
		described[i] = c.describe(id)
	}
	return &table.Release{
		Table: released, Columns: described, Works: works(released.Citation),
		Foods: func(yield func(*food.Food, error) bool) {
			if err := foods(ctx, yield); err != nil {
				yield(nil, err)
			}
		},
	}, nil
}

// release says what the release is; its edition is recognised by its counts.
func (r *reader) release(foods, columns int) (source.Table, error) {
	edition := table.EditionOf(name, foods, columns)
	hash, err := table.Hash(r.files.raw, r.files.read())
	if err != nil {
		return source.Table{}, err
	}
	year := ""
	if edition.Year != "" {
		year = edition.Year + ". "
	}
	return source.Table{
		ID: r.tableID, Format: name, Title: title, Edition: edition.Name, Publisher: publisher,
		Licence: licence, Citation: "Anses. " + year + title + ".", Hash: hash,
	}, nil
}

// works are the table, and the table by confidence code.
func works(citation string) []source.Work {
	all := []source.Work{{ID: work, Citation: citation, Licence: licence, Grade: "B", Note: "compiled by the agency; the confidence in this value is not stated"}}
	for _, code := range []string{"A", "B", "C", "D"} {
		all = append(all, source.Work{ID: work + "-" + code, Citation: citation + " Confidence code " + code + ".", Licence: licence, Grade: code, Note: "the agency's confidence code, A best"})
	}
	return all
}

// sniff looks at the names of files.
func sniff(place string) bool {
	files, err := table.Files(place)
	if err != nil {
		return false
	}
	entries, err := fs.ReadDir(files, ".")
	if err != nil {
		return false
	}
	for _, entry := range entries {
		lower := strings.ToLower(entry.Name())
		switch path.Ext(lower) {
		case ".csv", ".xlsx", ".xls":
			if strings.Contains(lower, name) {
				return true
			}
		case ".xml":
			if strings.HasPrefix(lower, "alim") {
				return true
			}
		}
	}
	return false
}
