package cli

import (
	"context"
	"io"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/proof"
	"sipsum/internal/recipe"
	"sipsum/internal/report/html"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
)

func newProve(a *app) *cobra.Command {
	var out output
	var rules []string
	cmd := &cobra.Command{
		Use: "prove DRINK -o FILE", Short: "one offline file from which every figure of a drink can be calculated anew",
		Long: "prove writes a proof pack: the drink with its shelves, every row of a table that it uses, the program's\n" +
			"own tables, and each figure with what brings it. A page (.html) opens in any browser and holds the pack;\n" +
			"a .json is the pack alone. Who has sipsum and no table checks it: sipsum verify FILE.",
		Args: exactly(1, drinkArgument),
		RunE: func(cmd *cobra.Command, args []string) error {
			page, err := packForm(a, out.path)
			if err == nil {
				err = out.spares(a, args)
			}
			if err != nil {
				return err
			}
			return drinks{a}.prove(cmd.Context(), args[0], rules, page, &out)
		},
	}
	rulesFlag(cmd, &rules)
	cmd.Flags().StringVarP(&out.path, "output", "o", "", "write to this file: .html is a page with the pack in it, .json the pack alone")
	cmd.Flags().BoolVar(&out.replaces, "replace", false, "write over the file of --output if there is one")
	return cmd
}

// packForm tells whether a pack is written as a page: by the ending of its file.
func packForm(a *app, path string) (page bool, err error) {
	switch form := byEnding[strings.ToLower(filepath.Ext(path))]; {
	case path == "" && a.json(), path == "-":
		return false, nil
	case path == "":
		return false, fail.New(fail.Wrong, "a proof pack wants a file", "say where: -o FILE.html, or -o FILE.json for the pack alone")
	case form != formatHTML && form != formatJSON:
		return false, fail.New(fail.Wrong, "a proof pack cannot be "+path, "end it with .html or .json")
	default:
		return form == formatHTML, nil
	}
}

// prove writes the pack of a drink.
func (a drinks) prove(ctx context.Context, arg string, rules []string, page bool, out *output) error {
	var files written
	d, faults, err := a.readInto(&files, arg)
	if err != nil {
		return err
	}
	found, err := a.lookUp(ctx, d, faults)
	if err != nil {
		return err
	}
	p, err := a.pack(ctx, files, found, rules)
	if err != nil {
		return err
	}
	if err := out.write(a.app, func(w io.Writer) error { return writePack(w, p, page) }); err != nil {
		return err
	}
	if out.path == "" || out.path == "-" || a.options.quiet {
		return nil
	}
	return textreport.Proved(a.streams.Out, p, a.style())
}

// pack is a drink with all that it was calculated from.
func (a drinks) pack(ctx context.Context, files written, found *recipe.Recipe, rules []string) (*proof.Pack, error) {
	in, err := a.inputs(ctx, files, found)
	if err != nil {
		return nil, err
	}
	in.Rules, in.Constants = rules, proof.ProgramConstants()
	var beside []*food.Food
	for _, id := range in.Missing() {
		for _, f := range found.Rows {
			if f.ID == id {
				beside = append(beside, f)
				break
			}
		}
	}
	s, err := a.recalculate(ctx, &in, beside)
	if err != nil {
		return nil, err
	}
	in.Rules = s.Rules
	return &proof.Pack{Schema: proof.Schema, Program: program, Short: in.Short(program), Inputs: in, Figures: sheet.ProofOf(s)}, nil
}

func writePack(w io.Writer, p *proof.Pack, page bool) error {
	if page {
		return htmlreport.Proof(w, p)
	}
	_, err := w.Write(p.Encode())
	return err
}

// recalculate makes the sheet of a drink from the inputs of a pack alone, and from the rows that it does not hold.
func (a drinks) recalculate(ctx context.Context, in *proof.Inputs, beside []*food.Food) (*sheet.Sheet, error) {
	a.options.seed, a.options.draws = in.Seed, in.Draws
	open := func(path string) ([]byte, error) {
		for _, f := range in.Files[1:] {
			if f.Name == path {
				return []byte(f.Text), nil
			}
		}
		return nil, fail.Because(fail.Wrong, fs.ErrNotExist, "the pack holds no shelf "+path, "")
	}
	d, faults := drink.ParseBeside(in.Files[0].Name, []byte(in.Files[0].Text), open, open)
	if d.TooLarge {
		return nil, faults.Err(fail.Wrong)
	}
	if err := d.Fits(in.Draws); err != nil {
		return nil, err
	}
	sheet.Check(d, faults)
	ranks := func(c drink.Claim) bool { return strings.Contains(c.Check, "food_rank") }
	in.Unproven = nil
	for _, c := range d.Claims {
		if ranks(c) {
			in.Unproven = append(in.Unproven, c.Say)
		}
	}
	d.Claims = slices.DeleteFunc(d.Claims, ranks)
	rows := in.Library(beside)
	found, err := recipe.Find(ctx, d, faults, rows)
	if err != nil {
		return nil, err
	}
	return a.calculateBy(ctx, found, asked{rules: in.Rules, whole: true, verdicts: len(d.Claims) > 0}, nil, reference{rows, in.Sources(), in.Work, nil})
}
