package fdc

import (
	"context"
	"io/fs"
	"strings"

	"sipsum/internal/embedded"
	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

const (
	name      = "fdc"
	title     = "USDA FoodData Central"
	publisher = "US Department of Agriculture, Agricultural Research Service"
)

// Format is a release of USDA FoodData Central.
var Format = table.Format{
	Name:    name,
	Title:   title + ", CSV files or Foundation JSON",
	Licence: licence,
	Needs:   "the folder or .zip with food.csv, food_nutrient.csv and nutrient.csv (branded_food.csv and others are read if they are there), or the .json of the Foundation foods",
	Open: table.Opening(func(ctx context.Context, files fs.FS, dir, id string) (*table.Release, error) {
		return open(ctx, files, dir, id, maxHeld)
	}),
	Sniff: sniff,
}

// open opens a release; held is how many bytes may wait in memory for their place.
func open(ctx context.Context, fsys fs.FS, dir, id string, held int) (*table.Release, error) {
	if id == "" {
		id = name
	}
	files, err := find(fsys, dir)
	if err != nil {
		return nil, err
	}
	r := &reader{files: files, tableID: id, held: held}
	r.rules = table.GroupsOf(name)
	r.columns = newColumns(id)
	if files.json != "" {
		return r.openJSON(ctx)
	}
	if err := r.prepare(ctx); err != nil {
		return nil, err
	}
	return r.release(r.order.latest, func(yield func(*food.Food, error) bool) { r.foods(ctx, yield) })
}

// prepare reads the small files and which foods there are.
func (r *reader) prepare(ctx context.Context) (err error) {
	r.types = refusedTypes()
	if err = r.columns.read(ctx, r.files); err != nil {
		return err
	}
	if err = r.readCategories(ctx); err != nil {
		return err
	}
	if r.units, err = r.lookup(ctx, unitFile, "id", "name"); err != nil {
		return err
	}
	if r.order, err = r.orderOf(ctx); err != nil {
		return err
	}
	r.derivations = newDerivations(r.order.latest)
	return r.readDerivations(ctx)
}

// release says what was opened.
func (r *reader) release(edition string, foods func(func(*food.Food, error) bool)) (*table.Release, error) {
	hash, err := table.Hash(r.files.fsys, r.files.names())
	if err != nil {
		return nil, err
	}
	return &table.Release{
		Table: source.Table{
			ID: r.tableID, Format: name, Title: title, Edition: dated(edition), Publisher: publisher,
			Licence: licence, Citation: citation(edition), Hash: hash,
		},
		Columns: r.columns.foods, Works: r.derivations.works, Foods: foods,
	}, nil
}

// dated names the edition by the last date of publication among its foods.
func dated(latest string) string {
	if latest == "" {
		return "not dated"
	}
	return latest
}

// citation is the one that the publisher asks for; the release names no version
// but the dates of its foods.
func citation(latest string) string {
	return "U.S. Department of Agriculture (USDA), Agricultural Research Service. FoodData Central. Version: foods published up to " + dated(latest) + ". Internet: fdc.nal.usda.gov"
}

// refusedTypes reads which data types are not foods.
func refusedTypes() map[string]bool {
	refused := map[string]bool{}
	for _, row := range embedded.Rows("maps/fdc_data_types.csv") {
		refused[row.Text("data_type")] = row.Text("fate") == "refuse"
	}
	return refused
}

// readCategories reads food_category.csv, or sipsum's own copy of the names if
// it is not there.
func (r *reader) readCategories(ctx context.Context) error {
	r.categories = map[string]string{}
	if !r.files.has(categoryFile) {
		for _, row := range embedded.Rows("maps/fdc_categories.csv") {
			r.categories[row.Text("id")] = row.Text("description")
		}
		return nil
	}
	list, err := r.lookup(ctx, categoryFile, "id", "description")
	for id, row := range list.rows {
		r.categories[id] = row[0]
	}
	return err
}

// sniff looks at names and headers of files.
func sniff(path string) bool {
	fsys, err := table.Files(path)
	if err != nil {
		return false
	}
	files, err := find(fsys, path)
	if err != nil || files.json == "" {
		return err == nil
	}
	return strings.Contains(string(table.Start(fsys, files.json)), `"`+foundationKey+`"`)
}
