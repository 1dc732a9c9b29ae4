package cli

import (
	"context"
	"fmt"
	"runtime/debug"
	"time"

	"github.com/spf13/cobra"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/source"
	"sipsum/internal/store"
	"sipsum/internal/tables"
	"sipsum/internal/tables/table"
)

// whileLoading is how much more than what is kept may lie about before the collector runs, in per cent: a load
// keeps little and throws away much. The limit of memory holds all the same.
const whileLoading = 400

// loadMemory is that limit. SQLite's own memory and the program's come on top: two million foods stay below 400 MiB
// together.
const loadMemory = 240 << 20

func newTable(a *app) *cobra.Command {
	return group("table", "load, list and remove public food-composition tables",
		newTableLoad(a), newTableList(a), newTableRemove(a), newTableFormats(a), newTableDiff(a))
}

func newTableLoad(a *app) *cobra.Command {
	var as string
	var force bool
	cmd := &cobra.Command{
		Use: "load FORMAT|auto PATH", Short: "load a release of a published table, whole or not at all",
		Args: exactly(2, "a format (or auto) and a path; see: sipsum table formats"),
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.tableLoad(cmd.Context(), args[0], args[1], as, force)
		},
	}
	cmd.Flags().StringVar(&as, "as", "", "keep the table under this id (default: the format's name)")
	cmd.Flags().BoolVar(&force, "force", false, "load even if it has fewer foods than its edition or the table that it replaces, or is loaded already")
	return cmd
}

func (a *app) tableLoad(ctx context.Context, format, path, as string, force bool) error {
	f, err := formatFor(format, path)
	if err != nil {
		return err
	}
	if as == "" {
		as = f.Name
	}
	switch {
	case !food.IsTableID(as):
		return fail.New(fail.Wrong, "a table cannot be called \""+as+"\"", "use small letters, digits and hyphens, such as sr-2015")
	case as == "own" || (as == store.Core) != (f.Name == store.Core):
		return fail.New(fail.Wrong, "the id \""+as+"\" is taken by sipsum itself", "choose another with --as")
	}
	db, err := a.keeping(ctx)
	if err != nil {
		return err
	}
	release, err := f.Open(ctx, path, as)
	if err != nil {
		return err
	}
	progress := a.progress(as, release.Count)
	in := store.Incoming{
		Table: release.Table, Columns: release.Columns, Works: release.Works, Foods: release.Foods, Force: force, Judge: judge(release.Table),
	}
	if force {
		in.Judge = nil
	}
	defer debug.SetGCPercent(debug.SetGCPercent(whileLoading))
	if a.streams.Env("GOMEMLIMIT") == "" {
		defer debug.SetMemoryLimit(debug.SetMemoryLimit(loadMemory))
	}
	loaded, err := db.Load(ctx, in, progress.step)
	progress.done()
	if err != nil {
		return err
	}
	if _, known := table.WholeOf(release.Table.Format, release.Table.Edition); !known && len(table.Editions(release.Table.Format)) > 0 {
		a.note("sipsum does not know this edition of " + as + " and cannot tell whether it is whole")
	}
	if a.json() {
		return jsonreport.Loaded(a.streams.Out, as, release.Table.Edition, loaded.Foods, loaded.Values, loaded.Already)
	}
	what := "loaded"
	if loaded.Already {
		what = "already loaded, nothing written"
	}
	_, err = fmt.Fprintf(a.streams.Out, "%s (%s): %s, %s foods, %s values\n", as, release.Table.Edition, what, thousands(loaded.Foods), thousands(loaded.Values))
	return err
}

