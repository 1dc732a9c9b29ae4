package cli

import (
	"cmp"
	"context"
	"io"
	"time"

	"github.com/spf13/cobra"

	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/batch"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/recipe"
	"sipsum/internal/report/csv"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
	"sipsum/internal/tasting"
	"sipsum/internal/unit"
)

// batchAsked is what a command line asks of a batch.
type batchAsked struct {
	serves  int
	mass    string
	units   string
	tasters int
	paired  bool
	omit    string
	counts  string
	home    bool
	write   string
	day     string
	rules   []string
	out     output
}

func newBatch(a *app) *cobra.Command {
	var ask batchAsked
	cmd := &cobra.Command{
		Use: "batch DRINK", Short: "many serves: what to buy, what to make when, a bench card to tick off",
		Long: "batch works a drink back from so many serves, or a mass of it, through what every step keeps: what is\n" +
			"bought, what goes into each pot and when, how finely each amount has to be weighed, and how many serves\n" +
			"stay what they are. With --tasters and no drink it tells what so many tasters can find: how many have to\n" +
			"be right in a triangle test (--paired: which of two has more), and how often a difference is missed.\n" +
			"With --omit it makes a match of the drink without a component, or without the food that brings most of a\n" +
			"constituent, at equal sugar, acidity and volume, and the coded plan of a tasting of both; --counts 14/24 says\n" +
			"what the answers say. With --home it writes the recipe for a kitchen without a scale, and tells what moved.",
		Args: func(cmd *cobra.Command, args []string) error {
			if cmd.Flags().Changed("tasters") && ask.omit == "" {
				return exactly(0, "no drink beside --tasters")(cmd, args)
			}
			return exactly(1, drinkArgument)(cmd, args)
		},
	}
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		form, err := ask.out.form(a, cmd)
		if err == nil {
			err = ask.out.spares(a, args)
		}
		if err == nil {
			err = ask.check()
		}
		if err != nil {
			return err
		}
		switch {
		case ask.omit != "" && ask.home:
			return fail.New(fail.Wrong, "--omit makes a tasting, and --home a recipe for a kitchen", "ask for one, then for the other")
		case ask.omit != "":
			return drinks{a}.omit(cmd.Context(), args[0], ask, form)
		case cmd.Flags().Changed("counts"):
			return fail.New(fail.Wrong, "--counts goes with --omit", "write: sipsum batch DRINK --omit \"cherry syrup\" --counts 14/24")
		case cmd.Flags().Changed("tasters"):
			return tasters(a, ask, form)
		}
		if ask.home {
			return homely{drinks{a}, args[0], ask, form}.run(cmd.Context(), cmd)
		}
		return drinks{a}.batch(cmd.Context(), cmd, args[0], ask, form)
	}
	flags := cmd.Flags()
	flags.IntVar(&ask.serves, "serves", 0, "how many serves")
	flags.StringVar(&ask.mass, "mass", "", "how much of the finished drink, in the place of --serves: \"2 kg\"")
	flags.StringVar(&ask.units, "units", "", "us: cups, fluid ounces and spoons beside the grams, where a density is known")
	flags.IntVar(&ask.tasters, "tasters", 0, "what so many tasters can find; no drink is named")
	flags.BoolVar(&ask.paired, "paired", false, "with --tasters: which of two glasses has more, in the place of the triangle")
	flags.StringVar(&ask.omit, "omit", "", "a component, a food or a constituent: a matched variant without it, and the plan of a tasting")
	flags.StringVar(&ask.counts, "counts", "", "with --omit: how many of the tasters were right: 14/24")
	flags.BoolVar(&ask.home, "home", false, "for somebody without a scale: cups, spoons, stand-ins, and what moved (default: up to two serves)")
	flags.StringVar(&ask.write, "write", "", "with --home: write the home version to this file, as a drink")
	flags.StringVar(&ask.day, "day", time.Now().Format(time.DateOnly), "the day of the service, against what is best before a date")
	rulesFlag(cmd, &ask.rules)
	ask.out.flags(cmd, cardPaper)
	return cmd
}

