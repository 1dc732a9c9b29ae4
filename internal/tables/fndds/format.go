package fndds

import (
	"context"
	"io/fs"

	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

const (
	name      = "fndds"
	title     = "USDA Food and Nutrient Database for Dietary Studies"
	publisher = "US Department of Agriculture, Agricultural Research Service, Food Surveys Research Group"
	licence   = "public domain (US Government work)"
	again     = "take the workbook of nutrient values from the agency again"
	work      = "fndds"
)

// Format is the workbook of nutrient values, or its copy as CSV.
var Format = table.Format{
	Name:    name,
	Title:   title + ", At A Glance workbook of nutrient values",
	Licence: licence,
	Needs:   "the folder (or .zip) with the workbook \"FNDDS Nutrient Values\", the workbook itself, or its copy as .csv",
	Open:    table.Opening(open),
	Sniff:   sniff,
}

// open finds the file and reads its header; dir names its place in messages.
func open(ctx context.Context, files fs.FS, dir, id string) (*table.Release, error) {
	if id == "" {
		id = name
	}
	f, err := find(files, dir)
	if err != nil {
		return nil, err
	}
	r := &reader{file: f, tableID: id}
	if err := r.prepare(); err != nil {
		return nil, err
	}
	edition, err := r.edition()
	if err != nil {
		return nil, err
	}
	hash, err := table.Hash(files, []string{f.name})
	if err != nil {
		return nil, err
	}
	citation := publisher + ". Food and Nutrient Database for Dietary Studies " + edition + ". At A Glance: FNDDS Nutrient Values"
	return &table.Release{
		Table: source.Table{
			ID: id, Format: name, Title: title, Edition: edition, Publisher: publisher,
			Licence: licence, Citation: citation, Hash: hash,
		},
		Columns: r.columns(),
		Works: []source.Work{{
			ID: work, Citation: citation, Licence: licence, Grade: "C", Note: "calculated by the agency from recipes",
		}},
		Foods: func(yield func(*food.Food, error) bool) { r.foods(ctx, yield) },
	}, nil
}

// sniff looks for the columns of the nutrient values in the files at path.
func sniff(path string) bool {
	files, err := table.Files(path)
	if err != nil {
		return false
	}
	_, err = find(files, table.Dir(path))
	return err == nil
}
