package proof

import (
	"context"
	"slices"

	"sipsum/internal/fail"
	"sipsum/internal/food"
)

// Library finds the foods of a pack, and no others.
type Library struct {
	foods map[string]*food.Food // by code
	names map[string]string
}

// Missing lists the rows that a pack does not hold, since they may not be handed on.
func (in *Inputs) Missing() []food.ID {
	var list []food.ID
	for _, r := range in.Rows {
		if r.Says == nil {
			id, _ := food.ParseID(r.Food)
			list = append(list, id)
		}
	}
	return list
}

// Holds reports whether a row is one of the pack's, by its digest.
func (in *Inputs) Holds(row Row) bool {
	return slices.ContainsFunc(in.Rows, func(r Row) bool { return r.Food == row.Food && r.Digest == row.Digest })
}

// Library gives the foods of a pack; beside are those that it does not hold.
func (in *Inputs) Library(beside []*food.Food) *Library {
	l := &Library{foods: map[string]*food.Food{}, names: map[string]string{}}
	for _, f := range beside {
		l.foods[f.ID.String()] = f
	}
	for i := range in.Rows {
		if r := &in.Rows[i]; r.Says != nil {
			l.foods[r.Food] = r.food()
		}
	}
	for _, n := range in.Names {
		l.names[n.Text] = n.Row
	}
	return l
}

// Food gives the food of a code.
func (l *Library) Food(_ context.Context, id food.ID) (*food.Food, error) {
	text := id.String()
	if row, ok := l.names[text]; ok {
		text = row
	}
	if f, ok := l.foods[text]; ok {
		return f, nil
	}
	return nil, fail.New(fail.Wrong, "the pack holds no row "+id.String(), "")
}

// Named gives the row that the drink calls so.
func (l *Library) Named(_ context.Context, name string) (food.ID, bool, error) {
	row, ok := l.names[name]
	if !ok {
		return food.ID{}, false, nil
	}
	id, coded := food.ParseID(row)
	return id, coded, nil
}

// Near suggests nothing: a pack has no other foods.
func (l *Library) Near(context.Context, string) []string { return nil }

// Differ names the rows of a pack that another library has otherwise, and those that it has not. found
// gives a food; an error that needs a table means that nobody can tell.
func (in *Inputs) Differ(found func(food.ID) (*food.Food, error)) (differ, absent []string, err error) {
	for _, r := range in.Rows {
		id, _ := food.ParseID(r.Food)
		switch f, err := found(id); {
		case fail.ExitCode(err) == fail.NeedsTable:
			absent = append(absent, r.Food+": the table "+id.Table+" is not loaded here")
		case fail.ExitCode(err) == fail.Wrong:
			differ = append(differ, r.Food+": there is no such food here")
		case err != nil:
			return nil, nil, err
		default:
			if own := published(f); f.ID != id || own.Digest() != r.Digest {
				differ = append(differ, r.Food+": "+r.Says.unlike(own))
			}
		}
	}
	return differ, absent, nil
}

// unlike tells what another row says otherwise: the values first.
func (p *Published) unlike(here *Published) string {
	if p == nil {
		return "the row here is another than that of the digest"
	}
	for _, v := range p.Values {
		switch own, ok := here.Find(v.Of); {
		case !ok:
			return v.Of + " is " + v.Words() + " in the pack, and here there is none"
		case digest(own) != digest(v):
			return v.Of + " is " + v.Words() + " in the pack, and here " + own.Words()
		}
	}
	for _, v := range here.Values {
		if _, ok := p.Find(v.Of); !ok {
			return v.Of + " is " + v.Words() + " here, and in the pack there is none"
		}
	}
	return "its names, portions, density or marks are other ones"
}
