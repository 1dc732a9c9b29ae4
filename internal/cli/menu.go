package cli

import (
	"cmp"
	"context"
	"errors"
	"io"
	"slices"

	"github.com/spf13/cobra"

	"sipsum/internal/fail"
	"sipsum/internal/label"
	"sipsum/internal/recipe"
	"sipsum/internal/report/csv"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
)

// besideOnPage is how many drinks stand beside each other on a page: our own bound, of what a
// phone still shows. Text finds out by itself.
const besideOnPage = 3

func newMenu(a *app) *cobra.Command {
	var rules []string
	var out output
	cmd := &cobra.Command{
		Use: "menu DIR|DRINK …", Short: "drinks side by side: declaration figures and the allergen matrix",
		Long: "menu sets drinks side by side: the figures of their declarations, and how each stands to every class\n" +
			"of allergens that the rules name. A folder stands for the drink files in it (*" + drinkEnding + ")\n" +
			"and in its folders. A file that is wrong stops the menu: all faults of all files are told, and nothing\n" +
			"is printed. With --format json it prints JSON Lines, a drink a line.",
		Args: someDrinks,
		RunE: func(cmd *cobra.Command, args []string) error {
			form, err := out.form(a, cmd)
			if err == nil {
				err = out.spares(a, args)
			}
			if err != nil {
				return err
			}
			m, err := drinks{a}.menu(cmd.Context(), args, rules)
			if err != nil {
				return err
			}
			if m.NotAssessed() || slices.ContainsFunc(m.Drinks, func(d sheet.Offer) bool { return d.Decide }) {
				a.findings = fail.Findings
			}
			return out.write(a, func(w io.Writer) error { return printMenu(w, m, form, out, out.style(a)) })
		},
	}
	rulesFlag(cmd, &rules)
	out.flags(cmd, menuPaper)
	return cmd
}

func printMenu(w io.Writer, m *sheet.Menu, form string, o output, st textreport.Style) error {
	switch form {
	case formatText:
		return textreport.Leaf(w, m.Leaf(len(m.Drinks)), st)
	case formatJSON:
		return jsonreport.Menu(w, m)
	case formatCSV:
		return csvreport.Menu(w, m)
	}
	return printLeaf(w, m.Leaf(besideOnPage), form, cmp.Or(o.paper, menuPaper))
}

// menu calculates drinks under the same rules: those asked for, else those of any of them.
func (a drinks) menu(ctx context.Context, args, rules []string) (*sheet.Menu, error) {
	for _, r := range rules {
		if err := label.Check(r, label.Facts{ServingG: 1}); err != nil {
			return nil, err
		}
	}
	files, err := drinkFiles(args)
	if err != nil {
		return nil, err
	}
	found, err := a.findAll(ctx, files)
	if err != nil {
		return nil, err
	}
	if len(rules) == 0 {
		rules = rulesOf(found)
	}
	m := &sheet.Menu{Program: program, Seed: a.options.seed, Draws: a.options.draws, Rules: rules}
	var faults fail.List
	for i, f := range found {
		s, err := a.calculate(ctx, f, asked{rules: rules}, nil)
		if err = note(&faults, fail.Place{File: files[i]}, err); err != nil {
			return nil, err
		}
		if s != nil {
			m.Drinks = append(m.Drinks, s.Offer(files[i]))
		}
	}
	return m, faults.Err(fail.Wrong)
}

// findAll reads drink files and finds their foods; all that is wrong with any of them is told
// at once.
func (a drinks) findAll(ctx context.Context, files []string) ([]*recipe.Recipe, error) {
	var list []*recipe.Recipe
	var faults fail.List
	for _, file := range files {
		d, wrong, err := a.read(file)
		var found *recipe.Recipe
		if err == nil {
			found, err = a.lookUp(ctx, d, wrong)
		}
		if err = note(&faults, fail.Place{}, err); err != nil { // it names its file
			return nil, err
		}
		list = append(list, found)
	}
	return list, faults.Err(fail.Wrong)
}

// note keeps what is wrong with a file for later; what went wrong otherwise ends the command
// now.
func note(faults *fail.List, at fail.Place, err error) error {
	var wrong *fail.Error
	if err == nil || !errors.As(err, &wrong) || wrong.Exit != fail.Wrong {
		return err
	}
	faults.Join(at, wrong)
	return nil
}

// rulesOf gives the rules that drinks name, in the order in which they are named first.
func rulesOf(list []*recipe.Recipe) []string {
	var rules []string
	for _, r := range list {
		for _, word := range r.Drink.Rules {
			if !slices.Contains(rules, word.Text) {
				rules = append(rules, word.Text)
			}
		}
	}
	if len(rules) == 0 {
		return label.Usual()
	}
	return rules
}

// drinkFiles gives the drinks that arguments name, in their place the drink files of folders; what cannot be walked is
// told at once.
func drinkFiles(args []string) ([]string, error) {
	var files []string
	var faults fail.List
	for w := range walk(args) {
		if w.err == nil {
			files = append(files, w.file)
		}
		faults.Join(fail.Place{}, w.err)
	}
	return files, faults.Err(fail.Wrong)
}
