package cli

import (
	"context"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/source"
	"sipsum/internal/store"
)

func newFood(a *app) *cobra.Command {
	return group("food", "find and show foods", newFoodFind(a), newFoodShow(a), newFoodRank(a), newFoodCompare(a))
}

func newFoodFind(a *app) *cobra.Command {
	var limit int
	var groups []string
	cmd := &cobra.Command{
		Use: "find WORDS", Short: "foods whose names have these words, or nearly",
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) > 0 {
				return nil
			}
			return exactly(1, "words to look for")(cmd, args)
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.foodFind(cmd.Context(), strings.Join(args, " "), groups, limit)
		},
	}
	cmd.Flags().IntVar(&limit, "limit", 20, "the most foods to list")
	cmd.Flags().StringSliceVar(&groups, "group", nil, "only these food groups")
	return cmd
}

func (a *app) foodFind(ctx context.Context, words string, groups []string, limit int) error {
	if limit < 1 {
		return fail.New(fail.Wrong, "--limit must be at least 1", "")
	}
	groups, err := groupsOf(groups, false)
	if err != nil {
		return err
	}
	db, err := a.store(ctx)
	if err != nil {
		return err
	}
	hits, err := a.find(ctx, db, words, groups, limit)
	if err != nil {
		return err
	}
	if a.json() {
		list := make([]jsonreport.Hit, len(hits))
		for i, h := range hits {
			list[i] = jsonreport.Hit{Food: h.ID.String(), Name: h.Name, Matched: h.Matched, Near: h.Near, Label: h.Label}
		}
		return jsonreport.Hits(a.streams.Out, words, list)
	}
	list := make([]textreport.Hit, len(hits))
	for i, h := range hits {
		list[i] = textreport.Hit{ID: h.ID.String(), Name: h.Name, Matched: h.Matched, Near: h.Near, Label: h.Label}
	}
	return textreport.Hits(a.streams.Out, list, a.style())
}

// find searches for the words and for what the trade calls the same thing, and
// gives near misses only if neither finds anything.
func (a *app) find(ctx context.Context, db *store.DB, words string, groups []string, limit int) ([]store.Hit, error) {
	var hits []store.Hit
	for _, strict := range []bool{true, false} {
		for _, query := range append([]string{words}, food.OtherWords(words)...) {
			found, err := db.Find(ctx, store.Query{Words: query, Tables: a.options.tables, Groups: groups, Limit: limit, Strict: strict})
			if err != nil {
				return nil, err
			}
			for _, h := range found {
				if len(hits) < limit && !slices.ContainsFunc(hits, func(x store.Hit) bool { return x.ID == h.ID }) {
					hits = append(hits, h)
				}
			}
		}
		if len(hits) > 0 {
			break
		}
	}
	return hits, nil
}

func newFoodShow(a *app) *cobra.Command {
	return &cobra.Command{
		Use: "show FOOD", Short: "everything a table says about one food, with sources", Args: exactly(1, "one food: table:code, or an exact name"),
		RunE: func(cmd *cobra.Command, args []string) error { return a.foodShow(cmd.Context(), args[0]) },
	}
}

func (a *app) foodShow(ctx context.Context, text string) error {
	db, err := a.store(ctx)
	if err != nil {
		return err
	}
	x, err := library{db: db, tables: a.options.tables}.stocked(ctx, text)
	if err != nil {
		return err
	}
	if a.json() {
		return jsonreport.Food(a.streams.Out, x.food, x.columns, x.cited)
	}
	return textreport.Food(a.streams.Out, x.food, x.columns, x.cited, a.style())
}

// stocked is a food with all that its table says of it.
type stocked struct {
	food    *food.Food
	columns []food.Column
	cited   func(id string) (source.Work, bool)
}

// stocked finds a food by its code or its exact name.
func (l library) stocked(ctx context.Context, text string) (stocked, error) {
	id, err := l.identify(ctx, text)
	if err != nil {
		return stocked{}, err
	}
	f, err := l.db.Food(ctx, id)
	if err != nil {
		return stocked{}, err
	}
	f = food.WithKin(f)
	columns, err := l.db.Columns(ctx, f.ID.Table)
	works := l.works(ctx)
	return stocked{f, columns, func(id string) (source.Work, bool) { return works(f.ID.Table, id) }}, err
}

// identify finds the food that a text names.
func (l library) identify(ctx context.Context, text string) (food.ID, error) {
	if id, ok := food.ParseID(text); ok {
		return id, nil
	}
	id, ok, err := l.Named(ctx, text)
	if err != nil {
		return food.ID{}, err
	}
	if !ok {
		do := "search with: sipsum food find " + text
		if near := l.Near(ctx, text); len(near) > 0 {
			do = "did you mean " + fail.Or(near) + "?"
		}
		return food.ID{}, fail.New(fail.Wrong, "no food is called \""+text+"\"", do)
	}
	return id, nil
}
