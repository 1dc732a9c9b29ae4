package recipe

import (
	"errors"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// need is a table that a line names and that is not loaded.
type need struct {
	at  fail.Place
	err *fail.Error
}

// missing gives the error of tables that are needed: their own if nothing else is wrong,
// else they are told with the faults of the file.
func (r *resolver) missing() error {
	if len(r.needs) == 0 {
		return nil
	}
	if r.faults.Len() == 0 {
		return r.needs[0].err
	}
	for _, n := range r.needs {
		r.faults.Join(n.at, n.err)
	}
	return nil
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
	return f
}

func (r *resolver) find(text string) (*food.Food, error) {
	table, code, coded := strings.Cut(text, ":")
	if coded && table == food.Own {
		if f, ok := r.own[code]; ok {
			return f, nil
		}
		return nil, fail.New(fail.Wrong, "no own food "+note.Quote(code)+" under foods:", r.suggest(text))
	}
	if !coded {
		if f, err := r.ownNamed(text); f != nil || err != nil {
			return f, err
		}
		id, ok, err := r.foods.Named(r.ctx, text)
		if err != nil {
			return nil, err
		}
		if !ok {
			if _, own := r.own[text]; own {
				return nil, fail.New(fail.Wrong, "no component and no food is called "+note.Quote(text), "write own:"+text+" for the food under foods:")
			}
			return nil, fail.New(fail.Wrong, "no component and no food is called "+note.Quote(text), r.suggest(text))
		}
		return r.foods.Food(r.ctx, id)
	}
	return r.foods.Food(r.ctx, food.ID{Table: table, Code: code})
}

// ownNamed gives the own food that is called so; nil if none is. Of two that share the
// name nobody can tell which is meant.
func (r *resolver) ownNamed(name string) (*food.Food, error) {
	var found []string
	for _, o := range r.drink.Foods { // in the order of the file
		if o.Name == name && r.own[o.Code] != nil {
			found = append(found, food.Own+":"+o.Code)
		}
	}
	switch len(found) {
	case 0:
		return nil, nil
	case 1:
		return r.own[strings.TrimPrefix(found[0], food.Own+":")], nil
	}
	return nil, fail.New(fail.Wrong, note.Quote(name)+" is the name of more than one own food", "write the one you mean: "+strings.Join(found, " or "))
}

func (r *resolver) suggest(text string) string {
	near := r.foods.Near(r.ctx, text)
	if len(near) == 0 {
		return "search with: sipsum food find WORDS"
	}
	return "near: " + strings.Join(near, ", ")
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
