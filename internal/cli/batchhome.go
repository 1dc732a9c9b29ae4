package cli

import (
	"cmp"
	"context"
	"io"

	"github.com/spf13/cobra"

	"sipsum/internal/amount"
	"sipsum/internal/batch"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/report/csv"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
)

// mostAtHome is how many glasses are made at home where nobody says: what is for more is made for two.
const mostAtHome = 2

// homely works the home version of a drink out.
type homely struct {
	drinks
	arg  string
	q    batchAsked
	form string
}

// check says what does not go together with --home.
func (q batchAsked) check() error {
	switch {
	case q.write != "" && !q.home:
		return fail.New(fail.Wrong, "--write writes the home version", "add --home, or use -o FILE for the card")
	case q.home && (q.mass != "" || q.units != "" || q.paired):
		return fail.New(fail.Wrong, "--home goes with --serves alone", "leave --mass, --units and --paired out")
	}
	return nil
}

func (h homely) run(ctx context.Context, cmd *cobra.Command) error {
	file := output{path: h.q.write, replaces: h.q.out.replaces}
	if err := file.copies(h.app, h.arg); err != nil {
		return err
	}
	found, err := h.found(ctx, h.arg)
	if err != nil {
		return err
	}
	s, err := h.calculate(ctx, found, asked{rules: h.q.rules}, nil)
	if err != nil {
		return err
	}
	_, written, _, err := h.drinkText(h.arg)
	if err != nil {
		return err
	}
	serves := h.q.serves
	if !cmd.Flags().Changed("serves") {
		serves = min(found.Drink.Serves, mostAtHome)
	}
	home, err := batch.MakeHome(ctx, batch.Kitchen{
		Bench: h.bench(found, s), Text: written, Fit: h.fit,
		Read: func(ctx context.Context, text []byte) (batch.Bench, error) {
			_, _, open, err := h.drinkText(h.arg)
			if err != nil {
				return batch.Bench{}, err
			}
			d, faults := drink.ParseBeside(cmp.Or(found.Drink.File, h.arg), text, open, besideFile(h.arg, open))
			found, err := h.lookUp(ctx, d, faults)
			if err != nil {
				return batch.Bench{}, err
			}
			return h.bench(found, s), nil
		},
	}, serves)
	if err != nil {
		return err
	}
	after, err := h.calculate(ctx, home.Recipe, asked{rules: h.q.rules}, nil)
	if err != nil {
		return err
	}
	if h.q.write != "" {
		copied := fitter{h.drinks, h.arg, file}
		if err := copied.keep(ctx, home.Text, after.Assay); err != nil {
			return err
		}
	}
	if sheet.Contradicted(s) {
		h.findings = fail.Findings
	}
	return h.print(s, after, home, batch.Shifts(s.Assay, after.Assay))
}

// fit finds amounts at which the targets of a drink are met.
func (h homely) fit(ctx context.Context, b batch.Bench) (amount.Amounts, bool, error) {
	faults := &fail.List{}
	aims := fit.Read(b.Recipe.Drink, faults)
	if err := faults.Err(fail.Wrong); err != nil {
		return nil, false, err
	}
	res, err := fit.Bench{Central: b.Central, Drawn: b.Hands, Drink: b.Recipe.Drink, Declared: b.Declared}.Fit(ctx, aims)
	if err != nil {
		return nil, false, err
	}
	return res.Amounts(), res.Met, nil
}

func (h homely) print(was, s *sheet.Sheet, home *batch.Home, shifts []batch.Shift) error {
	return h.q.out.write(h.app, func(w io.Writer) error {
		switch l := sheet.HomeLeaf(was, s, home, shifts); {
		case h.form == formatText:
			return textreport.Leaf(w, l, h.q.out.style(h.app))
		case h.form == formatJSON:
			return jsonreport.Home(w, was, s, home, shifts, h.q.write)
		case h.form == formatCSV:
			return csvreport.Leaf(w, l)
		default:
			return printLeaf(w, l, h.form, cmp.Or(h.q.out.paper, cardPaper))
		}
	})
}
