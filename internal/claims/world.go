package claims

import (
	"context"
	"errors"
	"math"
	"slices"
	"strings"

	"sipsum/internal/claim"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// World is the nearest world in which a claim is false.
type World struct {
	Changes  []Change
	Distance float64 // standard deviations of the draws
	Drink    *drink.Drink
}

// Change is one figure of the world, as a drink file would state it.
type Change struct {
	Words  string  // "your pear has under 0.4 g malic acid in 100 g"
	Is     float64 // what it is taken to be; NaN where nobody knows
	To     float64
	Unit   string
	Among  string    // how many of the figures that are published of it lie as far off; empty if they are not kept one by one
	Singly []float64 // those figures, the least first
	Line   string    // of the drink file: an amount's, or the own food's that has all the figures of the world
}

// Our own bounds, so that a world can be said: how many inputs it may move (Said.noWorld says so), how many times as far a world of
// fewer of them may be than one of more, and how much farther it may be without what hardly matters to it.
const (
	mostLevers = 3
	plainer    = 1.5
	hardly     = 1.1
)

// nearest looks for the world in which a claim is false. A world of one input is told where there
// is one, since it is the easiest to say, unless several together are much more plausible.
func (b Bench) nearest(ctx context.Context, g *Glass, c *claim.Claim, margin []float64) (w *World, searched bool, err error) {
	list := g.levers(margin, b.Assay.Inputs)
	if len(list) == 0 {
		return nil, true, nil
	}
	b.runs.open()
	s := search{b, ctx, g, c}
	few := fewest(list, margin)
	w, err = s.world(few, margin)
	if w == nil && err == nil && len(few) < len(list) {
		w, err = s.world(list, margin)
	}
	switch {
	case errors.Is(err, errRuns), errors.Is(err, errUnstated):
		return nil, false, nil
	case fail.ExitCode(err) == fail.Wrong: // a world that a drink file cannot state
		return nil, true, nil
	}
	return w, true, err
}

// fewest are those levers that by the draws bring a margin down to zero nearly as soon as any of them do.
func fewest(list []lever, margin []float64) []lever {
	nearest := make([]float64, len(list)+1) // by how many
	sets := make([][]lever, len(list)+1)
	least := math.Inf(1)
	for n := range nearest {
		nearest[n] = math.Inf(1)
	}
	for chosen := 1; chosen < 1<<len(list); chosen++ {
		var some []lever
		for i, l := range list {
			if chosen&(1<<i) != 0 {
				some = append(some, l)
			}
		}
		d, n := claim.Foretold(ranges(some), margin), len(some)
		if d < nearest[n] {
			nearest[n], sets[n] = d, some
		}
		least = min(least, d)
	}
	for n, d := range nearest {
		if d < plainer*least {
			return sets[n]
		}
	}
	return list
}

// errRuns ends a search that takes too many runs.
var errRuns = errors.New("too many runs")

// errUnstated ends a search where something unknown hurts a claim and no drink file can state it.
var errUnstated = errors.New("an unknown that no drink file states")

// budget counts the runs that are left for a claim and for a drink.
type budget struct{ claim, drink int }

func newBudget() *budget {
	return &budget{drink: int(unit.LimitOf("runs for the nearest worlds of a drink", "").High)}
}

func (b *budget) open() {
	b.claim = int(unit.LimitOf("runs for the nearest world of a claim", "").High)
}

func (b *budget) spend() error {
	if b.claim == 0 || b.drink == 0 {
		return errRuns
	}
	b.claim--
	b.drink--
	return nil
}

func ranges(list []lever) []claim.Lever {
	levers := make([]claim.Lever, len(list))
	for i, l := range list {
		levers[i] = claim.Lever{Column: l.column, Low: l.low, High: l.high}
	}
	return levers
}

// lever is an input that a drink file can state otherwise.
type lever struct {
	estimate.Entry
	column    []float64 // in the unit in which it is stated
	low, high float64

	food *food.Food // whose figure it is; nil: an amount
	tag  string
	unit string
	line drink.Line // whose amount it is
}

// hurting adds to the levers of a world what nobody knows, each at the end that hurts a claim; ok is
// false where a drink file cannot state it.
func (g *Glass) hurting(c *claim.Claim, o claim.Outcome, other *Glass, list []lever, at []float64) (more []lever, set []float64, ok bool) {
	more, set = slices.Clone(list), slices.Clone(at)
	for _, gap := range o.Gaps {
		u, known := g.unknowns[gap.Key]
		if !known || !g.statable(u.food) {
			return nil, nil, false
		}
		none, err := c.Evaluate(other, map[string]float64{gap.Key: 0})
		if err != nil {
			return nil, nil, false
		}
		all, err := c.Evaluate(other, map[string]float64{gap.Key: 1})
		if err != nil {
			return nil, nil, false
		}
		x := 0.0
		if all.Margin[0] < none.Margin[0] {
			x = u.bound * unit.Hundred * u.of.PerGram
		}
		if math.IsNaN(x) || u.of.PerGram == 0 {
			return nil, nil, false
		}
		more = append(more, lever{Entry: estimate.Entry{Name: u.of.Name + " of " + u.food.ID.String()}, column: []float64{math.NaN()}, food: u.food, tag: string(u.of.ID), unit: u.of.Unit})
		set = append(set, x)
	}
	return more, set, true
}

// levers gives those inputs that a margin goes with, the most first, as far as a file can state
// them.
func (g *Glass) levers(margin []float64, inputs []estimate.Entry) []lever {
	left := slices.Clone(inputs)
	var list []lever
	for len(list) < mostLevers {
		at, _ := claim.Weakest(margin, left)
		if at < 0 {
			break
		}
		in := left[at]
		left = slices.Delete(left, at, at+1)
		if l, ok := g.lever(in); ok {
			list = append(list, l)
		}
	}
	return list
}

func (g *Glass) lever(in estimate.Entry) (lever, bool) {
	l := lever{Entry: in}
	factor := 1.0
	switch in.Cause {
	case estimate.Tables:
		what, of, _ := strings.Cut(in.Name, " of ")
		c, ok := constituentNamed(what)
		if !ok || c.PerGram == 0 {
			return l, false
		}
		for _, r := range g.assay.Serving.Rows {
			if f := r.Profile.Food; f.ID.String() == of && (r.Profile.Lender == nil || f.ID.Table == food.Own) && g.statable(f) {
				l.food, l.tag, l.unit = f, string(c.ID), c.Unit
			}
		}
		if l.food == nil {
			return l, false
		}
		factor = unit.Hundred * c.PerGram
	case estimate.Hand:
		line, ok := lineAt(g.assay.Drink, in.Name)
		if !ok || line.Portion != "" || line.Amount.Measure.Factor == 0 {
			return l, false
		}
		l.line, l.unit = line, line.Amount.Measure.Name
		factor = 1 / line.Amount.Measure.Factor
	default:
		return l, false
	}
	l.column = make([]float64, len(in.Column))
	for d, x := range in.Column {
		l.column[d] = x * factor
	}
	l.low, l.high = slices.Min(l.column), slices.Max(l.column)
	return l, true
}

// statable tells whether a drink can take a food of a table with another figure: it is poured by
// lines of components and of the build alone.
func (g *Glass) statable(f *food.Food) bool {
	if own, ok := g.assay.Drink.OwnFood(f.ID.Code); ok && f.ID.Table == food.Own {
		return own.Coffee == nil
	}
	if f.ID.Table == food.Own || f.ID.Table == "" || f.Chemical {
		return false
	}
	lines := map[string]bool{}
	for _, line := range linesOf(g.assay.Drink) {
		lines[line.Path] = line.Portion == "" && line.Fill == "" && !line.Counted
	}
	for _, r := range g.assay.Serving.Rows {
		if r.Profile.Food.ID == f.ID && !lines[r.Line] {
			return false
		}
	}
	return true
}

// linesOf lists the lines of components and of the build.
func linesOf(d *drink.Drink) []drink.Line {
	list := slices.Clone(d.Build)
	for i := range d.Components {
		list = append(list, d.Components[i].Ingredients...)
	}
	return list
}

func lineAt(d *drink.Drink, path string) (drink.Line, bool) {
	for _, line := range linesOf(d) {
		if line.Path == path {
			return line, true
		}
	}
	return drink.Line{}, false
}

// valuesOf writes the figures of a food in a world.
func valuesOf(f *food.Food, list []lever, at []float64) string {
	var values []string
	for i, l := range list {
		if l.food != nil && l.food.ID == f.ID {
			values = append(values, l.tag+": "+note.Grams(at[i])+" "+l.unit+" ± 0")
		}
	}
	return strings.Join(values, ", ")
}

// outwards rounds a figure to what can be said, away from what it is taken to be.
func (l lever) outwards(x float64) float64 {
	if x == 0 || x == l.column[0] || math.IsNaN(l.column[0]) {
		return x
	}
	step := lastOf(x)
	if x > l.column[0] {
		return math.Ceil(x/step-unit.Closeness) * step
	}
	return math.Floor(x/step+unit.Closeness) * step
}

// change says a figure of the world in words.
func (l lever) change(x float64) Change {
	c := Change{Is: l.column[0], To: x, Unit: l.unit}
	than := "over "
	switch {
	case math.IsNaN(c.Is): // nobody knows it
		than = ""
	case x < c.Is:
		than = "under "
	}
	figure := than + note.Grams(x) + " " + l.unit
	if l.food == nil {
		c.Words = "there is " + figure + " of " + l.line.Food + " in " + note.Place(drink.Owner(l.line.Path))
		c.Line = "- " + note.Grams(x) + " " + l.unit + " " + l.line.Food
		return c
	}
	named, _ := constituentNamed(strings.SplitN(l.Name, " of ", 2)[0])
	if l.food.ID.Table == food.Own {
		c.Line = "values: {" + l.tag + ": " + note.Grams(x) + " " + l.unit + " ± 0} per 100 g, in foods, " + l.food.ID.Code
	}
	c.Singly = singly(l.food, l.tag)
	c.Among = sampled(l.food, l.tag, c.Is, x)
	c.Words = "your " + shortName(l.food) + " has " + figure + " " + named.Words() + " in 100 g"
	return c
}