// judge refuses a release that may be cut off: one with fewer foods or values than
// its edition has, or than the table that it would replace.
func judge(t source.Table) func(store.Loaded, *store.Info) error {
	const do = "take the files from the publisher again, or load them all the same with --force"
	return func(loaded store.Loaded, replaces *store.Info) error {
		less := func(than string, foods, values int) error {
			switch {
			case loaded.Foods < foods:
				return fail.New(fail.Wrong, fmt.Sprintf("%s (%s) has %s foods, %s has %s: it may be cut off", t.ID, t.Edition, thousands(loaded.Foods), than, thousands(foods)), do)
			case loaded.Values < values:
				return fail.New(fail.Wrong, fmt.Sprintf("%s (%s) has %s values, %s has %s: it may be cut off", t.ID, t.Edition, thousands(loaded.Values), than, thousands(values)), do)
			}
			return nil
		}
		if whole, known := table.WholeOf(t.Format, t.Edition); known {
			if err := less("edition "+whole.Name, whole.Foods, whole.Values); err != nil {
				return err
			}
		}
		if replaces == nil {
			return nil
		}
		return less(fmt.Sprintf("the loaded table (%s), which it would replace,", replaces.Edition), replaces.Foods, replaces.Values)
	}
}

func formatFor(name, path string) (table.Format, error) {
	if name == "auto" {
		if f, ok := tables.Sniff(path); ok {
			return f, nil
		}
		return table.Format{}, fail.New(fail.Wrong, "no known format fits "+path, "see what each needs: sipsum table formats")
	}
	f, ok := tables.Find(name)
	if !ok {
		return table.Format{}, fail.New(fail.Wrong, "unknown format \""+name+"\"", "see: sipsum table formats")
	}
	return f, nil
}

func newTableList(a *app) *cobra.Command {
	return &cobra.Command{
		Use: "list", Short: "the loaded tables", Args: exactly(0, "no argument"),
		RunE: func(cmd *cobra.Command, _ []string) error {
			db, err := a.store(cmd.Context())
			if err != nil {
				return err
			}
			infos, err := db.Tables(cmd.Context())
			if err != nil {
				return err
			}
			if a.json() {
				list := make([]jsonreport.Table, len(infos))
				for i, t := range infos {
					list[i] = jsonreport.Table{Table: t.Table, Foods: t.Foods, Values: t.Values, LoadedAt: t.LoadedAt.Format(time.RFC3339)}
				}
				return jsonreport.Tables(a.streams.Out, list)
			}
			list := make([]textreport.Table, len(infos))
			for i, t := range infos {
				list[i] = textreport.Table{Table: t.Table, Foods: t.Foods, Values: t.Values}
			}
			return textreport.Tables(a.streams.Out, list, a.style())
		},
	}
}

func newTableRemove(a *app) *cobra.Command {
	return &cobra.Command{
		Use: "remove ID", Short: "take a table out of the database", Args: exactly(1, "the id of a table; see: sipsum table list"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if args[0] == store.Core {
				return fail.New(fail.Wrong, "the core table is part of sipsum and cannot be removed", "")
			}
			db, err := a.keeping(cmd.Context())
			if err != nil {
				return err
			}
			if err := db.Remove(cmd.Context(), args[0]); err != nil {
				return err
			}
			if a.json() {
				return jsonreport.Removed(a.streams.Out, args[0])
			}
			_, err = fmt.Fprintf(a.streams.Out, "%s removed\n", args[0])
			return err
		},
	}
}

func newTableFormats(a *app) *cobra.Command {
	return &cobra.Command{
		Use: "formats", Short: "the formats that sipsum reads, and what each needs", Args: exactly(0, "no argument"),
		RunE: func(*cobra.Command, []string) error {
			if a.json() {
				var list []jsonreport.Format
				for _, f := range tables.Formats() {
					list = append(list, jsonreport.Format{Name: f.Name, Title: f.Title, Licence: f.Licence, Needs: f.Needs})
				}
				return jsonreport.Formats(a.streams.Out, list)
			}
			var list []textreport.Format
			for _, f := range tables.Formats() {
				list = append(list, textreport.Format{Name: f.Name, Title: f.Title, Licence: f.Licence, Needs: f.Needs})
			}
			return textreport.Formats(a.streams.Out, list, a.style())
		},
	}
}
