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
)

// Format is the Canadian Nutrient File as CSV files.
var Format = table.Format{
	Name:    name,
	Title:   title + ", CSV files",
	Licence: licence,
	Needs:   "the folder or the .zip with FOOD NAME.csv, NUTRIENT NAME.csv, NUTRIENT AMOUNT.csv and NUTRIENT SOURCE.csv",
	Open: func(ctx context.Context, path, id string) (*table.Release, error) {
		files, err := table.Files(path)
		if err != nil {
			return nil, err
		}
		return open(ctx, files, path, id)
	},
	Sniff: func(path string) bool {
		files, err := table.Files(path)
		return err == nil && has(files, foodFile) && has(files, columnFile) && has(files, valueFile)
	},
}

// open reads the small files; dir names the place of the files in messages.
func open(ctx context.Context, files fs.FS, dir, id string) (*table.Release, error) {
	if id == "" {
		id = name
	}
	names, err := present(files, dir)
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
	release := edition(r.foods, len(r.columns))
	return &table.Release{
		Table: source.Table{
			ID: id, Format: name, Title: title, Edition: release, Publisher: publisher, Licence: licence,
			Citation: publisher + ". " + title + ", " + release, Hash: hash,
		},
		Columns: r.columns, Works: r.works,
		Foods: func(yield func(*food.Food, error) bool) { r.stream(ctx, yield) },
	}, nil
}

// present gives the files to read, or the error that names the missing ones.
func present(files fs.FS, dir string) ([]string, error) {
	var names, missing []string
	for _, file := range []string{foodFile, columnFile, valueFile, sourceFile} {
		if has(files, file) {
			names = append(names, file)
		} else {
			missing = append(missing, file)
		}
	}
	if len(missing) > 0 {
		return nil, fail.At(fail.Wrong, fail.Place{File: dir}, "lacks "+strings.Join(missing, ", "),
			"FOOD NAME, NUTRIENT NAME, NUTRIENT AMOUNT and NUTRIENT SOURCE must be there; FOOD GROUP, MEASURE NAME and CONVERSION FACTOR may be")
	}
	for _, file := range []string{groupFile, measureFile, portionFile} {
		if has(files, file) {
			names = append(names, file)
		}
	}
	return names, nil
}

func has(files fs.FS, file string) bool {
	info, err := fs.Stat(files, file)
	return err == nil && info.Mode().IsRegular()
}

// edition tells the release by its counts; those of 2015 were seen.
func edition(foods, columns int) string {
	const foods2015, columns2015 = 5690, 152
	if foods == foods2015 && columns == columns2015 {
		return "2015"
	}
	return fmt.Sprintf("not recognised (%d foods)", foods)
}
