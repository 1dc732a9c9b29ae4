package cli

import (
	"cmp"
	"context"
	"slices"

	"sipsum/internal/food"
	"sipsum/internal/store"
)

// rankByKin gives the foods to which their kin give what is ranked, the one with the
// highest figure first: no table states it of them.
func rankByKin(ctx context.Context, db *store.DB, q store.Ranking) ([]store.Ranked, error) {
	if !food.SharedByKin(q.Of) || q.MinN > 0 {
		return nil, nil
	}
	groups := food.GroupsWithKin()
	if len(q.Groups) > 0 {
		groups = slices.DeleteFunc(groups, func(g string) bool { return !slices.Contains(q.Groups, g) })
	}
	if len(groups) == 0 {
		return nil, nil
	}
	ids, err := db.WithAny(ctx, food.Splittable(), q.Tables, groups)
	if err != nil {
		return nil, err
	}
	foods, err := db.Foods(ctx, ids)
	if err != nil {
		return nil, err
	}
	var list []store.Ranked
	for _, f := range foods {
		f = food.WithKin(f)
		v, ok := f.Value(q.Of)
		if !ok || v.By != food.ByKin {
			continue
		}
		x := store.Ranked{ID: f.ID, Name: f.Name(), Group: f.Group, Value: v, Per: food.None, Figure: v.Amount}
		if q.Per != "" {
			per, ok := f.Value(q.Per)
			if !ok || !(per.Amount > q.MoreThan) {
				continue
			}
			x.Per, x.Figure = per.Amount, v.Amount/per.Amount
		}
		list = append(list, x)
	}
	slices.SortStableFunc(list, func(a, b store.Ranked) int { return cmp.Compare(b.Figure, a.Figure) })
	return list, nil
}

// rankWithKin gives foods to use as store.Rank does, and among them those that have their
// figure by their kin.
func rankWithKin(ctx context.Context, db *store.DB, q store.Ranking, use func(store.Ranked) (bool, error)) error {
	kin, err := rankByKin(ctx, db, q)
	if err != nil {
		return err
	}
	enough := false
	before := func(figure float64) (err error) {
		for !enough && err == nil && len(kin) > 0 && kin[0].Figure > figure {
			x := kin[0]
			kin = kin[1:]
			var more bool
			more, err = use(x)
			enough = !more
		}
		return err
	}
	err = db.Rank(ctx, q, func(x store.Ranked) (bool, error) {
		if err := before(x.Figure); err != nil || enough {
			return false, err
		}
		more, err := use(x)
		enough = !more
		return more, err
	})
	if err != nil {
		return err
	}
	return before(0)
}
