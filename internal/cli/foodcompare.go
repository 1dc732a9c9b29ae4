package cli

import (
	"context"
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/store"
)

// mostCompared is how many foods fit side by side.
const mostCompared = 6

func newFoodCompare(a *app) *cobra.Command {
	var all bool
	cmd := &cobra.Command{
		Use: "compare FOOD …", Short: "foods side by side, or one core food across tables",
		Long: "compare sets foods side by side. With --all it takes one core food and the same food of every loaded\n" +
			"table. Figures that differ by more than their spreads explain are marked.",
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) > 1 || (all && len(args) == 1) {
				return nil
			}
			return exactly(2, "two foods or more, or one core food with --all")(cmd, args)
		},
		RunE: func(cmd *cobra.Command, args []string) error { return a.foodCompare(cmd.Context(), args, all) },
	}
	cmd.Flags().BoolVar(&all, "all", false, "the same food in every loaded table")
	return cmd
}

func (a *app) foodCompare(ctx context.Context, args []string, all bool) error {
	db, err := a.store(ctx)
	if err != nil {
		return err
	}
	lib := library{db: db, tables: a.options.tables}
	var ids []food.ID
	var missing []string
	for _, arg := range args {
		id, err := lib.identify(ctx, arg)
		if err != nil {
			return err
		}
		ids = append(ids, id)
	}
	if all {
		if ids, missing, err = counterparts(ctx, db, ids[0]); err != nil {
			return err
		}
		ids = atMost(ids, a.note)
		if len(ids) == 1 {
			a.note("no loaded table holds the same food as " + ids[0].String() + ": load one that does with \"sipsum table load\"")
		}
	}
	if len(ids) > mostCompared {
		return fail.New(fail.Wrong, "more than six foods do not fit side by side", "compare fewer")
	}
	foods, err := db.Foods(ctx, ids)
	if err != nil {
		return err
	}
	for i, f := range foods {
		foods[i] = food.WithKin(f)
	}
	lines := food.Compare(foods)
	if a.json() {
		return jsonreport.Compare(a.streams.Out, foods, lines, missing)
	}
	return textreport.Compare(a.streams.Out, foods, lines, missing, a.style())
}

// atMost leaves the foods that do not fit side by side out, those that match worst, and notes which.
func atMost(ids []food.ID, note func(string)) []food.ID {
	if len(ids) <= mostCompared {
		return ids
	}
	var out []string
	for _, id := range ids[mostCompared:] {
		out = append(out, id.String())
	}
	note("more than six foods do not fit side by side, left out (compare them by name): " + strings.Join(out, ", "))
	return ids[:mostCompared]
}

// counterparts gives a core food and the same food of the loaded tables, whatever the name
// that a table was loaded under, and the ids of those that no loaded table holds.
func counterparts(ctx context.Context, db *store.DB, id food.ID) (ids []food.ID, missing []string, err error) {
	if id.Table != store.Core {
		return nil, nil, fail.New(fail.Wrong, id.String()+" is not a core food", "--all starts from a core food, such as core:lemon-juice")
	}
	tables, err := db.Tables(ctx)
	if err != nil {
		return nil, nil, err
	}
	ids = []food.ID{id}
	for _, other := range food.Counterparts(id.Code) {
		found, err := heldBy(ctx, db, tables, other)
		if err != nil {
			return nil, nil, err
		}
		if ids = append(ids, found...); len(found) == 0 {
			missing = append(missing, other.String())
		}
	}
	if len(ids) == 1 && len(missing) == 0 {
		return nil, nil, fail.New(fail.Wrong, "no table is known to have the same food as "+id.String(), "compare it with a food of your choice")
	}
	return ids, missing, nil
}

// heldBy gives a food in each of the tables that were loaded from its format and hold it.
func heldBy(ctx context.Context, db *store.DB, tables []store.Info, id food.ID) (found []food.ID, err error) {
	for _, t := range tables {
		if t.Format != id.Table {
			continue
		}
		here := food.ID{Table: t.ID, Code: id.Code}
		switch _, err := db.Food(ctx, here); {
		case err == nil:
			found = append(found, here)
		case !errors.Is(err, store.ErrNoFood):
			return nil, err
		}
	}
	return found, nil
}
