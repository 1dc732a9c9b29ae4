package cli

import (
	"cmp"
	"io"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"sipsum/internal/benchlog"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/label"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
	"sipsum/internal/speech"
)

// drinkArgument explains what DRINK may be.
const drinkArgument = "one drink: a file, - for the standard input, demo, or demo:NAME"

// view is a command that calculates a drink and prints one view of it.
type view struct {
	use, short, long string
	text             func(io.Writer, *sheet.Sheet, textreport.Style) error
	json             func(io.Writer, *sheet.Sheet) error
	ruled            bool                         // it depends on label rules
	degassed         bool                         // it can tell what is left when the gas has gone
	lots             bool                         // it can tell of the next lot
	reads            bool                         // it says which reading to take next
	findings         func(*sheet.Sheet) bool      // something needs a decision: exit code 3
	silent           bool                         // and its page does not say what
	claims           bool                         // it judges the claims of the drink
	proposes         bool                         // it says what to change, and judges the claims for that
	said             func() (*drink.Claim, error) // one in their place; nil: nobody can give one
	house            bool                         // it answers house rules

	// Of what is handed out or hung up; nil: it is not.
	leaf  func(*sheet.Sheet) *sheet.Leaf
	csv   func(io.Writer, *sheet.Sheet) error
	paper string                                                      // if nobody names one
	set   func(w io.Writer, s *sheet.Sheet, form, paper string) error // in the place of leaf and csv, of what is no leaf
	check func(form string, o *output) error                          // what does not go together; nil: everything does
}

func (a *app) command(v view) *cobra.Command {
	var rules []string
	var degassed, nextLot bool
	var house string
	var out output
	cmd := &cobra.Command{
		Use: v.use + " DRINK", Short: v.short, Long: v.long, Args: exactly(1, drinkArgument),
		RunE: func(cmd *cobra.Command, args []string) error {
			form, err := out.form(a, cmd)
			if err == nil && v.check != nil {
				err = v.check(form, &out)
			}
			if err == nil {
				err = out.spares(a, args)
			}
			if err != nil {
				return err
			}
			ask := asked{rules: rules, degassed: degassed, nextLot: nextLot, next: v.reads, whole: form == formatJSON, claims: v.claims, change: v.proposes, house: v.house, houseFile: house}
			if v.said != nil {
				if ask.said, err = v.said(); err != nil {
					return err
				}
			}
			s, err := a.sheet(cmd.Context(), args[0], ask)
			if err != nil {
				return err
			}
			if v.findings != nil && v.findings(s) {
				a.findings = fail.Findings
				if v.silent {
					for _, why := range sheet.Decisions(s) {
						a.note("to decide: " + why)
					}
				}
			}
			return out.write(a, func(w io.Writer) error { return v.print(w, s, form, out, out.style(a)) })
		},
	}
	if v.ruled {
		rulesFlag(cmd, &rules)
	}
	if v.degassed {
		cmd.Flags().BoolVar(&degassed, "degassed", false, "the pH when the gas has left, beside that of the closed drink")
	}
	if v.lots {
		cmd.Flags().BoolVar(&nextLot, "next-lot", false, "as the next lot may be, by how much those of the bench log differ, not as the one read last")
	}
	if v.house {
		cmd.Flags().StringVar(&house, "house-rules", "", "a file of rules to answer line by line (default: "+houseRulesFile+" beside the drink file, if there is one)")
	}
	if v.leaf != nil || v.set != nil {
		out.flags(cmd, v.paper)
	}
	return cmd
}

// print prints the view of a drink in a form.
func (v view) print(w io.Writer, s *sheet.Sheet, form string, o output, st textreport.Style) error {
	switch form {
	case formatText:
		return v.text(w, s, st)
	case formatJSON:
		return v.json(w, s)
	}
	switch {
	case v.set != nil:
		return v.set(w, s, form, cmp.Or(o.paper, v.paper))
	case form == formatCSV:
		return v.csv(w, s)
	}
	return printLeaf(w, v.leaf(s), form, cmp.Or(o.paper, v.paper))
}

// rulesFlag lets somebody choose under which rules a card is.
func rulesFlag(cmd *cobra.Command, rules *[]string) {
	cmd.Flags().StringSliceVar(rules, "rules", nil, "label rules: "+strings.Join(label.Rules(), ", ")+" (default: the drink's own, else "+strings.Join(label.Usual(), ", ")+")")
}

