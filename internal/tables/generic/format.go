package generic

import (
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

const (
	name    = "generic"
	mapFile = "sipsum-map.csv"
	work    = "table"
	again   = "mend the table, or say in the mapping file what it means"
	bom     = "\ufeff"
)

// needs says what a mapping file is, for the list of formats.
const needs = "a mapping file beside the table, or a folder or .zip with it as " + mapFile +
	". It is CSV with the header role,column,as,unit,per,why. Rows with a text in as: file, title, edition and licence (needed)," +
	" publisher, citation, sheet, header (row of the names), separator (comma, semicolon, tab), decimal (point, comma)," +
	" state (measured, calculated); marks in as: trace, unknown, missing, below. Rows with a column: code and name (needed; as = language)," +
	" group, density (unit g/ml), edible (unit % or share), note, value (as = constituent such as CITAC, or keep; unit; per 100 g or 100 ml)," +
	" sd and n (as = column of the value), ignore (* = all others)"

// Format is any table of foods with a mapping file.
var Format = table.Format{
	Name:    name,
	Title:   "any CSV, TSV or .xlsx table with a mapping file",
	Licence: "as the mapping file says",
	Needs:   needs,
	Open: func(ctx context.Context, path, id string) (*table.Release, error) {
		files, dir, mapName, err := locate(path)
		if err != nil {
			return nil, err
		}
		return open(ctx, files, dir, mapName, id)
	},
	Sniff: func(path string) bool {
		files, _, mapName, err := locate(path)
		if err != nil {
			return false
		}
		start := strings.TrimPrefix(string(table.Start(files, mapName)), bom)
		return strings.HasPrefix(start, strings.Join(fields, ","))
	},
}

// locate gives the files, the name of their place for messages, and the name of
// the mapping file.
func locate(path string) (files fs.FS, dir, mapName string, err error) {
	info, err := os.Stat(path)
	if err == nil && info.Mode().IsRegular() && !strings.EqualFold(filepath.Ext(path), ".zip") {
		return table.Folder(filepath.Dir(path)), filepath.Dir(path), filepath.Base(path), nil
	}
	files, err = table.Files(path)
	if err != nil {
		return nil, "", "", err
	}
	if _, err := fs.Stat(files, mapFile); err != nil {
		return nil, "", "", fail.At(fail.Wrong, fail.Place{File: path}, "lacks the mapping file "+mapFile, "write one (see table formats), or give its path")
	}
	return files, path, mapFile, nil
}

// open reads the mapping file and the header of the table; dir names their place
// in messages.
func open(ctx context.Context, files fs.FS, dir, mapName, id string) (*table.Release, error) {
	if id == "" {
		id = name
	}
	m, err := readMapping(table.Western(files), dir, mapName)
	if err != nil {
		return nil, err
	}
	file := m.about[roleFile]
	if _, err := fs.Stat(files, file); err != nil {
		return nil, fail.At(fail.Wrong, m.places[roleFile], "the table "+file+" is not there", "put it beside the mapping file")
	}
	r := &reader{raw: files, files: table.Western(files), dir: dir, tableID: id, mapping: m}
	if err := r.prepare(ctx); err != nil {
		return nil, err
	}
	hash, err := table.Hash(files, []string{mapName, file})
	if err != nil {
		return nil, err
	}
	citation := m.about[roleCitation]
	if citation == "" {
		citation = strings.TrimPrefix(m.about[rolePublisher]+". ", ". ") + m.about[roleTitle] + ", " + m.about[roleEdition]
	}
	return &table.Release{
		Table: source.Table{
			ID: id, Format: name, Title: m.about[roleTitle], Edition: m.about[roleEdition], Publisher: m.about[rolePublisher],
			Licence: m.about[roleLicence], Citation: citation, Hash: hash,
		},
		Columns: r.columns(),
		Works:   []source.Work{{ID: work, Citation: citation, Licence: m.about[roleLicence]}},
		Foods:   func(yield func(*food.Food, error) bool) { r.stream(ctx, yield) },
	}, nil
}
