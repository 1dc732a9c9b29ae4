package afcd

import (
	"context"
	"io/fs"

	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

const (
	name      = "afcd"
	title     = "Australian Food Composition Database"
	publisher = "Food Standards Australia New Zealand"
	licence   = "data user licence of the agency, based on CC BY-SA 3.0 Australia: load it, do not pass it on inside another table"
	again     = "take the workbook from the agency again"
	work      = "afcd"
)

// Format is the workbook of nutrients, with the release's other workbooks where
// they lie beside it.
var Format = table.Format{
	Name:    name,
	Title:   title + ", workbook of nutrients",
	Licence: licence,
	Needs:   "the workbook \"Nutrient file\", or the folder (or .zip) with it and, if wanted, the release's files of food details, measures and recipes",
	Open:    table.Opening(open),
	Sniff:   sniff,
}

// open finds the sheets and reads all but the foods per 100 g; dir names the
// place of the files in messages.
func open(ctx context.Context, files fs.FS, dir, id string) (*table.Release, error) {
	if id == "" {
		id = name
	}
	found, err := find(files, dir)
	if err != nil {
		return nil, err
	}
	r := &reader{tableID: id, file: found.solids.file, rules: table.GroupsOf(name)}
	if err := r.prepare(ctx, found); err != nil {
		return nil, err
	}
	hash, err := table.Hash(files, found.files)
	if err != nil {
		return nil, err
	}
	edition := found.edition()
	citation := publisher + ", " + title + ", " + edition
	return &table.Release{
		Table: source.Table{
			ID: id, Format: name, Title: title, Edition: edition, Publisher: publisher,
			Licence: licence, Citation: citation, Hash: hash,
		},
		Columns: r.describe(),
		Works: []source.Work{{
			ID: work, Citation: citation, Licence: licence, Grade: "B",
			Note: "the workbook does not tell which figures were analysed, borrowed or calculated from recipes",
		}},
		Foods: func(yield func(*food.Food, error) bool) { r.foods(ctx, yield) },
	}, nil
}

// sniff looks for the sheet of foods per 100 g in the workbooks at path.
func sniff(path string) bool {
	files, err := table.Files(path)
	if err != nil {
		return false
	}
	_, err = find(files, table.Dir(path))
	return err == nil
}
