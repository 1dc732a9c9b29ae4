package cli

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"slices"

	"github.com/spf13/cobra"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/proof"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
	"sipsum/internal/tables/core"
)

func newVerify(a *app) *cobra.Command {
	var here bool
	cmd := &cobra.Command{
		Use: "verify FILE", Short: "calculate a proof pack anew from what is in it, and tell what moved",
		Long: "verify reads a file that prove wrote, takes its figures away, calculates them anew from the drink and the\n" +
			"rows in the pack, and compares: what is printed has to be the same, what is stored to a thousand-millionth.\n" +
			"It needs no table, but for rows that may not be handed on. What does not agree is named, with exit code 1.\n" +
			"With --here it also compares the rows with the tables on this machine; where they differ the exit code is 3.",
		Args: exactly(1, "one file that sipsum prove wrote"),
		RunE: func(cmd *cobra.Command, args []string) error {
			v, err := drinks{a}.verify(cmd.Context(), args[0], here)
			if err != nil {
				return err
			}
			if a.json() {
				err = jsonreport.Verdict(a.streams.Out, v)
			} else {
				err = textreport.Verdict(a.streams.Out, v, a.style())
			}
			a.findings = foundBy(v)
			return err
		},
	}
	cmd.Flags().BoolVar(&here, "here", false, "compare the rows with the tables on this machine, too")
	return cmd
}

// foundBy gives the exit code of a verdict.
func foundBy(v *proof.Verdict) fail.Code {
	switch {
	case !v.Same():
		return fail.Failed
	case len(v.Differ) > 0:
		return fail.Findings
	case len(v.Absent) > 0:
		return fail.NeedsTable
	}
	return fail.OK
}

// verify checks a pack.
func (a drinks) verify(ctx context.Context, path string, here bool) (*proof.Verdict, error) {
	file, err := a.readAll(path, int64(proof.MostBytes())+1, "check the name, or write one with: sipsum prove DRINK -o FILE.html")
	if err != nil {
		return nil, err
	}
	opened, err := proof.Read(file)
	if err != nil {
		return nil, inFile(path, err)
	}
	v := &proof.Verdict{Pack: opened, Program: program, Broken: opened.Broken, Here: here}
	v.Constants = proof.ConstantsDiffer(opened.Constants, proof.ProgramConstants())
	if v.SameProgram() && opened.Page && len(v.Broken) == 0 {
		if v.Broken, err = samePage(opened.Pack, file); err != nil {
			return nil, err
		}
	}
	if v.SameProgram() {
		if err := ownSources(ctx, v); err != nil {
			return nil, err
		}
	}
	beside, err := a.beside(ctx, v)
	if err != nil {
		return nil, err
	}
	if err := a.anew(ctx, v, beside); err != nil {
		return nil, err
	}
	if here {
		lib, err := a.library(ctx)
		if err != nil {
			return nil, err
		}
		v.Differ, v.Absent, err = opened.Differ(func(id food.ID) (*food.Food, error) { return lib.Food(ctx, id) })
		if err != nil {
			return nil, err
		}
		tables, err := loadedTables(ctx, lib.db)
		if err != nil {
			return nil, err
		}
		v.Differ = append(v.Differ, opened.SourcesDiffer(tables, lib.works(ctx))...)
	}
	return v, nil
}

// ownSources holds what a pack says of the table that is part of the program, and of its rows, to what the program says: that
// needs no database.
func ownSources(ctx context.Context, v *proof.Verdict) error {
	release, err := core.Format.Open(ctx, "", "")
	if err != nil {
		return err
	}
	for _, t := range v.Pack.Tables {
		if t.ID == release.Table.ID && t.Hash != release.Table.Hash {
			v.Broken = append(v.Broken, "the table "+t.ID+" of the pack is not the one of the program that it names")
		}
	}
	v.Broken = append(v.Broken, v.Pack.SourcesDiffer([]source.Table{release.Table}, func(_, id string) (source.Work, bool) {
		i := slices.IndexFunc(release.Works, func(w source.Work) bool { return w.ID == id })
		if i < 0 {
			return source.Work{}, false
		}
		return release.Works[i], true
	})...)
	own := map[food.ID]*food.Food{}
	for f, err := range release.Foods {
		if err != nil {
			return err
		}
		slices.SortFunc(f.Values, func(a, b food.Value) int { return cmp.Compare(a.Constituent, b.Constituent) }) // as a database gives them
		own[f.ID] = f
	}
	of := proof.Inputs{Rows: slices.DeleteFunc(slices.Clone(v.Pack.Rows), func(r proof.Row) bool {
		id, _ := food.ParseID(r.Food)
		return id.Table != release.Table.ID
	})}
	differ, _, err := of.Differ(func(id food.ID) (*food.Food, error) {
		if f := own[id]; f != nil {
			return f, nil
		}
		return nil, fail.New(fail.Wrong, "no such food", "")
	})
	for _, x := range differ {
		v.Broken = append(v.Broken, "a row is not the program's own: "+x)
	}
	return err
}

// inFile says in which file the faults of an error are.
func inFile(path string, err error) error {
	var e *fail.Error
	if errors.As(err, &e) {
		for i := range e.Faults {
			e.Faults[i].File = path
		}
	}
	return err
}

// samePage says what is wrong with a page that is not the one of its pack.
func samePage(p *proof.Pack, file []byte) ([]string, error) {
	var page bytes.Buffer
	if err := writePack(&page, p, true); err != nil {
		return nil, err
	}
	if bytes.Equal(page.Bytes(), file) {
		return nil, nil
	}
	return []string{"the page around the pack is not the one that this program writes of it"}, nil
}

// beside gives the rows that a pack may not hold, from the tables here; one that is another than that
// of its digest speaks against the pack.
func (a drinks) beside(ctx context.Context, v *proof.Verdict) ([]*food.Food, error) {
	ids := v.Pack.Missing()
	if len(ids) == 0 {
		return nil, nil
	}
	db, err := a.store(ctx)
	if err != nil {
		return nil, err
	}
	foods, err := db.Foods(ctx, ids)
	if err != nil {
		return nil, err
	}
	for i, f := range foods {
		if row := proof.RowOf(f, ""); !v.Pack.Holds(row) {
			v.Broken = append(v.Broken, "the row "+ids[i].String()+" of the table here is not the one of the pack's digest")
		}
	}
	return foods, nil
}

// anew calculates the figures of a pack from its inputs, and compares.
func (a drinks) anew(ctx context.Context, v *proof.Verdict, beside []*food.Food) error {
	least, most := drink.Draws()
	if v.Pack.Draws < least || v.Pack.Draws > most {
		v.Failed = "nobody draws so often"
		return nil
	}
	in := v.Pack.Inputs // without the figures
	s, err := a.recalculate(ctx, &in, beside)
	switch {
	case ctx.Err() != nil:
		return ctx.Err()
	case err != nil:
		v.Failed = err.Error()
		return nil
	}
	if s.Assay.Drink.Name != v.Pack.Drink || !slices.Equal(in.Unproven, v.Pack.Unproven) {
		v.Broken = append(v.Broken, "the pack calls the drink or its claims otherwise than its drink file")
	}
	v.Moved = proof.Compare(v.Pack.Figures, sheet.ProofOf(s), !v.SameProgram())
	return nil
}
