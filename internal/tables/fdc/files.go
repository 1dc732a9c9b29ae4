package fdc

import (
	"encoding/csv"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"

	"sipsum/internal/fail"
)

// The files that are read, by the publisher's names.
const (
	foodFile       = "food.csv"
	valueFile      = "food_nutrient.csv"
	nutrientFile   = "nutrient.csv"
	brandedFile    = "branded_food.csv"
	portionFile    = "food_portion.csv"
	unitFile       = "measure_unit.csv"
	categoryFile   = "food_category.csv"
	derivationFile = "food_nutrient_derivation.csv"
	sourceFile     = "food_nutrient_source.csv"
	legacyFile     = "sr_legacy_food.csv"
	foundationFile = "foundation_food.csv"
	surveyFile     = "survey_fndds_food.csv"
	surveyGroups   = "wweia_food_category.csv"
)

// known lists them; headers tells those that are recognised under any name by
// the columns that no other file has together.
var (
	known = []string{
		foodFile, valueFile, nutrientFile, brandedFile, portionFile, unitFile, categoryFile, derivationFile, sourceFile,
		legacyFile, foundationFile, surveyFile, surveyGroups,
	}
	headers = map[string][]string{
		foodFile:     {"fdc_id", "data_type", "description"},
		valueFile:    {"fdc_id", "nutrient_id", "amount"},
		nutrientFile: {"id", "name", "unit_name"},
		brandedFile:  {"fdc_id", "brand_owner", "gtin_upc"},
		portionFile:  {"fdc_id", "measure_unit_id", "gram_weight"},
	}
)

// most is the number of files of a folder that are looked at: a whole release
// has about forty.
const most = 1000

// files is a folder of the publisher's files: where each of them is, by the
// name that the publisher gives it.
type files struct {
	fsys fs.FS
	dir  string            // for messages
	at   map[string]string // publisher's name: name in the folder
	json string            // the JSON release, if the folder has no CSV files
}

func (f files) has(name string) bool { return f.at[name] != "" }

// names lists the files that are read.
func (f files) names() []string {
	if f.json != "" {
		return []string{f.json}
	}
	var names []string
	for _, name := range f.at {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// find looks through a folder: first for the publisher's names, then for their
// headers under other names.
func find(fsys fs.FS, dir string) (files, error) {
	f := files{fsys: fsys, dir: dir, at: map[string]string{}}
	entries, err := fs.ReadDir(fsys, ".")
	if err != nil {
		return f, fail.At(fail.Wrong, fail.Place{File: dir}, "is not a folder that can be read", "give the folder, the .zip or the .json of the release")
	}
	var others, jsons []string
	for _, entry := range entries[:min(len(entries), most)] {
		name := entry.Name()
		switch ext := strings.ToLower(path.Ext(name)); {
		case entry.IsDir():
		case slices.Contains(known, name):
			f.at[name] = name
		case ext == ".csv":
			others = append(others, name)
		case ext == ".json":
			jsons = append(jsons, name)
		}
	}
	if err := f.byHeader(others); err != nil {
		return f, err
	}
	if !f.has(valueFile) && !f.has(foodFile) && len(jsons) == 1 {
		f.json = jsons[0]
		return f, nil
	}
	return f, f.whole()
}

// byHeader finds the files that have another name. Two that could be the same
// file cannot be told apart.
func (f files) byHeader(others []string) error {
	found := map[string]string{}
	for _, name := range others {
		cells := firstRow(f.fsys, name)
		for _, role := range known {
			want := headers[role]
			if want == nil || f.has(role) || slices.ContainsFunc(want, func(cell string) bool { return !slices.Contains(cells, cell) }) {
				continue
			}
			if other, twice := found[role]; twice {
				return fail.At(fail.Wrong, fail.Place{File: f.dir}, "both "+other+" and "+name+" have the columns of "+role, "put each release into a folder of its own")
			}
			found[role] = name
		}
	}
	for role, name := range found {
		f.at[role] = name
	}
	return nil
}

// whole refuses a folder without the files that must be there.
func (f files) whole() error {
	var missing []string
	for _, name := range []string{valueFile, nutrientFile} {
		if !f.has(name) {
			missing = append(missing, name)
		}
	}
	if !f.has(foodFile) && !f.has(brandedFile) {
		missing = append(missing, foodFile)
	}
	if len(missing) > 0 {
		return fail.At(fail.Wrong, fail.Place{File: f.dir}, "lacks "+strings.Join(missing, ", "), "give the folder or the .zip that holds all files of the release, or its .json")
	}
	return nil
}

// firstRow gives the cells of the first line of a file; none if it is not a
// line of CSV.
func firstRow(fsys fs.FS, name string) []string {
	file, err := fsys.Open(name)
	if err != nil {
		return nil
	}
	defer file.Close()
	start, err := io.ReadAll(io.LimitReader(file, 4096))
	if err != nil {
		return nil
	}
	line, _, _ := strings.Cut(string(start), "\n")
	cells, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(line, "\ufeff"))).Read()
	if err != nil {
		return nil
	}
	return cells
}

// lineOf finds the line and column of a byte of a file, to tell people where it
// is; 0 if the file cannot be read again.
func (f files) lineOf(name string, offset int64) (line, col int) {
	file, err := f.fsys.Open(name)
	if err != nil {
		return 0, 0
	}
	defer file.Close()
	line, col = 1, 1
	piece := make([]byte, 1<<16)
	for offset > 0 {
		n, err := file.Read(piece[:min(int64(len(piece)), offset)])
		for _, b := range piece[:n] {
			if col++; b == '\n' {
				line, col = line+1, 1
			}
		}
		if offset -= int64(n); err != nil {
			break
		}
	}
	return line, col
}
