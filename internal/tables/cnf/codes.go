package cnf

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

// column is a row of NUTRIENT NAME and where its values go.
type column struct {
	id     constituent.ID
	factor float64
	limit  float64 // half of the last decimal printed, in the unit stored
}

// origin is a row of NUTRIENT SOURCE.
type origin struct {
	id       string
	analysed bool
	assumed  bool
}

// open opens a file and makes sure of its columns. The last line of FOOD NAME
// has no line end in the release that was seen; what is cut off of it is missed
// by NUTRIENT AMOUNT.
func (r *reader) open(file string, columns ...string) (*table.Rows, error) {
	rows, err := table.OpenRows(r.files, r.dir, file, strings.TrimSpace, again)
	if err != nil {
		return nil, err
	}
	if err := rows.Need(columns...); err != nil {
		rows.Close()
		return nil, err
	}
	if file == foodFile {
		rows.MayEndOpen()
	}
	return rows, nil
}

// each calls use for every row of a file; key names the column whose text may
// not stand twice.
func (r *reader) each(file, key string, columns []string, use func(rows *table.Rows) error) error {
	rows, err := r.open(file, append([]string{key}, columns...)...)
	if err != nil {
		return err
	}
	defer rows.Close()
	seen := map[string]bool{}
	return rows.Each(func() error {
		code := rows.Text(key)
		if code == "" || seen[code] {
			return rows.Wrong(key, fmt.Sprintf("%.40q is empty or stands twice", code))
		}
		seen[code] = true
		return use(rows)
	})
}

// readColumns reads NUTRIENT NAME.
func (r *reader) readColumns() error {
	mapping := table.ReadMap(name)
	r.byNumber = map[string]int{}
	return r.each(columnFile, "NutrientID", []string{"NutrientUnit", "NutrientName", "Tagname", "NutrientDecimals"}, func(rows *table.Rows) error {
		number := rows.Text("NutrientID")
		row, ok := mapping.Find(number)
		if !ok {
			return rows.Wrong("NutrientID", fmt.Sprintf("column %.40q is not known to sipsum", number))
		}
		if tag := rows.Text("Tagname"); row.Fate == table.Mapped {
			if other, ok := constituent.Find(tag); ok && other != row.Constituent {
				return rows.Wrong("Tagname", fmt.Sprintf("column %s is tagged %.40q where %s was expected", number, tag, row.Constituent.ID))
			}
		}
		decimals, err := rows.Number("NutrientDecimals")
		const most = 9
		if err != nil || !(decimals <= most) || decimals != math.Trunc(decimals) {
			return rows.Wrong("NutrientDecimals", fmt.Sprintf("%.40q is not a number of decimals", rows.Text("NutrientDecimals")))
		}
		unit, label := strings.TrimSpace(rows.Text("NutrientUnit")), strings.TrimSpace(rows.Text("NutrientName"))
		if unit == "" || label == "" {
			return rows.Wrong("NutrientID", "the unit or the name of column "+number+" is empty")
		}
		r.byNumber[number] = len(r.columns)
		r.fates = append(r.fates, column{id: row.ID(r.tableID), factor: row.Factor, limit: math.Pow10(-int(decimals)) / 2 * row.Factor})
		r.columns = append(r.columns, food.Column{
			ID: row.ID(r.tableID), Number: number, Name: label, Unit: unit, Decimals: int(decimals), Constituent: row.Fate == table.Mapped,
		})
		return nil
	})
}

// readSources reads NUTRIENT SOURCE.
func (r *reader) readSources() error {
	kinds := table.SourceKinds(name)
	r.bySource = map[string]int{}
	return r.each(sourceFile, "NutrientSourceID", []string{"NutrientSourceDescription"}, func(rows *table.Rows) error {
		code := rows.Text("NutrientSourceID")
		kind := kinds[code]
		r.bySource[code] = len(r.origins)
		r.origins = append(r.origins, origin{id: "src" + code, analysed: kind.Analysed, assumed: kind.Assumed})
		r.works = append(r.works, source.Work{
			ID: "src" + code, Citation: title + ", source " + code + ": " + strings.TrimSpace(rows.Text("NutrientSourceDescription")),
			Licence: licence, Grade: kind.Grade, Note: kind.Why,
		})
		return nil
	})
}

// readPairs reads an optional file of a code and its meaning.
func (r *reader) readPairs(file, key, meaning string) (map[string]string, error) {
	byCode := map[string]string{}
	if !table.Has(r.files, file) {
		return byCode, nil
	}
	err := r.each(file, key, []string{meaning}, func(rows *table.Rows) error {
		byCode[rows.Text(key)] = strings.TrimSpace(rows.Text(meaning))
		return nil
	})
	return byCode, err
}
