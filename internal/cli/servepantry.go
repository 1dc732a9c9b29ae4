package cli

import (
	"context"

	"sipsum/internal/food"
	"sipsum/internal/ladder"
	"sipsum/internal/web"
)

func (k kitchen) Find(ctx context.Context, words string, most int) ([]web.Hit, error) {
	db, err := k.store(ctx)
	if err != nil {
		return nil, err
	}
	hits, err := k.find(ctx, db, words, nil, most)
	if err != nil {
		return nil, err
	}
	list := make([]web.Hit, len(hits))
	for i, h := range hits {
		f, err := db.Food(ctx, h.ID)
		if err != nil {
			return nil, err
		}
		list[i] = web.Hit{Food: food.WithKin(f), Matched: h.Matched, Near: h.Near, Label: h.Label}
	}
	return list, nil
}

func (k kitchen) Food(ctx context.Context, name string) (*web.Stock, error) {
	lib, err := k.library(ctx)
	if err != nil {
		return nil, err
	}
	stocked, err := lib.stocked(ctx, name)
	if err != nil {
		return nil, err
	}
	return &web.Stock{Food: stocked.food, Columns: stocked.columns, Cited: stocked.cited}, nil
}

func (k kitchen) Rank(ctx context.Context, ask web.Ranking) (*web.Ranked, error) {
	r, err := rankOptions{per: "100g", without: ask.Without, liquid: ask.Liquid, limit: ask.Most}.ranked(ctx, k.app, ask.Of)
	if err != nil {
		return nil, err
	}
	out := &web.Ranked{Of: r.of, NoFigure: r.left.NoFigure, None: r.left.None, Left: r.without}
	for _, x := range r.foods {
		out.Foods = append(out.Foods, web.RankedFood{
			ID: x.ID, Name: x.Name, Value: x.Value, NotAssessed: x.notAssessed, OfDrinks: ofDrinks(x.Ranked), Works: r.worksBehind(x), Pure: ladder.Pure(r.of, x.Value.Amount),
		})
	}
	return out, nil
}
