package core

import (
	"fmt"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// value reads a row of values.csv.
func (r *reader) value(rows *table.Rows) error {
	f, err := r.owner(rows)
	if err != nil {
		return err
	}
	c, ok := constituent.Find(rows.Text("constituent"))
	if !ok {
		return rows.Wrong("constituent", fmt.Sprintf("constituent %.40q is not in the vocabulary", rows.Text("constituent")))
	}
	if _, twice := f.Value(c.ID); twice {
		return rows.Wrong("constituent", fmt.Sprintf("food %s has %s twice", f.ID.Code, c.ID))
	}
	v := food.Value{Constituent: c.ID, Limit: food.None, Source: rows.Text("source"), Ref: rows.Text("ref")}
	if v.State, err = state(rows); err != nil {
		return err
	}
	faults := fail.List{}
	v.Amount = number(rows, &faults, "amount")
	v.SD = number(rows, &faults, "sd")
	v.Low = number(rows, &faults, "low")
	v.High = number(rows, &faults, "high")
	points := number(rows, &faults, "n")
	if err := faults.Err(fail.Wrong); err != nil {
		return err
	}
	if food.Stated(points) {
		if v.N = int(points); float64(v.N) != points {
			return rows.Wrong("n", fmt.Sprintf("%.40q is not a whole number", rows.Text("n")))
		}
	}
	if err := r.settle(rows, &v); err != nil {
		return err
	}
	if what := table.CannotBe(v); what != "" {
		return rows.Wrong("amount", fmt.Sprintf("%.40q %s", rows.Text("amount"), what))
	}
	r.used[c.ID] = true
	f.Values = append(f.Values, v)
	return nil
}

// settle checks that amount, state and sources go together, and moves the limit
// of a value without amount from high to its place.
func (r *reader) settle(rows *table.Rows, v *food.Value) error {
	without := v.State >= estimate.Trace
	switch {
	case without && food.Stated(v.Amount):
		return rows.Wrong("amount", fmt.Sprintf("a value that is %s has no amount", v.State))
	case !without && !food.Stated(v.Amount):
		return rows.Wrong("amount", fmt.Sprintf("a value that is %s needs an amount", v.State))
	case food.Stated(v.Low) && food.Stated(v.High) && v.Low > v.High:
		return rows.Wrong("low", "low is above high")
	}
	if without {
		v.Limit, v.High = v.High, food.None
	}
	ids := strings.Fields(v.Source)
	if len(ids) == 0 {
		return rows.Wrong("source", "a value without a source")
	}
	for _, id := range ids {
		if !r.known[id] {
			return rows.Wrong("source", fmt.Sprintf("source %.40q is not in %s", id, sourceFile))
		}
	}
	return nil
}
