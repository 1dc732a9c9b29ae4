package cofid

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
	name      = "cofid"
	title     = "McCance and Widdowson's The Composition of Foods Integrated Dataset"
	publisher = "Public Health England"
	licence   = "Open Government Licence v3.0 (from memory)"
	citation  = publisher + ". " + title
	again     = "take the workbook from the publisher again"
	work      = "cofid"
)

// Format is the Composition of Foods Integrated Dataset.
var Format = table.Format{
	Name:    name,
	Title:   title + ", workbook or its sheets as CSV",
	Licence: licence,
	Needs:   "the .xlsx workbook, or a folder with it, or a folder with its sheets as CSV files",
	Open:    table.Opening(open),
	Sniff:   sniff,
}

// open reads the whole table; dir names the place of the files in messages.
func open(ctx context.Context, files fs.FS, dir, id string) (*table.Release, error) {
	if id == "" {
		id = name
	}
	names, err := candidates(files, dir)
	if err != nil {
		return nil, err
	}
	r := &reader{raw: files, files: table.Western(files), dir: dir, tableID: id}
	if err := r.prepare(ctx, names); err != nil {
		return nil, err
	}
	hash, err := table.Hash(files, r.used)
	if err != nil {
		return nil, err
	}
	return &table.Release{
		Table: source.Table{
			ID: id, Format: name, Title: title, Edition: editionOf(r.used), Publisher: publisher,
			Licence: licence, Citation: citation, Hash: hash,
		},
		Columns: r.columns(),
		Works:   []source.Work{{ID: work, Citation: citation, Licence: licence, Grade: "B"}},
		Foods:   func(yield func(*food.Food, error) bool) { r.stream(ctx, yield) },
	}, nil
}

// candidates gives the workbooks of a folder or, if it has none, its CSV files.
func candidates(files fs.FS, dir string) ([]string, error) {
	entries, err := fs.ReadDir(files, ".")
	if err != nil {
		return nil, fail.At(fail.Wrong, fail.Place{File: dir}, "is not a folder that can be read", "give the workbook itself")
	}
	for _, ending := range []string{".xlsx", ".csv"} {
		var names []string
		for _, e := range entries {
			if strings.EqualFold(path.Ext(e.Name()), ending) && !strings.HasPrefix(e.Name(), ".") && !strings.HasPrefix(e.Name(), "~") {
				names = append(names, e.Name())
			}
		}
		switch {
		case ending == ".xlsx" && len(names) > 1:
			return nil, fail.At(fail.Wrong, fail.Place{File: dir}, "holds more than one workbook: "+strings.Join(names, ", "), "give the workbook itself")
		case len(names) > 0:
			return names, nil
		}
	}
	return nil, fail.At(fail.Wrong, fail.Place{File: dir}, "lacks a .xlsx workbook or its sheets as .csv files", "give the folder that holds them")
}

// editionOf looks for a year in the names of the files.
func editionOf(files []string) string {
	for _, file := range files {
		for at := 0; at+4 <= len(file); at++ {
			if year := file[at : at+4]; strings.HasPrefix(year, "20") && strings.Trim(year, "0123456789") == "" {
				return year
			}
		}
	}
	return "not stated"
}

// sniff looks for the sheet of proximates among the names of sheets or files.
func sniff(given string) bool {
	files, err := table.Files(given)
	if err != nil {
		return false
	}
	names, err := candidates(files, given)
	if err != nil {
		return false
	}
	for _, name := range names {
		sheets := []string{strings.TrimSuffix(name, path.Ext(name))}
		if strings.EqualFold(path.Ext(name), ".xlsx") {
			book, err := table.OpenWorkbook(files, "", name, again)
			if err != nil {
				return false
			}
			sheets = book.Sheets()
		}
		for _, sheet := range sheets {
			if strings.HasSuffix(strings.ToLower(sheet), "proximates") {
				return true
			}
		}
	}
	return false
}
