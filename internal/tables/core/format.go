package core

import (
	"context"
	"io/fs"

	"sipsum/data"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

const (
	name    = "core"
	title   = "sipsum's own table of drink foods"
	licence = "each value carries the licence of its source"
)

// The files of the table.
const (
	foodFile    = "foods.csv"
	valueFile   = "values.csv"
	sourceFile  = "sources.csv"
	nameFile    = "names.csv"
	portionFile = "portions.csv"
	markFile    = "marks.csv"
)

var allFiles = []string{foodFile, valueFile, sourceFile, nameFile, portionFile, markFile}

// Format is the core table.
var Format = table.Format{
	Name:    name,
	Title:   title,
	Licence: licence,
	Needs:   "nothing (the table is part of the program), or a folder with files like those of data/core",
	Open: func(ctx context.Context, path, id string) (*table.Release, error) {
		if path == "" {
			files, err := fs.Sub(data.FS, name)
			if err != nil {
				return nil, fail.Because(fail.Failed, err, "the embedded core table cannot be read", "")
			}
			return open(ctx, files, name, id)
		}
		return open(ctx, table.Folder(path), path, id)
	},
	Sniff: func(path string) bool {
		for _, file := range allFiles {
			if _, err := fs.Stat(table.Folder(path), file); err != nil {
				return false
			}
		}
		return true
	},
}

// Embedded says which edition of the core table is part of the program, without
// reading its rows.
func Embedded() (source.Table, error) {
	files, err := fs.Sub(data.FS, name)
	if err != nil {
		return source.Table{}, fail.Because(fail.Failed, err, "the embedded core table cannot be read", "")
	}
	return edition(files, name)
}

// edition describes the table in files by their hash.
func edition(files fs.FS, id string) (source.Table, error) {
	hash, err := table.Hash(files, allFiles)
	if err != nil {
		return source.Table{}, err
	}
	const shown = 12 // characters of the hash, enough to tell editions apart
	return source.Table{
		ID: id, Format: name, Title: title, Edition: hash[:shown], Publisher: "the sipsum project",
		Licence: licence, Citation: title + ", edition " + hash[:shown], Hash: hash,
	}, nil
}

// open reads the table; dir names its place in messages.
func open(ctx context.Context, files fs.FS, dir, id string) (*table.Release, error) {
	if id == "" {
		id = name
	}
	r := &reader{files: files, dir: dir, tableID: id, byCode: map[string]*food.Food{}}
	if err := r.read(); err != nil {
		return nil, err
	}
	about, err := edition(files, id)
	if err != nil {
		return nil, err
	}
	return &table.Release{
		Table: about, Columns: r.columns(), Works: r.works,
		Foods: func(yield func(*food.Food, error) bool) { r.stream(ctx, yield) },
	}, nil
}