// wanted reads how much is asked for.
func (q batchAsked) wanted(cmd *cobra.Command) (batch.Ask, error) {
	serves, mass := cmd.Flags().Changed("serves"), cmd.Flags().Changed("mass")
	switch {
	case q.paired:
		return batch.Ask{}, fail.New(fail.Wrong, "--paired goes with --tasters", "leave it out, or write: sipsum batch --tasters 12 --paired")
	case q.units != "" && q.units != "us":
		return batch.Ask{}, fail.New(fail.Wrong, "--units knows no \""+q.units+"\"", "write --units us; grams stand there always")
	case serves == mass:
		return batch.Ask{}, fail.New(fail.Wrong, "batch wants --serves or --mass", "write one of them: --serves 24, or --mass \"2 kg\"")
	}
	if _, ok := unit.Day(q.day); !ok {
		return batch.Ask{}, fail.New(fail.Wrong, "--day is \""+q.day+"\"", "write year, month and day: --day 2027-03-31")
	}
	if serves {
		return batch.Ask{Serves: q.serves, Day: q.day}, nil
	}
	m, rest, err := unit.ParseAmount(q.mass)
	switch {
	case err != nil || rest != "" || m.Measure.Kind != unit.Mass:
		return batch.Ask{}, fail.New(fail.Wrong, "--mass is \""+q.mass+"\"", "write a mass: --mass \"2 kg\"")
	case m.Number == 0:
		return batch.Ask{}, fail.New(fail.Wrong, "nobody makes 0 g of a drink", "write a mass: --mass \"2 kg\"")
	case m.Half > 0 || m.Exact:
		return batch.Ask{}, fail.New(fail.Wrong, "--mass is \""+q.mass+"\", and what is asked for has no ±", "write a mass: --mass \"2 kg\"")
	}
	return batch.Ask{Grams: m.Base(), Day: q.day}, nil
}

// bench is a drink with what a batch of it is judged by.
func (a drinks) bench(found *recipe.Recipe, s *sheet.Sheet) batch.Bench {
	return batch.Bench{
		Recipe: found, Declared: sheet.Declares(s), Allowed: sheet.Allowed(s), Yields: s.Assay.Yields,
		Central: assay.Prepare(found, estimate.Ensemble{Seed: a.options.seed, N: 1}),
		Hands:   assay.Prepare(found, estimate.Ensemble{Seed: a.options.seed, N: min(a.options.draws, acidity.ChemistryDraws) + 1, Only: amount.Stream}),
	}
}

func (a drinks) batch(ctx context.Context, cmd *cobra.Command, arg string, q batchAsked, form string) error {
	want, err := q.wanted(cmd)
	if err != nil {
		return err
	}
	found, err := a.found(ctx, arg)
	if err != nil {
		return err
	}
	s, err := a.calculate(ctx, found, asked{rules: q.rules}, nil)
	if err != nil {
		return err
	}
	b, err := batch.Make(ctx, a.bench(found, s), want)
	if err != nil {
		return err
	}
	if sheet.Contradicted(s) {
		a.findings = fail.Findings
	}
	return q.out.write(a.app, func(w io.Writer) error {
		switch form {
		case formatText:
			return textreport.Leaf(w, sheet.BatchLeaf(s, b, q.units != ""), q.out.style(a.app))
		case formatJSON:
			return jsonreport.Batch(w, s, b, q.units != "")
		case formatCSV:
			return csvreport.Batch(w, s, b)
		}
		return printLeaf(w, sheet.BatchLeaf(s, b, q.units != ""), form, cmp.Or(q.out.paper, cardPaper))
	})
}

// tasters tells what some tasters can find.
func tasters(a *app, q batchAsked, form string) error {
	if q.serves != 0 || q.mass != "" || q.units != "" {
		return fail.New(fail.Wrong, "--tasters makes no batch", "leave --serves, --mass and --units out")
	}
	test := tasting.Triangle
	if q.paired {
		test = tasting.Paired
	}
	p, err := tasting.Of(test, q.tasters)
	if err != nil {
		return err
	}
	l := sheet.TastingLeaf(program, p)
	return q.out.write(a, func(w io.Writer) error {
		switch form {
		case formatText:
			return textreport.Leaf(w, l, q.out.style(a))
		case formatJSON:
			return jsonreport.Tasting(w, program, p)
		case formatCSV:
			return csvreport.Leaf(w, l)
		}
		return printLeaf(w, l, form, cmp.Or(q.out.paper, cardPaper))
	})
}
