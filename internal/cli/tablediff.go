package cli

import (
	"context"

	"github.com/spf13/cobra"

	"sipsum/internal/fail"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/store"
	"sipsum/internal/tables/difference"
)

func newTableDiff(a *app) *cobra.Command {
	return &cobra.Command{
		Use: "diff OLD NEW", Short: "what changed from one loaded edition of a table to another",
		Long: "diff compares two loaded tables food by food, by code: foods that came or went, names and values that\n" +
			"are not what they were. Load the second edition under another id with --as.",
		Args: exactly(2, "the ids of two loaded tables; see: sipsum table list"),
		RunE: func(cmd *cobra.Command, args []string) error { return a.tableDiff(cmd.Context(), args[0], args[1]) },
	}
}

func (a *app) tableDiff(ctx context.Context, old, new string) error {
	db, err := a.store(ctx)
	if err != nil {
		return err
	}
	if old == new {
		return fail.New(fail.Wrong, "a table does not differ from itself", "load the other edition with --as ID")
	}
	before, err := edition(ctx, db, old)
	if err != nil {
		return err
	}
	after, err := edition(ctx, db, new)
	if err != nil {
		return err
	}
	added, removed := difference.Columns(before.Columns, after.Columns)
	var changes []difference.Change
	for change, err := range difference.Compare(before, after) {
		if err != nil {
			return err
		}
		changes = append(changes, change)
	}
	if a.json() {
		return jsonreport.Diff(a.streams.Out, old, new, added, removed, changes)
	}
	return textreport.Diff(a.streams.Out, old, new, added, removed, changes, a.style())
}

func edition(ctx context.Context, db *store.DB, table string) (difference.Edition, error) {
	columns, err := db.Columns(ctx, table)
	return difference.Edition{Columns: columns, Foods: db.All(ctx, table)}, err
}
