package cli

import (
	"context"
	"fmt"
	"math"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/recipe"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
	"sipsum/internal/unit"
)

// wishes are the flags of a fit that ask for a ready target.
type wishes struct{ less, more, by, sweeter string }

func newFit(a *app) *cobra.Command {
	var ask wishes
	var other swapAsked
	var from inventAsked
	var without []string
	out := output{drink: true}
	cmd := &cobra.Command{
		Use: "fit DRINK", Short: "amounts at which a drink meets its targets",
		Long: "fit looks for the amounts at which the targets of a drink are met (targets: in its file), moves as little as\n" +
			"it can, and tells what stops it. vary: says which amounts may move; without it each line of the build may,\n" +
			"between half and twice. Ready targets: --less sour, --more sweet --by 10%, of " + fail.Or(fit.Qualities()) + ";\n" +
			"the other qualities and the size of a serving are kept, each within the least that a judge notices of it: about a\n" +
			"fifth of sweetness, a tenth of all else. --swap FOOD looks for a food in the place of one that\n" +
			"the drink pours, --without an allergen or with --less sugar, fitted so that nothing else moves more than it\n" +
			"must. --from core,sr looks for foods of these tables that, poured on top of the drink as it is written, meet its\n" +
			"targets: up to three, how prepared and how much; several designs, each with how surely it holds.\n" +
			"Nothing is written but with --write FILE: a copy of the drink with what was found, comments kept. A target\n" +
			"that is missed, and a swap that keeps less than it should, end with exit code 3.",
		Args: exactly(1, drinkArgument),
		RunE: func(cmd *cobra.Command, args []string) error {
			other.without, from.without = without, without
			switch looks := cmd.Flags().Changed("from"); {
			case out.replaces && out.path == "":
				return fail.New(fail.Wrong, "--replace says that a file may go, and nothing says which", "add --write FILE, or leave it out")
			case looks && other.food != "":
				return fail.New(fail.Wrong, "--swap looks for one food in the place of another, and --from for what to pour on top", "ask for one, then for the other")
			case !looks && other.food == "" && len(without) > 0:
				return fail.New(fail.Wrong, "--without says what is not to be in it, and nothing says what is looked for", "add --swap FOOD or --from core")
			case other.food != "":
				return other.run(cmd.Context(), fitter{drinks{a}, args[0], out}, ask)
			}
			wish, err := ask.read()
			if err == nil {
				err = out.copies(a, args[0])
			}
			if err != nil {
				return err
			}
			f := fitter{drinks{a}, args[0], out}
			looks, err := from.asked(cmd, wish)
			switch {
			case err != nil:
				return err
			case looks:
				return f.invent(cmd.Context(), from)
			}
			return f.run(cmd.Context(), wish)
		},
	}
	f := cmd.Flags()
	f.StringVar(&ask.less, "less", "", "a quality to have less of: "+strings.Join(fit.Qualities(), ", ")+"; with --swap a constituent, as sugars")
	f.StringVar(&ask.more, "more", "", "a quality to have more of")
	f.StringVar(&ask.by, "by", "", "by how much, as 20% (default: what a judge notices)")
	f.StringVar(&ask.sweeter, "sweeter", "", "short for --more sweet --by")
	other.flags(f)
	from.flags(f)
	f.StringSliceVar(&without, "without", nil, "with --swap or --from: no food with this allergen; with --from also none of groups with this word, such as citrus")
	f.StringVar(&out.path, "write", "", "write a copy of the drink with the amounts found to this file")
	f.BoolVar(&out.replaces, "replace", false, "write over the file of --write if there is one")
	return cmd
}

