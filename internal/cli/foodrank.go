package cli

import (
	"context"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/source"
	"sipsum/internal/store"
	"sipsum/internal/unit"
)

// rankOptions are the flags of food rank.
type rankOptions struct {
	per     string
	groups  []string
	without []string
	liquid  bool
	minN    int
	limit   int
}

func newFoodRank(a *app) *cobra.Command {
	var o rankOptions
	cmd := &cobra.Command{
		Use: "rank TAG", Short: "foods with the most of a constituent",
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return exactly(1, "one constituent, such as CITAC or malic acid")(cmd, args)
			}
			return nil
		},
		Long: "rank lists the foods with the most of a constituent: in 100 g, in relation to their energy or sugars,\n" +
			"or in relation to another constituent, each by its tagname or in words (MALAC, malic acid). What drinks are\n" +
			"made of comes first: the foods of core and of the groups of drinks. Foods in which nobody has measured it\n" +
			"are not in the list, and are counted below it.",
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := o.check(cmd.Flags()); err != nil {
				return err
			}
			return a.foodRank(cmd.Context(), strings.Join(args, " "), o)
		},
	}
	flags := cmd.Flags()
	flags.StringVar(&o.per, "per", "100g", "100g, 100kcal, 100g-sugars, or a tagname")
	flags.StringSliceVar(&o.groups, "group", nil, "only these food groups")
	flags.StringSliceVar(&o.without, "without", nil, "leave out foods with this allergen")
	flags.BoolVar(&o.liquid, "liquid", false, "only liquid food groups")
	flags.IntVar(&o.minN, "min-n", 0, "only values of at least so many samples")
	flags.IntVar(&o.limit, "limit", 20, "the most foods to list")
	return cmd
}

// check refuses what would leave out nothing though something was asked.
func (o rankOptions) check(flags *pflag.FlagSet) error {
	switch {
	case flags.Changed("without") && len(o.without) == 0:
		return fail.New(fail.Wrong, "--without names no allergen", "write one, such as --without milk, or leave the flag out")
	case flags.Changed("group") && len(o.groups) == 0:
		return fail.New(fail.Wrong, "--group names no food group", "write one, such as --group fruit, or leave the flag out")
	case o.limit < 1:
		return fail.New(fail.Wrong, "--limit must be at least 1", "")
	case o.minN < 0:
		return fail.New(fail.Wrong, "--min-n must be at least 0", "it is a number of samples")
	}
	return nil
}

// per is what a ranking relates to.
type per struct {
	id    constituent.ID // empty: 100 g of food
	times float64        // of the ratio
	text  string         // "per 100 kcal"
	least unit.Limit     // of id in 100 g, if it is to be more than a little
}

// The least that a ratio may relate to, by constituent: what has next to none of it would lead the
// list whatever else it holds.
func leastOf(id constituent.ID) unit.Limit {
	switch id {
	case constituent.Sugar:
		return unit.LimitOf("basis of a ratio", "g sugars/100 g")
	case constituent.EnergyKcal:
		return unit.LimitOf("basis of a ratio", "kcal/100 g")
	}
	return unit.Limit{}
}

// name is what the list relates to, with the least of it.
func (p per) name() string {
	c := constituent.Must(p.id)
	if p.least.Low == 0 {
		return c.Name
	}
	return c.Words() + ", of which it takes more than " + strconv.FormatFloat(p.least.Low, 'g', -1, 64) + " " + c.Unit + " in 100 g,"
}

// perOf reads --per. The hundreds are the size of the basis that the word names.
func perOf(word string) (per, error) {
	switch word {
	case "100g":
		return per{times: 1, text: "per 100 g"}, nil
	case "100kcal":
		return per{constituent.EnergyKcal, unit.Hundred, "per 100 kcal", leastOf(constituent.EnergyKcal)}, nil
	case "100g-sugars":
		return per{constituent.Sugar, unit.Hundred, "per 100 g sugars", leastOf(constituent.Sugar)}, nil
	}
	c, err := constituent.Read(word, constituent.Any)
	if err != nil {
		return per{}, fail.Because(fail.Wrong, err, "--per takes 100g, 100kcal, 100g-sugars or a constituent", "")
	}
	return per{c.ID, 1, "per " + c.Unit + " " + c.Named(), leastOf(c.ID)}, nil
}

// ranking is the answer to a question for the foods with the most of something.
type ranking struct {
	of      *constituent.Constituent
	query   store.Ranking
	basis   per
	foods   []rankedFood
	left    store.LeftOut
	without int // that hold what was to be left out
	works   func(table, id string) (source.Work, bool)
}

// ranked ranks foods by a constituent, as the flags ask.
func (o rankOptions) ranked(ctx context.Context, a *app, tag string) (*ranking, error) {
	c, err := constituent.Read(tag, constituent.Any)
	if err != nil {
		return nil, err
	}
	r := &ranking{of: c}
	if r.basis, err = perOf(o.per); err != nil {
		return nil, err
	}
	groups, err := groupsOf(o.groups, o.liquid)
	if err != nil {
		return nil, err
	}
	less, err := withoutOf(o.without)
	if err != nil {
		return nil, err
	}
	db, err := a.store(ctx)
	if err != nil {
		return nil, err
	}
	r.works = library{db: db}.works(ctx)
	r.query = store.Ranking{Of: c.ID, Per: r.basis.id, MoreThan: r.basis.least.Low, Tables: a.options.tables, Groups: groups, First: drinkGroups(groups), MinN: o.minN}
	if r.foods, err = a.rank(ctx, db, r.query, less, o.limit); err != nil {
		return nil, err
	}
	r.without = less.out
	r.left, err = db.LeftOut(ctx, r.query)
	return r, err
}

