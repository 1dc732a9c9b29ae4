package cli

import (
	"context"
	"slices"
	"sync"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/claims"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
	"sipsum/internal/rewrite"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
	"sipsum/internal/store"
	"sipsum/internal/web"
)

// mostPlans is how many drinks are kept ready to be calculated with other amounts: our own bound, each
// takes some six megabytes (TestLoad), and all together no more than half of what the program may hold while it serves
// (servedAtOnce). A further one takes the place of the one that was asked of longest ago.
const mostPlans = 64

// servedAtOnce is for how many drinks at once the program may hold memory while it serves.
const servedAtOnce = 2

// live is what a kitchen remembers while drinks are worked at: foods, works, and the plans of drinks. Of a
// database whose tables have changed it remembers nothing.
type live struct {
	db     *store.DB
	mu     sync.Mutex
	tables []source.Table
	foods  map[food.ID]*food.Food
	works  map[string]map[string]source.Work
	plans  []*kept
}

// kept is a drink ready to be calculated again; who runs it has it alone.
type kept struct {
	name  string
	draws int
	of    *drink.Drink
	plan  *assay.Plan
}

func newLive(db *store.DB) *live { return &live{db: db} }

// current gives the tables, and forgets what was known of others.
func (l *live) current(ctx context.Context) ([]source.Table, error) {
	tables, err := loadedTables(ctx, l.db)
	if err != nil {
		return nil, err
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	if !slices.Equal(tables, l.tables) {
		l.tables, l.foods, l.works, l.plans = tables, map[food.ID]*food.Food{}, map[string]map[string]source.Work{}, nil
	}
	return tables, nil
}

// planOf gives the plan of a drink and takes it out of those that are kept: nobody else runs it. nil: none
// is kept that differs in amounts alone, which are given.
func (l *live) planOf(d *drink.Drink, draws int) (*kept, amount.Amounts) {
	l.mu.Lock()
	defer l.mu.Unlock()
	for i, k := range l.plans {
		if k.name != d.File || k.draws != draws {
			continue
		}
		if other, alike := rewrite.Differ(k.of, d); alike {
			l.plans = slices.Delete(l.plans, i, i+1)
			return k, other
		}
	}
	return nil, nil
}

// keep puts a plan back, as the one asked of last; an older one of the same drink goes.
func (l *live) keep(k *kept) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.plans = slices.DeleteFunc(l.plans, func(x *kept) bool { return x.name == k.name })
	l.plans = append(l.plans, k)
	if more := len(l.plans) - mostPlans; more > 0 {
		l.plans = slices.Delete(l.plans, 0, more)
	}
}

// remembered is a library whose foods and works are read once.
type remembered struct {
	library
	of *live
}

func (r remembered) Food(ctx context.Context, id food.ID) (*food.Food, error) {
	r.of.mu.Lock()
	f := r.of.foods[id]
	r.of.mu.Unlock()
	if f != nil {
		return f, nil
	}
	f, err := r.library.Food(ctx, id)
	if err == nil {
		r.of.mu.Lock()
		r.of.foods[id] = f
		r.of.mu.Unlock()
	}
	return f, err
}

// work finds the work behind a value.
func (r remembered) work(ctx context.Context) func(table, id string) (source.Work, bool) {
	return func(table, id string) (source.Work, bool) {
		r.of.mu.Lock()
		defer r.of.mu.Unlock()
		list, ok := r.of.works[table]
		if !ok {
			all, err := r.db.Works(ctx, table)
			if err != nil {
				return source.Work{}, false // asked again by who comes next
			}
			list = map[string]source.Work{}
			for _, w := range all {
				list[w.ID] = w
			}
			r.of.works[table] = list
		}
		w, ok := list[id]
		return w, ok
	}
}

// sketch calculates a drink while somebody works at it: if amounts alone differ from before, with what was
// drawn and made then. Its figures are those of the whole calculation with as many draws; of its claims
// there are the odds.
func (k kitchen) sketch(ctx context.Context, by drinks, file web.File, ask web.Ask) (*sheet.Sheet, error) {
	d, faults := drink.ParseBeside(file.Name, file.Text, k.folder.Beside, k.folder.Beside)
	if d.TooLarge {
		return nil, faults.Err(fail.Wrong)
	}
	if err := d.Fits(by.options.draws); err != nil {
		return nil, err
	}
	sheet.Check(d, faults)
	tables, err := k.live.current(ctx)
	if err != nil {
		return nil, err
	}
	lib := remembered{library{db: k.db, tables: k.options.tables}, k.live}
	var of *kept
	var other amount.Amounts
	if faults.Len() == 0 {
		of, other = k.live.planOf(d, ask.Draws)
	}
	judged := ask.Claims && len(d.Claims) > 0
	run := func() (*assay.Assay, error) {
		return of.plan.Run(ctx, other, assay.Want{
			Figures: slices.Concat(evidence.Constituents(d), claims.Constituents(d)), Intervals: true, Chemistry: true, Draws: judged,
		})
	}
	var result *assay.Assay
	if of != nil {
		result, err = run()
	}
	if of == nil || err != nil && ctx.Err() == nil { // a plan of other amounts says nothing of what is wrong with these
		found, err := recipe.Find(ctx, d, faults, lib)
		if err != nil {
			return nil, err
		}
		of, other = &kept{name: d.File, draws: ask.Draws, of: d, plan: assay.Prepare(found, estimate.Ensemble{Seed: k.options.seed, N: ask.Draws + 1})}, nil
		if result, err = run(); err != nil {
			return nil, err
		}
	} else if err != nil {
		return nil, err
	}
	k.live.keep(of)
	result.Drink = d // whose amounts are those that were calculated
	s, err := sheet.Build(program, result, tables, lib.work(ctx), ask.Rules)
	if err == nil && judged {
		err = sheet.Judge(ctx, s, lib.work(ctx), nil, shelf{lib.library, ctx})
	}
	return s, err
}
