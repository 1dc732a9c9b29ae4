package cli

import (
	"context"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
	"sipsum/internal/store"
)

// swapAsked are the flags of a fit that ask for another food.
type swapAsked struct {
	food    string
	without []string
}

func (q *swapAsked) flags(f *pflag.FlagSet) {
	f.StringVar(&q.food, "swap", "", "a food of the drink, by its code or its name, for which another is looked for (with --less sugar: that brings less of it)")
}

// run looks for the food that is asked for.
func (q swapAsked) run(ctx context.Context, f fitter, ask wishes) error {
	x, err := q.exchange(ask)
	if err == nil {
		err = f.out.copies(f.app, f.arg)
	}
	if err != nil {
		return err
	}
	return swapper{f}.run(ctx, x, q.words())
}

// exchange reads them; --less names a constituent here, as sugar.
func (q swapAsked) exchange(ask wishes) (fit.Exchange, error) {
	x := fit.Exchange{Food: q.food}
	if ask.more+ask.by+ask.sweeter != "" {
		return x, fail.New(fail.Wrong, "--swap keeps what the drink tastes of", "leave --more, --by and --sweeter out; --less sugar and --without milk go with it")
	}
	w, err := withoutOf(q.without)
	if err != nil {
		return x, err
	}
	x.Without = w.leaves
	if ask.less != "" {
		if x.Less, err = constituent.Read(ask.less, constituent.Any); err != nil {
			return x, fail.Because(fail.Wrong, err, "with --swap, --less takes a constituent, and \""+ask.less+"\" is none", "write --less sugars, --less caffeine, --less alcohol")
		}
	}
	return x, nil
}

// swapper looks for another food.
type swapper struct{ fitter }

func (w swapper) run(ctx context.Context, x fit.Exchange, without []string) error {
	found, err := w.found(ctx, w.arg)
	if err != nil {
		return err
	}
	s, err := w.swapped(ctx, found, x, without)
	if err != nil {
		return err
	}
	if w.out.path != "" && len(s.Found) > 0 {
		if err := w.write(ctx, found, s.Exchanged); err != nil {
			return err
		}
		s.Written = w.out.path
	}
	if s.Decide() {
		w.findings = fail.Findings
	}
	if w.json() {
		return jsonreport.Swapped(w.streams.Out, s)
	}
	return textreport.Leaf(w.streams.Out, s.Leaf(), w.style())
}

// swapped looks for another food, and gathers what is told of it.
func (w swapper) swapped(ctx context.Context, found *recipe.Recipe, x fit.Exchange, without []string) (*sheet.Swapped, error) {
	pool, err := w.pool(ctx)
	if err != nil {
		return nil, err
	}
	res, err := w.bench(found).Swap(ctx, found, x, pool, w.kitchen)
	if err != nil {
		return nil, err
	}
	return w.sheets(ctx, found, res, without)
}

// bench prepares a drink; what it declares is asked of its sheet.
func (w swapper) bench(found *recipe.Recipe) fit.Bench {
	b := w.plans(found)
	b.Declared = func(string) (bool, error) { return false, nil }
	return b
}

func (w swapper) kitchen(ctx context.Context, d *drink.Drink) (fit.Bench, *recipe.Recipe, error) {
	found, err := w.lookUp(ctx, d, &fail.List{})
	if err != nil {
		return fit.Bench{}, nil, err
	}
	return w.bench(found), found, nil
}

// pool is every food of the tables that are asked for; without a word, of the core table.
func (w swapper) pool(ctx context.Context) (pool []*food.Food, err error) {
	lib, err := w.library(ctx)
	if err != nil {
		return nil, err
	}
	tables := lib.tables
	if len(tables) == 0 {
		tables = []string{store.Core}
	}
	for _, table := range tables {
		foods, err := shelf{lib, ctx}.Table(table)
		if err != nil {
			return nil, err
		}
		pool = append(pool, foods...)
	}
	return pool, nil
}

// sheets gathers what is printed of the drink before and of each drink after.
func (w swapper) sheets(ctx context.Context, found *recipe.Recipe, res *fit.Exchanged, without []string) (*sheet.Swapped, error) {
	before := res.Before
	if before == nil {
		var err error
		if before, err = w.bench(found).Central.Run(ctx, nil, assay.Want{Chemistry: true}); err != nil {
			return nil, err
		}
	}
	s, err := w.sheetOf(ctx, before)
	if err != nil {
		return nil, err
	}
	var after []*sheet.Sheet
	for _, f := range res.Found {
		next, err := w.sheetOf(ctx, f.After)
		if err != nil {
			return nil, err
		}
		after = append(after, next)
	}
	return sheet.Swap(s, res, after, without), nil
}

// write writes a copy of the drink with the first food in the place of the other.
func (w swapper) write(ctx context.Context, found *recipe.Recipe, res *fit.Exchanged) error {
	_, text, _, err := w.drinkText(w.arg)
	if err != nil {
		return err
	}
	next, err := rewritten(found, text, res, 0)
	if err != nil {
		return err
	}
	return w.keep(ctx, next, res.Found[0].After)
}

// rewritten is the text of a drink with one of the foods that were found.
func rewritten(found *recipe.Recipe, text []byte, res *fit.Exchanged, i int) ([]byte, error) {
	x := res.Found[i]
	written, other, to := amount.Amounts{}, amount.Amounts{}, map[string]string{}
	for _, p := range x.Poured {
		if p.Moves() {
			written[p.Path], other[p.Path] = p.From, p.To
		}
		if p.Pot == "" {
			to[p.Path] = x.Food.ID.String()
		}
	}
	next, err := amount.Refood(found.Drink, text, to, written, other)
	if err != nil {
		return nil, err
	}
	return amount.Unread(found.Drink, next, res.Unread)
}

// words are those of --without, as somebody wrote them.
func (q swapAsked) words() []string {
	list := slices.Clone(q.without)
	for i := range list {
		list[i] = strings.TrimSpace(list[i])
	}
	return list
}