// read gives the wish of the flags; nil if there is none.
func (w wishes) read() (*fit.Wish, error) {
	if w.sweeter != "" {
		if w.less+w.more+w.by != "" {
			return nil, fail.New(fail.Wrong, "--sweeter is a wish of its own", "leave out --less, --more and --by")
		}
		w.more, w.by = string(fit.Sweet), w.sweeter
	}
	switch {
	case w.less != "" && w.more != "":
		return nil, fail.New(fail.Wrong, "--less and --more are two wishes", "ask for one at a time, and write the other under targets")
	case w.less+w.more == "" && w.by != "":
		return nil, fail.New(fail.Wrong, "--by says how much, and nothing says of what", "add --less sour, or --more sweet")
	case w.less+w.more == "":
		return nil, nil
	}
	wish := &fit.Wish{Quality: fit.Quality(strings.ToLower(w.less + w.more)), More: w.more != ""}
	if !fit.IsQuality(string(wish.Quality)) {
		return nil, fail.New(fail.Wrong, fmt.Sprintf("there is no quality %q", w.less+w.more), "use one of: "+strings.Join(fit.Qualities(), ", "))
	}
	if w.by == "" {
		return wish, nil
	}
	by, rest, err := unit.ParseAmount(w.by)
	if err != nil || rest != "" || by.Measure.Kind != unit.Share || by.Number <= 0 || !wish.More && by.Base() >= 1 {
		return nil, fail.New(fail.Wrong, fmt.Sprintf("--by cannot be %q", w.by), "give a share of what is there, such as --by 20%")
	}
	wish.By = by.Base()
	return wish, nil
}

// copies sees to it that what is written can be read as a drink, and spares what is there.
func (o *output) copies(a *app, arg string) error {
	if o.path != "" && !strings.HasSuffix(o.path, ".yaml") && !strings.HasSuffix(o.path, ".yml") {
		return fail.New(fail.Wrong, o.path+" would not be read as a drink", "end its name with "+drinkEnding)
	}
	if o.path != "" && arg == "-" {
		return fail.New(fail.Wrong, "what came in by the standard input cannot be read twice", "save it to a file first, and fit that")
	}
	return o.spares(a, []string{arg})
}

// fitter fits one drink.
type fitter struct {
	drinks
	arg string
	out output
}

func (f fitter) run(ctx context.Context, wish *fit.Wish) error {
	d, faults, err := f.read(f.arg)
	if err != nil {
		return err
	}
	if len(d.Targets) == 0 && wish == nil && faults.Err(fail.Wrong) == nil {
		return fail.New(fail.Wrong, "the drink has no targets", "write what it should reach: targets: [serving(SUGAR) <= 8 g, ph() between 3.6 and 4.0]; or ask for one: --less sour")
	}
	found, err := f.lookUp(ctx, d, faults)
	if err != nil {
		return err
	}
	bench, err := f.bench(ctx, found)
	if err != nil {
		return err
	}
	fitted, err := f.fitted(ctx, bench, wish)
	if err != nil {
		return err
	}
	if f.out.path != "" {
		if err := f.write(ctx, bench, fitted.Result); err != nil {
			return err
		}
		fitted.Written = f.out.path
	}
	if !fitted.Met || sheet.Contradicted(fitted.Sheet) || fitted.TooMuch() {
		f.findings = fail.Findings
	}
	if f.json() {
		return jsonreport.Fit(f.streams.Out, fitted)
	}
	return textreport.Fit(f.streams.Out, fitted, f.style())
}

// fitted fits a drink, and gathers what is told of it.
func (f fitter) fitted(ctx context.Context, bench fit.Bench, wish *fit.Wish) (*sheet.Fitted, error) {
	aims, remarks := fit.Read(bench.Drink, &fail.List{}), []string(nil)
	if wish != nil {
		ready, said, err := bench.Wished(ctx, *wish)
		if err != nil {
			return nil, err
		}
		aims, remarks = append(aims, ready...), said
	}
	res, err := bench.Fit(ctx, aims)
	if err != nil {
		return nil, err
	}
	s, err := f.sheetOf(ctx, res.After)
	if err != nil {
		return nil, err
	}
	fitted := sheet.Fit(s, res, remarks)
	written, err := f.sheetOf(ctx, res.Before)
	if err != nil {
		return nil, err
	}
	fitted.Raise(written)
	return fitted, nil
}

