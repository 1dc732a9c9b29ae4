package cli

import (
	"context"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/caution"
	"sipsum/internal/claims"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/food"
	"sipsum/internal/invent"
	"sipsum/internal/recipe"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
)

// inventAsked are the flags of a fit that looks for foods.
type inventAsked struct {
	from    []string
	without []string
	design  int
}

func (q *inventAsked) flags(f *pflag.FlagSet) {
	f.StringSliceVar(&q.from, "from", nil, "find what to put in: up to three foods of these tables, how prepared, and how much")
	f.IntVar(&q.design, "design", 1, "with --from and --write: which design to write")
}

// asked reports whether foods are looked for, and what does not go together.
func (q *inventAsked) asked(cmd *cobra.Command, wish *fit.Wish) (bool, error) {
	switch looks := cmd.Flags().Changed("from"); {
	case looks && len(q.from) == 0:
		return true, fail.New(fail.Wrong, "--from names no table", "write one, such as --from core")
	case looks && wish != nil:
		return true, fail.New(fail.Wrong, "--from looks for foods that meet the targets of the file, and a ready wish keeps all others of it", "write the wish under targets, or leave --from out")
	case !looks && cmd.Flags().Changed("design"):
		return false, fail.New(fail.Wrong, "--design is of what --from finds", "add --from core")
	case cmd.Flags().Changed("design") && !cmd.Flags().Changed("write"):
		return true, fail.New(fail.Wrong, "--design says which design is written, and nothing says where", "add --write FILE, or leave it out: every design is printed")
	case q.design < 1:
		return true, fail.New(fail.Wrong, fmt.Sprintf("there is no design %d", q.design), "designs are counted from 1")
	default:
		return looks, nil
	}
}

// invent looks for what to put into a drink so that it meets its targets.
func (f fitter) invent(ctx context.Context, q inventAsked) error {
	if f.arg == "-" {
		return fail.New(fail.Wrong, "what came in by the standard input cannot be read twice", "save it to a file first, and fit that")
	}
	d, faults, err := f.read(f.arg)
	if err != nil {
		return err
	}
	if len(d.Targets) == 0 && faults.Err(fail.Wrong) == nil {
		return fail.New(fail.Wrong, "the drink has no targets, and nothing says what to look for", "write what it should be: targets: [serving(MALAC) >= 200 mg, \"ratio(MALAC, CITAC) >= 2\", serving(SUGAR) <= 8 g]")
	}
	found, err := f.lookUp(ctx, d, faults)
	if err != nil {
		return err
	}
	foods, err := f.foodsOf(ctx, q.from)
	if err != nil {
		return err
	}
	filter, err := unwanted(q.without)
	if err != nil {
		return err
	}
	k, err := f.inventing(ctx, found)
	if err != nil {
		return err
	}
	res, err := invent.Find(ctx, k, foods, filter)
	if err != nil {
		return err
	}
	s, err := f.sheetOf(ctx, res.Before.After)
	if err != nil {
		return err
	}
	inv := &sheet.Invented{Sheet: s, Result: res, From: q.from}
	for _, design := range res.Designs {
		of, err := f.sheetOf(ctx, design.After)
		if err != nil {
			return err
		}
		inv.Sheets = append(inv.Sheets, of)
	}
	if f.out.path != "" && len(res.Designs) > 0 {
		if err := f.writeDesign(ctx, res, q.design); err != nil {
			return err
		}
		inv.Written, inv.WrittenDesign = f.out.path, q.design
	}
	if len(res.Designs) == 0 && !res.Already {
		f.findings = fail.Findings
	}
	if f.json() {
		return jsonreport.Invented(f.streams.Out, inv)
	}
	return textreport.Leaf(f.streams.Out, sheet.InventedLeaf(inv), f.style())
}

// inventing is with what designs are made.
func (f fitter) inventing(ctx context.Context, found *recipe.Recipe) (invent.Kitchen, error) {
	name, text, open, err := f.drinkText(f.arg)
	if err != nil {
		return invent.Kitchen{}, err
	}
	bench, err := f.bench(ctx, found)
	if err != nil {
		return invent.Kitchen{}, err
	}
	lib, err := f.library(ctx)
	if err != nil {
		return invent.Kitchen{}, err
	}
	return invent.Kitchen{
		Bench: bench, Recipe: found, Text: text, Aims: fit.Read(found.Drink, &fail.List{}), Foods: lib, Seed: f.options.seed,
		Read: func(ctx context.Context, text []byte) (fit.Bench, error) {
			d, faults := drink.ParseBeside(name, text, open, besideFile(f.arg, open))
			found, err := f.lookUp(ctx, d, faults)
			if err != nil {
				return fit.Bench{}, err
			}
			return f.bench(ctx, found)
		},
		Hurts: func(ctx context.Context, a *assay.Assay) ([]caution.Caution, error) {
			s, err := f.sheetOf(ctx, a)
			if err != nil {
				return nil, err
			}
			var list []caution.Caution
			for _, c := range s.Cautions() {
				list = append(list, c.Caution)
			}
			return list, nil
		},
	}, nil
}

// foodsOf gives the foods of tables, in their order.
func (f fitter) foodsOf(ctx context.Context, tables []string) ([]*food.Food, error) {
	lib, err := f.library(ctx)
	if err != nil {
		return nil, err
	}
	var list []*food.Food
	for _, id := range tables {
		id = strings.ToLower(strings.TrimSpace(id))
		if _, loaded, err := lib.db.Table(ctx, id); err != nil || !loaded {
			if err == nil {
				err = fail.New(fail.NeedsTable, fmt.Sprintf("there is no table %q", id), "see: sipsum table list; load one with: sipsum table load auto PATH")
			}
			return nil, err
		}
		all, err := shelf{lib, ctx}.Table(id)
		if err != nil {
			return nil, err
		}
		list = append(list, all...)
	}
	return list, nil
}

// unwanted reads --without: allergens, and groups of foods by their words.
func unwanted(words []string) (invent.Filter, error) {
	var f invent.Filter
	for _, word := range words {
		leaves, groups := allergen.LeavesOf(word), claims.GroupsCalled(word)
		if len(leaves)+len(groups) == 0 {
			return f, fail.New(fail.Wrong, fmt.Sprintf("there is no allergen and no group of foods %q", word), "write an allergen ("+strings.Join(allergen.Words(), ", ")+"), or a word of a group: citrus, wine, syrup")
		}
		f.Leaves, f.Groups = append(f.Leaves, leaves...), append(f.Groups, groups...)
	}
	return f, nil
}

// writeDesign writes the drink with a design, if it reads as the design was calculated.
func (f fitter) writeDesign(ctx context.Context, res *invent.Result, n int) error {
	if n < 1 || n > len(res.Designs) {
		return fail.New(fail.Wrong, fmt.Sprintf("there is no design %d to write", n), fmt.Sprintf("give a number up to %d", len(res.Designs)))
	}
	d := res.Designs[n-1]
	return f.keep(ctx, d.Text, d.After)
}
