package cnf

import (
	"fmt"
	"slices"

	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// readPortions reads CONVERSION FACTOR, if it is there with MEASURE NAME.
func (r *reader) readPortions() (map[string][]food.Portion, error) {
	all := map[string][]food.Portion{}
	if !table.Has(r.files, portionFile) || !table.Has(r.files, measureFile) {
		return all, nil
	}
	rows, err := r.open(portionFile, "FoodID", "MeasureID", "ConversionFactorValue")
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	seen := map[[2]string]bool{}
	err = rows.Each(func() error {
		code, measure := rows.Text("FoodID"), rows.Text("MeasureID")
		if seen[[2]string{code, measure}] {
			return rows.Wrong("MeasureID", fmt.Sprintf("food %s has measure %.40q twice", code, measure))
		}
		seen[[2]string{code, measure}] = true
		p, err := r.portion(rows)
		if err != nil {
			return err
		}
		all[code] = append(all[code], named(p, all[code]))
		return nil
	})
	return all, err
}

// portion reads the current row.
func (r *reader) portion(rows *table.Rows) (food.Portion, error) {
	none := food.Portion{}
	if code := rows.Text("FoodID"); !r.codes[code] {
		return none, rows.Wrong("FoodID", fmt.Sprintf("food %.40q is not in %s", code, foodFile))
	}
	measure := r.measures[rows.Text("MeasureID")]
	if measure == "" {
		return none, rows.Wrong("MeasureID", fmt.Sprintf("measure %.40q is not in %s", rows.Text("MeasureID"), measureFile))
	}
	factor, err := rows.Number("ConversionFactorValue")
	if err != nil {
		return none, err
	}
	if !(factor*100 < 1e12) { // NaN too: an empty factor
		return none, rows.Wrong("ConversionFactorValue", fmt.Sprintf("%.40q is not a factor", rows.Text("ConversionFactorValue")))
	}
	return food.Portion{Name: measure, Grams: factor * 100, SD: food.None}, nil
}

// named gives a second measure of the same name a name of its own.
func named(p food.Portion, others []food.Portion) food.Portion {
	name := p.Name
	for n := 2; slices.ContainsFunc(others, func(o food.Portion) bool { return o.Name == p.Name }); n++ {
		p.Name = fmt.Sprintf("%s~%d", name, n)
	}
	return p
}
