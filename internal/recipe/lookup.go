package recipe

import (
	"errors"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// need is a table that a line names and that is not loaded.
type need struct {
	at  fail.Place
	err *fail.Error
}

// missing tells of tables that are needed, each at its line, and which exit code the faults have: that
// of a needed table if nothing else is wrong.
func (r *resolver) missing() fail.Code {
	exit := fail.Wrong
	if len(r.needs) > 0 && r.faults.Len() == 0 {
		exit = fail.NeedsTable
	}
	for _, n := range r.needs {
		r.faults.Join(n.at, n.err)
	}
	return exit
}

// lookup finds a food by the text of a line.
func (r *resolver) lookup(text string, at fail.Place) *food.Food {
	if f, ok := r.found[text]; ok {
		return f
	}
	f, err := r.find(text)
	var e *fail.Error
	switch {
	case err == nil:
	case fail.ExitCode(err) == fail.Wrong && errors.As(err, &e):
		r.faults.Join(at, e)
	case fail.ExitCode(err) == fail.NeedsTable && errors.As(err, &e):
		r.needs = append(r.needs, need{at, e})
	default:
		r.stop = err
	}
	r.found[text] = f // nil too: one fault a text is enough
	if f != nil && f.ID.Table != food.Own {
		r.out.Rows[text] = f
	}
	return f
}

func (r *resolver) find(text string) (*food.Food, error) {
	id, coded := food.ParseID(text)
	switch {
	case !coded:
		return r.named(text)
	case id.Table == food.Own:
		return r.ownCoded(id.Code)
	}
	f, err := r.foods.Food(r.ctx, id)
	if do := plainCode(id.Code); do != "" && err != nil && fail.ExitCode(err) == fail.Wrong {
		return nil, fail.New(fail.Wrong, "there is no food "+id.String(), do)
	}
	return f, err
}

// possible reports a food of a table that prints what no food can have: of such a row
// nothing can be believed. Own foods have been checked value by value.
func (r *resolver) possible(f *food.Food, at fail.Place) bool {
	if f.ID.Table == food.Own {
		return true
	}
	for _, v := range f.Values {
		if what := food.Impossible(v, unit.LimitOf("rounding of a label", "share").High); what != "" {
			r.faults.Add(at, "take another row, or describe the food under foods: by its label", "%s has %s, as its table prints it, and that cannot be", f.ID, what)
			return false
		}
	}
	return true
}
