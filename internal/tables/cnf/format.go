package cnf

import (
	"context"
	"io/fs"

	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

const (
	name      = "cnf"
	title     = "Canadian Nutrient File"
	publisher = "Health Canada"
	licence   = "Open Government Licence - Canada (from memory)"
	again     = "take the file from the publisher's archive again"
)

// The files that are read.
const (
	foodFile    = "FOOD NAME.csv"
	columnFile  = "NUTRIENT NAME.csv"
	valueFile   = "NUTRIENT AMOUNT.csv"
	sourceFile  = "NUTRIENT SOURCE.csv"
	groupFile   = "FOOD GROUP.csv"
	measureFile = "MEASURE NAME.csv"
	portionFile = "CONVERSION FACTOR.csv"

	mandatoryHint = "FOOD NAME, NUTRIENT NAME, NUTRIENT AMOUNT and NUTRIENT SOURCE must be there; FOOD GROUP, MEASURE NAME and CONVERSION FACTOR may be"
)

var (
	needed   = []string{foodFile, columnFile, valueFile, sourceFile}
	optional = []string{groupFile, measureFile, portionFile}
)

// Format is the Canadian Nutrient File as CSV files.
var Format = table.Format{
	Name:    name,
	Title:   title + ", CSV files",
	Licence: licence,
	Needs:   "the folder or the .zip with FOOD NAME.csv, NUTRIENT NAME.csv, NUTRIENT AMOUNT.csv and NUTRIENT SOURCE.csv",
	Open:    table.Opening(open),
	Sniff: func(path string) bool {
		files, err := table.Files(path)
		return err == nil && table.Has(files, foodFile) && table.Has(files, columnFile) && table.Has(files, valueFile)
	},
}

// open reads the small files; dir names the place of the files in messages.
func open(ctx context.Context, files fs.FS, dir, id string) (*table.Release, error) {
	if id == "" {
		id = name
	}
	names, err := table.Present(files, dir, needed, optional, mandatoryHint)
	if err != nil {
		return nil, err
	}
	r := &reader{files: table.Western(files), dir: dir, tableID: id}
	if err := r.prepare(); err != nil {
		return nil, err
	}
	hash, err := table.Hash(files, names)
	if err != nil {
		return nil, err
	}
	release := table.EditionOf(name, r.foods, len(r.columns)).Name
	return &table.Release{
		Table: source.Table{
			ID: id, Format: name, Title: title, Edition: release, Publisher: publisher, Licence: licence,
			Citation: publisher + ". " + title + ", " + release, Hash: hash,
		},
		Columns: r.columns, Works: r.works,
		Foods: func(yield func(*food.Food, error) bool) { r.stream(ctx, yield) },
	}, nil
}