// worksBehind are the works behind the figure of a food.
func (r *ranking) worksBehind(x rankedFood) (works []source.Work) {
	if x.Value.By == food.ByKin {
		works = append(works, source.Work{Citation: clean.UpperFirst(x.Value.Ref)})
	}
	for id := range strings.FieldsSeq(x.Value.Source) {
		if w, ok := r.works(x.ID.Table, id); ok {
			works = append(works, w)
		}
	}
	return works
}

// drinkGroups are the groups of what drinks are made of, which come first; of groups
// that are asked for none does.
func drinkGroups(asked []string) []string {
	if len(asked) > 0 {
		return nil
	}
	return food.GroupsThat(func(g food.Group) bool { return g.InDrinks })
}

// ofDrinks tells whether drinks are made of a food.
func ofDrinks(x store.Ranked) bool {
	g, _ := food.GroupOf(x.Group)
	return x.ID.Table == store.Core || g.InDrinks
}

// groupsOf gives the food groups that the flags ask for; none means all.
func groupsOf(asked []string, onlyLiquid bool) ([]string, error) {
	var all, liquid []string
	for _, g := range food.Groups() {
		all = append(all, g.Name)
		if g.Liquid {
			liquid = append(liquid, g.Name)
		}
	}
	for _, g := range asked {
		if !slices.Contains(all, g) {
			return nil, fail.New(fail.Wrong, "unknown food group \""+g+"\"", "use one of "+strings.Join(all, ", "))
		}
	}
	switch {
	case !onlyLiquid:
		return asked, nil
	case len(asked) == 0:
		return liquid, nil
	}
	both := slices.DeleteFunc(slices.Clone(asked), func(g string) bool { return !slices.Contains(liquid, g) })
	if len(both) == 0 {
		return nil, fail.New(fail.Wrong, "none of the groups asked for is liquid", "leave out --liquid")
	}
	return both, nil
}

// rankedFood is a ranked food and what is known of its allergens, where that was
// asked.
type rankedFood struct {
	store.Ranked
	notAssessed bool
}

// rank collects the foods to list. A food that nobody has assessed for the
// allergen stays in the list, and says so. What is left out is counted to the last
// of the foods that come first, however few are listed.
func (a *app) rank(ctx context.Context, db *store.DB, q store.Ranking, less *without, limit int) ([]rankedFood, error) {
	var list []rankedFood
	err := rankWithKin(ctx, db, q, func(x store.Ranked) (bool, error) {
		first, full := counts(q, x), len(list) == limit
		if full && !first && x.Value.By != food.ByKin {
			return false, nil
		}
		entry := rankedFood{Ranked: x}
		if less.asked() {
			f, err := db.Food(ctx, x.ID)
			if err != nil {
				return false, err
			}
			holds, notAssessed := less.judge(f)
			if holds {
				if first {
					less.out++
				}
				return true, nil
			}
			entry.notAssessed = notAssessed
		}
		if !full {
			list = append(list, entry)
		}
		return len(list) < limit || less.asked(), nil
	})
	return list, err
}

func (a *app) foodRank(ctx context.Context, tag string, o rankOptions) error {
	r, err := o.ranked(ctx, a, tag)
	if err != nil {
		return err
	}
	c, basis := r.of, r.basis
	head := textreport.RankHead{
		Name: c.Name, Tag: string(c.ID), Unit: c.Unit, Per: basis.text,
		Chosen: len(r.query.Groups) > 0, LeftOut: textreport.LeftOut(r.left), Without: r.without,
	}
	if basis.id != "" {
		head.Basis = basis.name()
	}
	var lines []textreport.Ranked
	for _, x := range r.foods {
		line := textreport.Ranked{
			Food: x.ID.String(), Name: x.Name, Figure: x.Figure * basis.times, Amount: x.Value.Amount, N: x.Value.N,
			State: x.Value.State, By: food.ByOf(x.ID, x.Value), NotAssessed: x.notAssessed, OfDrinks: ofDrinks(x.Ranked), SD: math.NaN(), Works: r.worksBehind(x),
		}
		if food.Stated(x.Value.SD) {
			line.SD = x.Value.SD / x.Value.Amount * line.Figure
		}
		lines = append(lines, line)
	}
	if a.json() {
		return jsonreport.Rank(a.streams.Out, jsonreport.RankHead{
			Constituent: string(c.ID), Name: c.Name, Unit: c.Unit, Per: basis.text,
			LeftOut: jsonreport.LeftOut(r.left), Without: r.without,
		}, lines2json(c, lines))
	}
	return textreport.Rank(a.streams.Out, head, lines, a.style())
}

func lines2json(c *constituent.Constituent, lines []textreport.Ranked) []jsonreport.Ranked {
	out := make([]jsonreport.Ranked, len(lines))
	for i, x := range lines {
		out[i] = jsonreport.RankedOf(x.Food, x.Name, x.Figure, x.SD, x.Amount, c.Unit, x.N, x.State.String(), x.By, x.NotAssessed, x.Works)
		out[i].OfDrinks = x.OfDrinks
	}
	return out
}
