package sr

import (
	"context"
	"io"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

// name is the name of the format, its map of columns and its group rules.
const name = "sr"

// Format is the ASCII release of the USDA Standard Reference.
var Format = table.Format{
	Name:    name,
	Title:   "USDA National Nutrient Database for Standard Reference, ASCII files",
	Licence: licence,
	Needs:   "the folder with FOOD_DES.txt, NUT_DATA.txt, NUTR_DEF.txt, FD_GROUP.txt and SRC_CD.txt",
	Open: func(ctx context.Context, path, id string) (*table.Release, error) {
		return open(ctx, folder{fsys: table.Folder(path), dir: path}, id)
	},
	Sniff: func(path string) bool {
		files := folder{fsys: table.Folder(path)}
		return files.has(foodFile) && files.has(valueFile) && files.has(columnFile)
	},
}

func open(ctx context.Context, files folder, id string) (*table.Release, error) {
	if id == "" {
		id = name
	}
	names, err := files.present()
	if err != nil {
		return nil, err
	}
	r := &reader{files: files, tableID: id}
	r.rules = table.GroupsOf(name)
	if r.groups, err = groups(files); err != nil {
		return nil, err
	}
	cols, byNumber, err := columns(files, id)
	if err != nil {
		return nil, err
	}
	r.columns = byNumber
	works, byCode, err := origins(files)
	if err != nil {
		return nil, err
	}
	r.origins = byCode
	count, err := countFoods(files)
	if err != nil {
		return nil, err
	}
	release, err := about(files, names, id, count, len(cols))
	if err != nil {
		return nil, err
	}
	return &table.Release{
		Table: release, Columns: cols, Works: works, Count: count,
		Foods: func(yield func(*food.Food, error) bool) { r.foods(ctx, yield) },
	}, nil
}

// about says what the release is.
func about(files folder, names []string, id string, foods, columns int) (source.Table, error) {
	edition := table.EditionOf(name, foods, columns)
	hash, err := table.Hash(files.fsys, names)
	if err != nil {
		return source.Table{}, err
	}
	citation := "US Department of Agriculture, Agricultural Research Service. USDA National Nutrient Database for Standard Reference"
	if edition.Year != "" {
		citation += ", Release " + edition.Name + ", " + edition.Year
	}
	return source.Table{
		ID: id, Format: name, Title: "USDA National Nutrient Database for Standard Reference", Edition: edition.Name,
		Publisher: "US Department of Agriculture, Agricultural Research Service", Licence: licence, Citation: citation, Hash: hash,
	}, nil
}

func countFoods(files folder) (int, error) {
	in, err := openLines(files, foodFile, foodFields)
	if err != nil {
		return 0, err
	}
	defer in.close()
	for n := 0; ; n++ {
		switch err := in.next(); {
		case err == io.EOF && n == 0:
			return 0, fail.At(fail.Wrong, fail.Place{File: in.name}, "holds no food", again)
		case err == io.EOF:
			return n, nil
		case err != nil:
			return 0, err
		}
	}
}