func newAssay(a *app) *cobra.Command {
	cmd := a.command(view{
		use: "assay", short: "composition of a serving, and what brings it",
		long: "assay calculates a drink and prints, per serving and per 100 ml, each constituent with its interval,\n" +
			"what is known of it, and which component brings it. With --why it tells what the interval of one figure\n" +
			"comes from; with --next, which reading at the bench would narrow the drink's figures most, and with\n" +
			"--next=POT what a titration of a pot would tell of its acids with your kit, or its next point.\n\n" +
			"With --format jsonl it assays many drinks, and prints a line of JSON for each, in the order in which they\n" +
			"are named; a folder stands for the drink files in it (*" + drinkEnding + ") and in its folders, by name. A drink\n" +
			"that is wrong has a line that says why, the others are done, and the exit code is 5.",
		text: textreport.Assay, json: jsonreport.Assay, degassed: true, lots: true, findings: sheet.Contradicted,
	})
	whole := cmd.RunE
	var why, next string
	var m many
	cmd.Flags().StringVar(&why, "why", "", "what the spread of a figure comes from: a tagname such as CITAC")
	cmd.Flags().StringVar(&next, "next", "", "readings not yet taken, by how much they narrow the sensory categories; with =POT what a titration of it would tell")
	cmd.Flags().Lookup("next").NoOptDefVal = everyPot
	m.flags(cmd)
	cmd.Annotations[handsOut] = "next"
	cmd.Use, cmd.Args = "assay DIR|DRINK …", someDrinks
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if err := m.check(a, cmd, args); err != nil {
			return err
		}
		switch {
		case m.asked(a) && why != "":
			return fail.New(fail.Wrong, "--why is of one drink", "leave --format "+formatLines+" out, and name the drink")
		case m.asked(a):
			degassed, err := cmd.Flags().GetBool("degassed")
			if err != nil {
				return err
			}
			nextLot, err := cmd.Flags().GetBool("next-lot")
			if err != nil {
				return err
			}
			return drinks{a}.many(cmd.Context(), args, m.jobs, asked{whole: true, degassed: degassed, nextLot: nextLot})
		case why != "" && next != "":
			return fail.New(fail.Wrong, "--why and --next are two questions", "ask one at a time")
		case why != "":
			return a.why(cmd.Context(), args[0], why)
		case next != "":
			return a.next(cmd.Context(), args[0], next)
		}
		return whole(cmd, args)
	}
	return cmd
}

func newEvidence(a *app) *cobra.Command {
	var say, check string
	var spoken []string
	cmd := a.command(view{
		use: "evidence", short: "the assay by sensory category, with sources; the verdict on each claim",
		long: "evidence groups the assay by sensory category (sweet, acid, bitter, body, salty, sparkle), sets it\n" +
			"against the coffee alone (compare-with:), names the sources behind the figures, and tells of each of\n" +
			"the drink's claims how surely it holds, what it hangs on, and in which world it would be false.\n" +
			"With --check it judges one sentence in their place: --say \"Little sugar\" --check \"serving(SUGAR) < 8 g\".\n" +
			"Rules that you typed in (--house-rules, or " + houseRulesFile + " beside the drink) are answered line by line.\n" +
			"With --speech it writes what may be said in a minute and a half, to the judges and to a guest.",
		text: func(w io.Writer, s *sheet.Sheet, st textreport.Style) error {
			if len(spoken) > 0 {
				return textreport.Speech(w, s, registersOf(spoken), st)
			}
			return textreport.Evidence(w, s, st)
		},
		json: func(w io.Writer, s *sheet.Sheet) error {
			if len(spoken) > 0 {
				return jsonreport.Speech(w, s, registersOf(spoken))
			}
			return jsonreport.Evidence(w, s)
		},
		claims: true, house: true, findings: sheet.EvidenceToDecide,
		said:  func() (*drink.Claim, error) { return claimOf(say, check) },
		check: func(string, *output) error { return knownRegisters(spoken) },
	})
	all := strings.Join(registerNames(), ",")
	cmd.Flags().StringSliceVar(&spoken, "speech", nil, "write the speech; with =judge or =guest that one alone")
	cmd.Flags().Lookup("speech").NoOptDefVal = all
	cmd.Flags().StringVar(&say, "say", "", "a sentence to test, in the place of the file's claims")
	cmd.Flags().StringVar(&check, "check", "", "the expression that decides it: share(MALAC, \"cherry syrup\") >= 50 %")
	return cmd
}

// registerNames are the words for whom a speech may be.
func registerNames() []string {
	var list []string
	for _, r := range speech.Registers {
		list = append(list, string(r))
	}
	return list
}

// knownRegisters refuses a speech for anybody else.
func knownRegisters(asked []string) error {
	for _, name := range asked {
		if !slices.Contains(registerNames(), name) {
			return fail.New(fail.Wrong, "there is no speech for \""+name+"\"", "write --speech for all, or --speech="+fail.Or(registerNames()))
		}
	}
	return nil
}

// registersOf are those asked for, in the order in which they are printed.
func registersOf(asked []string) []speech.Register {
	return slices.DeleteFunc(slices.Clone(speech.Registers), func(r speech.Register) bool { return !slices.Contains(asked, string(r)) })
}

// claimOf is the claim of a command line; nil if none is given.
func claimOf(say, check string) (*drink.Claim, error) {
	switch at := (fail.Place{File: "--check", Line: 1, Col: 1}); {
	case say == "" && check == "":
		return nil, nil
	case check == "":
		return nil, fail.New(fail.Wrong, "--say has no check", "add what decides it: --check \"serving(SUGAR) < 8 g\"")
	default:
		return &drink.Claim{Place: at, Say: cmp.Or(say, check), Check: check, CheckAt: at}, nil
	}
}

func newLog(a *app) *cobra.Command {
	cmd := a.command(view{
		use: "log", short: "a batch log to fill in by hand; or write down what was read",
		long: "log prints a block for each house-made component: when it was made, cooled, read, and by which day\n" +
			"it is used up. Without a meter's pH it asks for control of time and temperature. With a reading it adds a\n" +
			"line to " + benchlog.File + " beside the drink instead: sipsum log DRINK --pot syrup --brix 62.1 --by anna --lot 3. The latest\n" +
			"line of a pot counts as what was read of it, in the place of what the drink file says, and the lots of a bar\n" +
			"tell how far the next one may lie.",
		text: textreport.Log, json: jsonreport.Log, ruled: true, findings: sheet.Contradicted, silent: true,
	})
	prints := cmd.RunE
	line := logFlags(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if !line.asked(cmd) {
			return prints(cmd, args)
		}
		return line.write(a, cmd, args[0], time.Now())
	}
	return cmd
}
