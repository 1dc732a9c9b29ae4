package cli

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"strconv"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/recipe"
	"sipsum/internal/report/csv"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
	"sipsum/internal/tasting"
)

// omit prints a drink's match without a part of it, and the plan by which tasters compare both.
func (a drinks) omit(ctx context.Context, arg string, q batchAsked, form string) error {
	if q.serves != 0 || q.mass != "" || q.units != "" {
		return fail.New(fail.Wrong, "--omit makes a tasting and no batch", "leave --serves, --mass and --units out; the plan says how much to make")
	}
	o := &sheet.Omitted{}
	test, n, err := q.tasting(o)
	if err != nil {
		return err
	}
	found, err := a.found(ctx, arg)
	if err != nil {
		return err
	}
	f := fitter{drinks: a, arg: arg}
	bench, err := f.bench(ctx, found)
	if err != nil {
		return err
	}
	kitchen := func(ctx context.Context, d *drink.Drink) (fit.Bench, *recipe.Recipe, error) {
		found, err := a.lookUp(ctx, d, &fail.List{})
		if err != nil {
			return fit.Bench{}, nil, err
		}
		b, err := f.bench(ctx, found)
		return b, found, err
	}
	if o.Omission, err = fit.Omit(ctx, bench, found, q.omit, kitchen); err != nil {
		return err
	}
	if o.Plan, err = tasting.PlanOf(test, n, a.options.seed, found.Drink.Name, o.What); err != nil {
		return err
	}
	if o.A, err = f.sheetUnder(ctx, o.Omission.A, q.rules); err != nil {
		return err
	}
	if o.B, err = f.sheetUnder(ctx, o.After, q.rules); err != nil {
		return err
	}
	if o.File, err = a.calculate(ctx, found, asked{rules: q.rules}, nil); err != nil {
		return err
	}
	if len(o.Unmatched()) > 0 || sheet.Contradicted(o.File) {
		a.findings = fail.Findings
	}
	return q.out.write(a.app, func(w io.Writer) error {
		l := sheet.OmittedLeaf(o)
		switch form {
		case formatText:
			return textreport.Leaf(w, l, q.out.style(a.app))
		case formatJSON:
			return jsonreport.Omitted(w, o)
		case formatCSV:
			return csvreport.Leaf(w, l)
		}
		return printLeaf(w, l, form, cmp.Or(q.out.paper, cardPaper))
	})
}

// tasting reads how many taste, and what they answered.
func (q batchAsked) tasting(o *sheet.Omitted) (test tasting.Test, n int, err error) {
	test, n = tasting.Triangle, cmp.Or(q.tasters, tasting.Usual())
	if q.paired {
		test = tasting.Paired
	}
	if q.counts != "" {
		right, of, _ := strings.Cut(q.counts, "/")
		k, err := strconv.Atoi(strings.TrimSpace(right))
		all, wrong := strconv.Atoi(strings.TrimSpace(of))
		if err != nil || wrong != nil || q.tasters != 0 && q.tasters != all {
			return test, n, fail.New(fail.Wrong, fmt.Sprintf("--counts is %q", q.counts), "write the right answers and all tasters, the same as in --tasters if that is given: --counts 14/24")
		}
		v, err := tasting.Judge(test, k, all)
		if err != nil {
			return test, n, err
		}
		o.Verdict, n = &v, all
	}
	o.Panel, err = tasting.Of(test, n)
	return test, n, err
}
