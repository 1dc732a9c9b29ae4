package ciqual

import (
	"io/fs"
	"path"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
)

const (
	again = "take the file from the publisher again"
	needs = "the folder with the workbook saved as .xlsx or as .csv with \";\" (and alim*.xml for English names), or with alim*.xml and compo*.xml"
)

// folder is the publisher's files; names are empty for files that are not there.
type folder struct {
	raw  fs.FS // as the files are
	text fs.FS // in UTF-8
	dir  string

	book                         string // .csv or .xlsx
	foods, groups, heads, values string // .xml
}

// find looks for the files by their names.
func find(fsys fs.FS, dir string) (*folder, error) {
	entries, err := fs.ReadDir(fsys, ".")
	if err != nil {
		return nil, fail.At(fail.Wrong, fail.Place{File: dir}, "is not a folder that can be read", "give "+needs)
	}
	f := &folder{raw: fsys, text: table.Western(fsys), dir: dir}
	var books []string
	old := ""
	for _, entry := range entries {
		if !entry.Type().IsRegular() {
			continue
		}
		lower := strings.ToLower(entry.Name())
		var slot *string
		switch ext := path.Ext(lower); {
		case ext == ".csv" || ext == ".xlsx":
			books = append(books, entry.Name())
		case ext == ".xls":
			old = entry.Name()
		case ext != ".xml":
		case strings.HasPrefix(lower, "alim_grp"):
			slot = &f.groups
		case strings.HasPrefix(lower, "alim"):
			slot = &f.foods
		case strings.HasPrefix(lower, "const"):
			slot = &f.heads
		case strings.HasPrefix(lower, "compo"):
			slot = &f.values
		}
		if slot == nil {
			continue
		}
		if *slot != "" {
			return nil, f.twice(*slot, entry.Name())
		}
		*slot = entry.Name()
	}
	return f, f.choose(books, old)
}

// choose takes the one workbook, or the XML set.
func (f *folder) choose(books []string, old string) error {
	var named []string
	for _, book := range books {
		if strings.Contains(strings.ToLower(book), name) {
			named = append(named, book)
		}
	}
	if len(named) > 0 {
		books = named
	}
	at := fail.Place{File: f.dir}
	switch {
	case len(books) > 1:
		return f.twice(books[0], books[1])
	case len(books) == 1 && f.values != "":
		return f.twice(books[0], f.values)
	case len(books) == 1:
		f.book = books[0]
	case f.values != "" && f.foods != "":
	case f.values != "":
		return fail.At(fail.Wrong, at, "lacks alim*.xml, the foods of "+f.values, "give "+needs)
	case old != "":
		return fail.At(fail.Wrong, fail.Place{File: path.Join(f.dir, old)}, "is a workbook of the old kind, which sipsum does not read", "save its sheet as .xlsx, or as .csv with \";\", in the same folder")
	default:
		return fail.At(fail.Wrong, at, "lacks a workbook (such as ciqual.csv or ciqual.xlsx) and compo*.xml", "give "+needs)
	}
	return nil
}

func (f *folder) twice(one, other string) error {
	return fail.At(fail.Wrong, fail.Place{File: f.dir}, "holds the table twice: "+one+" and "+other, "leave one of them in the folder")
}

// read lists the files that are read.
func (f *folder) read() []string {
	var names []string
	for _, name := range []string{f.book, f.foods, f.groups, f.heads, f.values} {
		if name != "" {
			names = append(names, name)
		}
	}
	return names
}
