package swiss

import (
	"context"
	"io/fs"
	"path"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

const (
	name      = "swiss"
	file      = "generic-foods.csv"
	licence   = "free use, commercial use too, with acknowledgement of the source"
	publisher = "Federal Food Safety and Veterinary Office FSVO"
	title     = "Swiss Food Composition Database"
	again     = "take the file from the publisher again"
	needs     = "the folder with generic-foods.csv, or that file"
)

// Format is the table of generic foods of the Swiss Food Composition Database.
var Format = table.Format{
	Name:    name,
	Title:   title + ", generic foods as CSV",
	Licence: licence,
	Needs:   needs,
	Open:    table.Opening(open),
	Sniff:   sniff,
}

// find gives the path of the file: in the folder, in the folder "data" of a data
// package, or the only one there is.
func find(files fs.FS) (string, bool) {
	for _, place := range []string{file, path.Join("data", file)} {
		if table.Has(files, place) {
			return place, true
		}
	}
	entries, err := fs.ReadDir(files, ".")
	if err == nil && len(entries) == 1 && strings.EqualFold(path.Ext(entries[0].Name()), ".csv") {
		return entries[0].Name(), true
	}
	return "", false
}

// open reads the header and counts the foods; dir names the place of the files
// in messages.
func open(ctx context.Context, files fs.FS, dir, id string) (*table.Release, error) {
	if id == "" {
		id = name
	}
	place, ok := find(files)
	if !ok {
		return nil, fail.At(fail.Wrong, fail.Place{File: dir}, "lacks "+file, "give "+needs)
	}
	r := &reader{files: files, dir: dir, file: place, tableID: id}
	if err := r.prepare(); err != nil {
		return nil, err
	}
	foods, err := r.count(ctx)
	if err != nil {
		return nil, err
	}
	edition := table.EditionOf(name, foods, len(r.columns))
	hash, err := table.Hash(files, []string{place})
	if err != nil {
		return nil, err
	}
	citation := publisher + ", " + title
	if edition.Year != "" {
		citation += ", version " + edition.Name + ", " + edition.Year
	}
	return &table.Release{
		Table: source.Table{
			ID: id, Format: name, Title: title, Edition: edition.Name, Publisher: publisher,
			Licence: licence, Citation: citation, Hash: hash,
		},
		Columns: r.describe(),
		Works: []source.Work{
			{ID: sourced, Citation: citation + ": figure of a numbered source", Licence: licence, Grade: "B", Note: "the numbers stand beside the value; the file does not say what they are"},
			{ID: computed, Citation: citation + ": computed value", Licence: licence, Grade: "C", Note: "computed by the publisher"},
		},
		Foods: func(yield func(*food.Food, error) bool) { r.foods(ctx, yield) },
	}, nil
}

// count counts the rows.
func (r *reader) count(ctx context.Context) (int, error) {
	rows, err := r.open()
	if err != nil {
		return 0, err
	}
	defer rows.Close()
	n := 0
	err = rows.Each(func() error {
		n++
		return ctx.Err()
	})
	if err == nil && n == 0 {
		err = fail.At(fail.Wrong, fail.Place{File: path.Join(r.dir, r.file)}, "holds no food", again)
	}
	return n, err
}

// sniff looks for the header's first cells.
func sniff(place string) bool {
	files, err := table.Files(place)
	if err != nil {
		return false
	}
	name, ok := find(files)
	if !ok {
		return false
	}
	return strings.Contains(string(table.Start(files, name)), "ID,ID V 4.0,ID SwissFIR")
}