// bench prepares a drink for a fit.
func (f fitter) bench(ctx context.Context, found *recipe.Recipe) (fit.Bench, error) {
	b := f.plans(found)
	as, err := b.Central.Run(ctx, nil, assay.Want{})
	if err != nil {
		return b, err
	}
	s, err := f.sheetOf(ctx, as)
	if err == nil {
		b.Declared = sheet.Declares(s)
	}
	return b, err
}

// plans prepares a drink, of which nobody asks what it declares.
func (f fitter) plans(found *recipe.Recipe) fit.Bench {
	return fit.Bench{
		Central: assay.Prepare(found, estimate.Ensemble{Seed: f.options.seed, N: 1}),
		Drawn:   assay.Prepare(found, f.ensemble()), Drink: found.Drink,
	}
}

func (f fitter) ensemble() estimate.Ensemble {
	return estimate.Ensemble{Seed: f.options.seed, N: f.options.draws + 1}
}

func (f fitter) sheetOf(ctx context.Context, a *assay.Assay) (*sheet.Sheet, error) {
	return f.sheetUnder(ctx, a, nil)
}

func (f fitter) sheetUnder(ctx context.Context, a *assay.Assay, rules []string) (*sheet.Sheet, error) {
	lib, err := f.library(ctx)
	if err != nil {
		return nil, err
	}
	tables, err := loadedTables(ctx, lib.db)
	if err != nil {
		return nil, err
	}
	return sheet.Build("sipsum "+Version, a, tables, lib.works(ctx), rules)
}

// write writes a copy of the drink with the amounts of an answer, if it reads as the answer does.
func (f fitter) write(ctx context.Context, b fit.Bench, res *fit.Result) error {
	_, text, _, err := f.drinkText(f.arg)
	if err != nil {
		return err
	}
	next, err := amount.Rewrite(b.Drink, text, b.Central.Written(), res.Amounts())
	if err != nil {
		return err
	}
	return f.keep(ctx, next, res.After)
}

// keep writes a text, if it reads as the drink that was calculated.
func (f fitter) keep(ctx context.Context, text []byte, want *assay.Assay) error {
	if err := f.reads(ctx, text, want); err != nil {
		return err
	}
	return put(f.out.path, text)
}

// reads sees to it that a text, where it is to stand, is the drink that was calculated.
func (f fitter) reads(ctx context.Context, text []byte, want *assay.Assay) error {
	open := func(path string) ([]byte, error) {
		if !filepath.IsAbs(path) {
			path = filepath.Join(filepath.Dir(f.out.path), path)
		}
		return f.readAll(path, mostText, "the copy takes from shelves by their path: write it beside the drink")
	}
	d, faults := drink.ParseBeside(f.out.path, text, open, open)
	found, err := f.lookUp(ctx, d, faults)
	if err != nil {
		return err
	}
	got, err := assay.Prepare(found, f.ensemble()).Run(ctx, nil, want.Want)
	if err != nil {
		return err
	}
	if at := differs(got, want); at != "" {
		return fail.New(fail.Failed, "the copy would not give the figures of the answer: "+at+" differs", "write the amounts by hand")
	}
	return nil
}

// differs names a figure in which two runs differ by more than arithmetic leaves.
func differs(a, b *assay.Assay) string {
	near := func(x, y float64) bool {
		return math.IsNaN(x) && math.IsNaN(y) || math.Abs(x-y) <= unit.Closeness*math.Max(1, math.Max(math.Abs(x), math.Abs(y)))
	}
	if !near(a.Mass.Mean, b.Mass.Mean) || !near(a.Volume.Mean, b.Volume.Mean) {
		return "the serving"
	}
	for _, f := range b.PerServing {
		got, ok := a.PerServing.Find(f.Constituent.ID)
		if !ok || !near(got.Mean, f.Mean) || !near(got.WithBounds, f.WithBounds) {
			return sheet.WordsFor(f.Constituent)
		}
	}
	return ""
}
