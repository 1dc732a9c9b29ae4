package cli

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"sipsum/internal/across"
	"sipsum/internal/amount"
	"sipsum/internal/contrast"
	"sipsum/internal/fail"
	"sipsum/internal/label"
	"sipsum/internal/recipe"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
)

func newCompare(a *app) *cobra.Command {
	var rules, tables []string
	cmd := &cobra.Command{
		Use: "compare DRINK DRINK", Short: "what a drink, or a version of it, has more or less than another",
		Long: "compare calculates two drinks, or two versions of one, in the same draws, so that what is the same in\n" +
			"both goes out and only the change shows: in words, in figures with intervals, what makes them, what\n" +
			"the files say otherwise, and which allergens and cautions come or go. The first drink is A, and the\n" +
			"second, B, is set against it. With --across one drink goes through the tables of several agencies: how\n" +
			"far they lie apart, beside its interval, and on which food they disagree.",
		Args: func(cmd *cobra.Command, args []string) error {
			if cmd.Flags().Changed("across") {
				return exactly(1, drinkArgument+", beside --across")(cmd, args)
			}
			return exactly(2, "two drinks: each a file, - for the standard input, demo, or demo:NAME")(cmd, args)
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if cmd.Flags().Changed("across") {
				return drinks{a}.across(cmd.Context(), args[0], tables)
			}
			c, err := drinks{a}.compare(cmd.Context(), args, rules)
			if err != nil {
				return err
			}
			if c.ToDecide() {
				a.findings = fail.Findings
			}
			if a.json() {
				return jsonreport.Compared(a.streams.Out, c)
			}
			return textreport.Leaf(a.streams.Out, c.Leaf(), a.style())
		},
	}
	rulesFlag(cmd, &rules)
	cmd.Flags().StringSliceVar(&tables, "across", nil, "one drink by these tables, which are loaded: "+strings.Join(across.Tables(), ","))
	return cmd
}

// compare calculates two drinks in one ensemble, under the same rules.
func (a drinks) compare(ctx context.Context, args, rules []string) (*sheet.Compared, error) {
	if args[0] == "-" && args[1] == "-" {
		return nil, fail.New(fail.Wrong, "both drinks are the standard input", "name a file for one of them")
	}
	for _, r := range rules {
		if err := label.Check(r, label.Facts{ServingG: 1}); err != nil {
			return nil, err
		}
	}
	found, err := a.findAll(ctx, args)
	if err != nil {
		return nil, err
	}
	return a.contrast(ctx, args, found, rules)
}

// contrast calculates two drinks whose foods are found; args are what they are called.
func (a drinks) contrast(ctx context.Context, args []string, found []*recipe.Recipe, rules []string) (*sheet.Compared, error) {
	if len(rules) == 0 {
		rules = rulesOf(found)
	}
	streams, err := a.streamsOf(ctx, args, found)
	if err != nil {
		return nil, err
	}
	figures := sheet.ComparedFigures(found[0].Drink, found[1].Drink)
	var both [2]*sheet.Sheet
	var faults fail.List
	for i, f := range found {
		both[i], err = a.calculate(ctx, f, asked{rules: rules, figures: figures, streams: streams[i]}, nil)
		if err = note(&faults, fail.Place{File: args[i]}, err); err != nil {
			return nil, err
		}
	}
	if err := faults.Err(fail.Wrong); err != nil {
		return nil, err
	}
	return sheet.Compare(both[0], both[1]), nil
}

// streamsOf names the streams of the amounts of two drinks, so that what stands in both is drawn
// alike.
func (a drinks) streamsOf(ctx context.Context, args []string, found []*recipe.Recipe) ([2]amount.Streams, error) {
	var heard [2]amount.Written
	var streams [2]amount.Streams
	var faults fail.List
	for i, f := range found {
		all, err := contrast.Written(ctx, f)
		if err = note(&faults, fail.Place{File: args[i]}, err); err != nil {
			return streams, err
		}
		heard[i] = all
	}
	streams[0], streams[1] = contrast.Streams(heard[0], heard[1])
	return streams, faults.Err(fail.Wrong)
}
