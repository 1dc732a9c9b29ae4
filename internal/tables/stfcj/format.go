package stfcj

import (
	"context"
	"io/fs"

	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

const (
	name      = "stfcj"
	title     = "Standard Tables of Food Composition in Japan"
	edition   = "2020 (eighth revised edition)"
	publisher = "Ministry of Education, Culture, Sports, Science and Technology, Japan"
	licence   = "free use with the source named (terms of the ministry, compatible with CC BY 4.0)"
	citation  = "文部科学省 科学技術・学術審議会 資源調査分科会 (2020) 日本食品標準成分表2020年版（八訂） [Standard Tables of Food Composition in Japan 2020, eighth revised edition]"
	again     = "take the workbook from the ministry again"
	estimated = "stfcj2020-estimated"
)

// Format is the table as .xlsx workbooks.
var Format = table.Format{
	Name:    name,
	Title:   title + " 2020, workbooks",
	Licence: licence,
	Needs:   "the folder (or .zip) with the workbook of the main table and, if wanted, those of the organic acids, carbohydrates and fatty acids",
	Open:    table.Opening(open),
	Sniff:   sniff,
}

// open finds the workbooks and reads their headers and the annexes; dir names
// their place in messages.
func open(ctx context.Context, files fs.FS, dir, id string) (*table.Release, error) {
	if id == "" {
		id = name
	}
	r := &reader{tableID: id}
	r.data()
	books, err := findBooks(files, dir)
	if err != nil {
		return nil, err
	}
	if err := r.prepare(ctx, books); err != nil {
		return nil, err
	}
	var names []string
	for _, b := range books {
		names = append(names, b.file)
	}
	hash, err := table.Hash(files, names)
	if err != nil {
		return nil, err
	}
	return &table.Release{
		Table: source.Table{
			ID: id, Format: name, Title: title, Edition: edition, Publisher: publisher,
			Licence: licence, Citation: citation, Hash: hash,
		},
		Columns: r.columns(books),
		Works:   works(books),
		Foods:   func(yield func(*food.Food, error) bool) { r.foods(ctx, yield) },
	}, nil
}

// works gives one work for each workbook that was found, and one for all values
// in parentheses.
func works(books map[part]book) []source.Work {
	all := []source.Work{{
		ID: estimated, Citation: citation + ", values in parentheses", Licence: licence, Grade: "C",
		Note: "estimated by the publisher from other tables, recipes or the literature",
	}}
	for _, p := range parts {
		if _, found := books[p]; found {
			all = append(all, source.Work{ID: p.work(), Citation: citation + ", " + p.title(), Licence: licence, Grade: "B"})
		}
	}
	return all
}

// sniff looks for the columns of the main table in the workbooks at path.
func sniff(path string) bool {
	files, err := table.Files(path)
	if err != nil {
		return false
	}
	books, err := findBooks(files, table.Dir(path))
	return err == nil && books[mainTable].file != ""
}
