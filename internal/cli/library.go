package cli

import (
	"context"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/store"
)

// library is the store as the assay wants it: with the tables that the user
// chose for bare names.
type library struct {
	db     *store.DB
	tables []string
}

// nearest is how many foods an error suggests.
const nearest = 3

func (l library) Food(ctx context.Context, id food.ID) (*food.Food, error) {
	return l.db.Food(ctx, id)
}

func (l library) Named(ctx context.Context, name string) (food.ID, bool, error) {
	tables := l.tables
	if len(tables) == 0 {
		tables = []string{store.Core}
	}
	return l.db.ByName(ctx, name, tables)
}

func (l library) Near(ctx context.Context, text string) []string {
	hits, err := l.db.Near(ctx, text, nearest)
	if err != nil {
		return nil // a suggestion that fails is no suggestion
	}
	var list []string
	for _, h := range hits {
		list = append(list, h.ID.String()+` "`+h.Name+`"`)
	}
	return list
}

// works finds the works behind values, reading each table's list once.
func (l library) works(ctx context.Context) func(table, id string) (source.Work, bool) {
	known := map[string]map[string]source.Work{}
	return func(table, id string) (source.Work, bool) {
		list, ok := known[table]
		if !ok {
			list = map[string]source.Work{}
			all, err := l.db.Works(ctx, table)
			if err != nil {
				all = nil // without its works a table's figures are shown without citations
			}
			for _, w := range all {
				list[w.ID] = w
			}
			known[table] = list
		}
		w, ok := list[id]
		return w, ok
	}
}

// shelf is a library of which claims rank foods.
type shelf struct {
	library
	ctx context.Context // of one judgement of the claims of a drink
}

func (s shelf) Called(name string) (*food.Food, error) {
	id, coded := food.ParseID(name)
	if !coded {
		found, ok, err := s.Named(s.ctx, name)
		if err != nil {
			return nil, err
		}
		if id = found; !ok {
			do := "look it up: sipsum food find " + name
			if near := s.Near(s.ctx, name); len(near) > 0 {
				do = "did you mean " + fail.Or(near) + "?"
			}
			return nil, fail.New(fail.Wrong, "no food is called \""+name+"\"", do)
		}
	}
	return s.db.Food(s.ctx, id)
}

func (s shelf) Table(id string) ([]*food.Food, error) {
	var all []*food.Food
	for f, err := range s.db.All(s.ctx, id) {
		if err != nil {
			return nil, err
		}
		all = append(all, f)
	}
	return all, nil
}
