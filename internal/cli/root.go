package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"sipsum/internal/fail"
)

// Version is the program's version, as in every document.
const Version = "0.1.0"

// program is the program as documents name it.
const program = "sipsum " + Version

func newRoot(a *app) *cobra.Command {
	root := group("sipsum", "numbers behind a signature drink: composition, evidence, card, allergens",
		newAssay(a), newBrief(a), newEvidence(a), newSheet(a), newCard(a), newAllergens(a), newLog(a), newBatch(a), newMenu(a), newCompare(a), newFit(a), newProve(a), newVerify(a),
		newFood(a), newTable(a), newNew(a), newMeters(a), newServe(a), newSchema(a), newVersion(a),
	)
	root.Long = "sipsum reads a drink from a YAML file, follows every preparation step, and says what is in a\n" +
		"serving, which component brings it, how sure the figure is and where it comes from.\n\n" +
		"Begin with: sipsum sheet demo"
	root.SilenceErrors, root.SilenceUsage = true, true
	root.PersistentPreRunE = func(cmd *cobra.Command, _ []string) error { return a.check(cmd) }
	root.CompletionOptions.DisableDefaultCmd = true
	flags := root.PersistentFlags()
	flags.StringVar(&a.options.db, "db", "", "database file (default: $SIPSUM_DB, else the user's data folder)")
	flags.StringSliceVar(&a.options.tables, "tables", nil, "only these tables, in this order, for bare names and search")
	flags.StringVar(&a.options.format, "format", formatText, "text or json; of assay also jsonl; of card, allergens, batch and menu also html, svg, md, csv")
	flags.IntVar(&a.options.draws, "draws", usualDraws, "draws of the ensemble")
	flags.Uint64Var(&a.options.seed, "seed", 1, "seed of the draws")
	flags.BoolVar(&a.options.quiet, "quiet", false, "no progress, no notes")
	flags.BoolVar(&a.options.noColour, "no-colour", false, "no colour on a terminal")
	root.SetFlagErrorFunc(flagFault)
	root.SetHelpTemplate(root.HelpTemplate() + exitCodes())
	return root
}

// exitCodes is the table of exit codes that every help text ends with.
func exitCodes() string {
	var b strings.Builder
	b.WriteString("\nExit codes:\n")
	for _, m := range fail.Meanings() {
		fmt.Fprintf(&b, "  %3d  %s\n", m.Code, m.Meaning)
	}
	return b.String()
}

// exactly wants n arguments and says in words which.
func exactly(n int, what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) == n {
			return nil
		}
		return fail.New(fail.Wrong, fmt.Sprintf("%s wants %s", cmd.CommandPath(), what), "see: "+cmd.CommandPath()+" --help")
	}
}

// group is a command that only holds others.
func group(use, short string, commands ...*cobra.Command) *cobra.Command {
	g := &cobra.Command{
		Use: use, Short: short, Args: cobra.ArbitraryArgs, // unknown words are RunE's to refuse, in our words
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) > 0 {
				return fail.New(fail.Wrong, fmt.Sprintf("unknown command %q for %s", args[0], cmd.CommandPath()), "see: "+cmd.CommandPath()+" --help")
			}
			return cmd.Help()
		},
	}
	g.AddCommand(commands...)
	return g
}
