package main

import (
	"cmp"
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/tables/table"
)

// figure is what a row has of an acid, in any unit that all figures of the row share, and
// by how much its print may have rounded it.
type figure struct{ amount, half float64 }

// row is a published food with its acids. rest stands for all that it was not found to hold.
type row struct {
	acids  map[constituent.ID]figure
	rest   float64
	source string
}

// shareOf gives the share of an acid in all acids of the row, and between what it lies
// since somebody rounded the figures.
func (r row) shareOf(id constituent.ID) (share, low, high float64, looked bool) {
	f, looked := r.acids[id]
	sum, least, most := r.rest, 0.0, r.rest
	for other, g := range r.acids {
		sum += g.amount
		if other != id {
			least, most = least+max(g.amount-g.half, 0), most+g.amount+g.half
		}
	}
	if !looked || sum == 0 {
		return 0, 0, 0, false
	}
	low, high = max(f.amount-f.half, 0), f.amount+f.half
	return f.amount / sum, low / (low + most), high / (high + least), true
}

// place is the last place that both national tables print, in grams.
const place = 0.1

// nothing is what a row has of acids that were not found: half of the last place.
const nothing = place / 2 / 2

// acidColumns are the acids by the first word of the Australian table's headers.
var acidColumns = map[string]constituent.ID{
	"Acetic": "ACEAC", "Citric": "CITAC", "Fumaric": "FUMAC", "Lactic": "LACAC", "Malic": "MALAC",
	"Oxalic": "OXALAC", "Quinic": "QUINAC", "Shikimic": "SHIKAC", "Succinic": "SUCAC", "Tartaric": "TARAC",
}

// rowsOf reads all rows that can be named: of the two national tables in shared, of the
// core table and of papers.
func rowsOf(shared, data string) (map[string]row, error) {
	rows := map[string]row{}
	for _, read := range []func(map[string]row) error{
		func(rows map[string]row) error { return australian(rows, filepath.Join(shared, "afcd2")) },
		func(rows map[string]row) error { return japanese(rows, filepath.Join(shared, "japan2020")) },
		func(rows map[string]row) error { return core(rows, filepath.Join(data, "core", "values.csv")) },
		func(rows map[string]row) error {
			return papers(rows, filepath.Join(data, "..", "scripts", "kins", "literature.csv"))
		},
	} {
		if err := read(rows); err != nil {
			return nil, err
		}
	}
	return rows, nil
}

// sheet gives the cells of the only sheet of a workbook that has a header with a word.
func sheet(folder, name, word string, use func(head, cells []string)) error {
	book, err := table.OpenWorkbook(os.DirFS(folder), folder, name, "")
	if err != nil {
		return err
	}
	for _, title := range book.Sheets() {
		lines, err := book.Rows(title)
		if err != nil {
			return err
		}
		var head []string
		for {
			cells, err := lines.Next()
			if err == io.EOF {
				break
			}
			if err != nil {
				return err
			}
			switch {
			case head != nil:
				use(head, cells)
			case slices.ContainsFunc(cells, func(c string) bool { return strings.HasPrefix(c, word) }):
				head = slices.Clone(cells)
			}
		}
		lines.Close()
		if head != nil {
			return nil
		}
	}
	return fmt.Errorf("%s has no sheet with %s", name, word)
}

func australian(rows map[string]row, folder string) error {
	const source = "Food Standards Australia New Zealand (2022) Australian Food Composition Database, Release 2"
	return sheet(folder, "Release 2 - Nutrient file.xlsx", "Citric acid", func(head, cells []string) {
		r := row{acids: map[constituent.ID]figure{}, rest: nothing, source: source}
		for i, text := range cells {
			first, _, _ := strings.Cut(head[i], " ")
			id, ok := acidColumns[first]
			if x, err := strconv.ParseFloat(text, 64); ok && strings.Contains(head[i], " acid") && err == nil {
				r.acids[id] = figure{x, place / 2}
			}
		}
		if len(r.acids) > 0 {
			rows["afcd:"+cells[0]] = r
		}
	})
}

func japanese(rows map[string]row, folder string) error {
	const source = "Standard Tables of Food Composition in Japan 2020, annex table 2 of the carbohydrates"
	return sheet(folder, "organic_acids_annex2.xlsx", "成分識別子", func(head, cells []string) {
		r := row{acids: map[constituent.ID]figure{}, rest: nothing, source: source}
		for i, text := range cells {
			if i >= len(head) {
				break
			}
			c, ok := constituent.Find(head[i])
			if !ok || c.Parent != constituent.OrganicAcids {
				continue
			}
			switch x, err := strconv.ParseFloat(text, 64); {
			case text == "Tr" || text == "(Tr)":
				r.acids[c.ID] = figure{0, place / 2}
			case err == nil && x == 0:
				r.acids[c.ID] = figure{0, place / 10} // nothing found: below a tenth of the last place
			case err == nil:
				r.acids[c.ID] = figure{x, place / 2}
			}
		}
		if len(r.acids) > 0 && len(cells) > 1 {
			rows["stfcj:"+cells[1]] = r
		}
	})
}

// records gives the rows of a CSV file by their columns.
func records(path string, use func(get func(column string) string)) error {
	file, err := os.Open(path)
	if err != nil {
		return err
	}
	defer file.Close()
	all, err := csv.NewReader(file).ReadAll()
	if err != nil {
		return err
	}
	for _, record := range all[1:] {
		use(func(column string) string { return record[slices.Index(all[0], column)] })
	}
	return nil
}

// core reads the foods of the core table, in milligrams.
func core(rows map[string]row, path string) error {
	return records(path, func(get func(string) string) {
		c, ok := constituent.Find(get("constituent"))
		amount, err := strconv.ParseFloat(get("amount"), 64)
		if !ok || c.Parent != constituent.OrganicAcids || err != nil {
			return
		}
		name := "core:" + get("code")
		r, ok := rows[name]
		if !ok {
			r = row{acids: map[constituent.ID]figure{}, source: "core table"}
		}
		sd, _ := strconv.ParseFloat(cmp.Or(get("sd"), "0"), 64)
		r.acids[c.ID] = figure{amount, sd}
		rows[name] = r
	})
}

// papers reads the shares that papers print; what they do not name is the rest.
func papers(rows map[string]row, path string) error {
	return records(path, func(get func(string) string) {
		name := "paper:" + get("row")
		r, ok := rows[name]
		if !ok {
			r = row{acids: map[constituent.ID]figure{}, rest: 1, source: get("source")}
		}
		share, _ := strconv.ParseFloat(get("share"), 64)
		half, _ := strconv.ParseFloat(get("half"), 64)
		r.acids[constituent.Must(constituent.ID(get("constituent"))).ID] = figure{share, half}
		r.rest = max(r.rest-share, 0)
		rows[name] = r
	})
}
