package cli

import (
	"io"
	"slices"

	"github.com/spf13/cobra"

	"sipsum/internal/fail"
	"sipsum/internal/report/csv"
	"sipsum/internal/report/html"
	"sipsum/internal/report/json"
	"sipsum/internal/report/markdown"
	"sipsum/internal/report/svg"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
)

// The paper that each leaf is for, if nobody says otherwise.
const (
	cardPaper  = "a5"
	guestPaper = "a6"
	menuPaper  = "letter"
)

func newCard(a *app) *cobra.Command {
	var explain, guest, stage bool
	var language string
	v := view{
		use: "card", short: "the nutrition declaration, and the cards for guests and for the stage",
		long: "card prints the nutrition declaration of a serving as the rules prescribe it. It is calculated, not\n" +
			"analysed: whoever sells the drink answers for it. With --guest it is the card beside the drink, without\n" +
			"what nobody knows; with --stage the card for who presents it, with the evidence.",
		ruled:    true,
		findings: sheet.ToDecide,
		silent:   true,
		paper:    cardPaper,
	}
	v.leaf = func(s *sheet.Sheet) *sheet.Leaf {
		switch {
		case guest:
			return s.GuestLeafIn(language)
		case stage:
			return s.StageLeaf()
		}
		return s.CardLeaf()
	}
	v.text = func(w io.Writer, s *sheet.Sheet, st textreport.Style) error {
		switch {
		case explain:
			return textreport.CardWorking(w, s, st)
		case guest, stage:
			return textreport.Leaf(w, v.leaf(s), st)
		}
		return textreport.Cards(w, s, st)
	}
	v.json = func(w io.Writer, s *sheet.Sheet) error {
		switch {
		case explain:
			return jsonreport.CardWorking(w, s)
		case guest, stage:
			return jsonreport.HandedOut(w, s, v.leaf(s))
		}
		return jsonreport.Card(w, s)
	}
	v.csv = func(w io.Writer, s *sheet.Sheet) error {
		if guest || stage {
			return csvreport.Leaf(w, v.leaf(s))
		}
		return csvreport.Cards(w, s)
	}
	v.check = func(form string, o *output) error {
		if err := spoken(language, guest); err != nil {
			return err
		}
		if guest && o.paper == "" {
			o.paper = guestPaper
		}
		if explain && (guest || stage) || guest && stage {
			return fail.New(fail.Wrong, "--explain, --guest and --stage are three cards", "ask for one at a time")
		}
		if explain && !slices.Contains(usualFormats, form) {
			return fail.New(fail.Wrong, "--explain has no form "+form, "use --format text or --format json")
		}
		return nil
	}
	cmd := a.command(v)
	cmd.Flags().BoolVar(&explain, "explain", false, "how each figure came about: formula, inputs, rule")
	cmd.Flags().BoolVar(&guest, "guest", false, "the card beside the drink: what is not known is left out, and says \"ask us\"")
	cmd.Flags().StringVar(&language, "language", "en", "of the guest's card: "+fail.Or(languages()))
	cmd.Flags().BoolVar(&stage, "stage", false, "the card for the stage: the evidence in one line for each sensory category")
	return cmd
}

// languages are the codes of those that a guest can be told in.
func languages() []string {
	var list []string
	for _, l := range sheet.Languages() {
		list = append(list, l.Code)
	}
	return list
}

// spoken refuses a language that there are no words in, and one for what is not for a guest.
func spoken(language string, guest bool) error {
	switch known := languages(); {
	case !slices.Contains(known, language):
		return fail.New(fail.Wrong, "there are no words in the language \""+language+"\"", "write --language "+fail.Or(known))
	case !guest && language != known[0]:
		return fail.New(fail.Wrong, "--language is of the guest's card", "add --guest")
	}
	return nil
}

func newAllergens(a *app) *cobra.Command {
	return a.command(view{
		use: "allergens", short: "what must be declared, what is to be decided, and cautions",
		long: "allergens lists what must be declared under the rules, with the food and component it comes from,\n" +
			"what somebody has to decide (exit code 3): foods that nobody has assessed, questions that a name leaves\n" +
			"open, contradictions; the ingredients in descending order, and what may hurt.",
		text: textreport.Allergens, json: jsonreport.Allergens, csv: csvreport.Allergens, ruled: true,
		findings: sheet.ToDecide,
		leaf:     (*sheet.Sheet).AllergensLeaf, paper: cardPaper,
	})
}

// printLeaf prints a leaf in one of the forms that leaves alone have.
func printLeaf(w io.Writer, l *sheet.Leaf, form, paper string) error {
	switch form {
	case formatHTML:
		return htmlreport.Leaf(w, l, paper)
	case formatSVG:
		return svgreport.Leaf(w, l)
	}
	return markdownreport.Leaf(w, l)
}
