package cnf

import (
	"fmt"
	"math"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// amount is a row of NUTRIENT AMOUNT, in the unit stored.
type amount struct {
	column, origin, n int32
	value, sd         float64 // sd None if not stated
}

// readAmounts reads NUTRIENT AMOUNT, whose rows need not be in any order.
func (r *reader) readAmounts() (map[string][]amount, error) {
	rows, err := r.open(valueFile, "FoodID", "NutrientID", "NutrientValue", "StandardError", "NumberofObservations", "NutrientSourceID")
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	all := make(map[string][]amount, r.foods)
	err = rows.Each(func() error {
		code := rows.Text("FoodID")
		if !r.codes[code] {
			return rows.Wrong("FoodID", fmt.Sprintf("food %.40q is not in %s", code, foodFile))
		}
		a, err := r.amount(rows)
		if err != nil {
			return err
		}
		for _, other := range all[code] {
			if other.column == a.column {
				return rows.Wrong("NutrientID", fmt.Sprintf("food %s has column %s twice", code, rows.Text("NutrientID")))
			}
		}
		all[code] = append(all[code], a)
		return nil
	})
	return all, err
}

// amount reads the current row.
func (r *reader) amount(rows *table.Rows) (amount, error) {
	none := amount{}
	col, ok := r.byNumber[rows.Text("NutrientID")]
	if !ok {
		return none, rows.Wrong("NutrientID", fmt.Sprintf("column %.40q is not in %s", rows.Text("NutrientID"), columnFile))
	}
	from, ok := r.bySource[rows.Text("NutrientSourceID")]
	if !ok {
		return none, rows.Wrong("NutrientSourceID", fmt.Sprintf("source %.40q is not in %s", rows.Text("NutrientSourceID"), sourceFile))
	}
	value, err := rows.Number("NutrientValue")
	if err != nil {
		return none, err
	}
	if !food.Stated(value) {
		return none, rows.Wrong("NutrientValue", "the value is empty")
	}
	standardError, err := rows.Number("StandardError")
	if err != nil {
		return none, err
	}
	n, err := rows.Number("NumberofObservations")
	if err != nil {
		return none, err
	}
	if food.Stated(n) && (n != math.Trunc(n) || n > math.MaxInt32) {
		return none, rows.Wrong("NumberofObservations", fmt.Sprintf("%.40q is not a whole number", rows.Text("NumberofObservations")))
	}
	factor := r.fates[col].factor
	a := amount{column: int32(col), origin: int32(from), value: value * factor, sd: food.None}
	if food.Stated(n) {
		a.n = int32(n)
	}
	if a.n >= 1 && standardError > 0 {
		a.sd = standardError * math.Sqrt(n) * factor
	}
	if math.IsInf(a.value, 0) || math.IsInf(a.sd, 0) {
		return none, rows.Wrong("NutrientValue", "the number is too large")
	}
	if what := table.CannotBe(r.value(a)); what != "" {
		return none, rows.Wrong("NutrientValue", fmt.Sprintf("%.40q %s", rows.Text("NutrientValue"), what))
	}
	return a, nil
}

// value says what a row means.
func (r *reader) value(a amount) food.Value {
	col, from := r.fates[a.column], r.origins[a.origin]
	v := table.NewValue(col.id, from.id, "")
	v.Amount, v.SD, v.N = a.value, a.sd, int(a.n)
	switch {
	case a.value == 0 && from.assumed:
		v.State = estimate.Assumed
	case a.value == 0 && (a.n >= 1 || from.analysed):
		v.State, v.Amount, v.Limit = estimate.Below, food.None, col.limit
	case a.value > 0 && from.analysed:
		v.State = estimate.Measured
	default:
		v.State = estimate.Calculated
	}
	return v
}
