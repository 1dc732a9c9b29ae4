package fit

import (
	"cmp"
	"context"
	"errors"
	"math"
	"slices"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/claims"
	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/recipe"
	"sipsum/internal/spelling"
	"sipsum/internal/unit"
)

// Swapped are the constituents that are told of a serving where a food gave way to another.
var Swapped = append(slices.Clone(Beside), constituent.Fat, constituent.Protein)

// rank judges the trials that come nearest with draws, and lists the best that are unlike each other.
func (s *swap) rank(ctx context.Context, tried []*trial) error {
	slices.SortStableFunc(tried, func(a, b *trial) int { return cmp.Compare(a.far, b.far) })
	want := assay.Want{Figures: slices.Clone(Swapped), Intervals: true, Chemistry: true, Draws: true}
	for _, t := range s.Kept {
		if t.Of != "" {
			want.Figures = append(want.Figures, t.Of)
		}
	}
	var err error
	if s.Before, err = s.bench.Drawn.Run(ctx, nil, want); err != nil {
		return err
	}
	before := claims.NewGlass(s.Before, s.bench.Declared)
	for i := range s.Kept {
		if s.Kept[i].Before, err = figure(s.Kept[i].goal, s.Before, before); err != nil {
			return err
		}
	}
	var list []Substitute
	for _, t := range tried {
		if len(list) == mostJudged {
			break
		}
		if slices.ContainsFunc(list, func(x Substitute) bool { return alike(x, t) }) {
			continue
		}
		x, err := s.judged(ctx, t, before, want)
		if err != nil {
			return err
		}
		list = append(list, x)
	}
	slices.SortStableFunc(list, better)
	s.Found = s.varied(list)
	return nil
}

// varied takes the best of a list, no more than a few of one group while others keep what is held.
func (s *swap) varied(list []Substitute) []Substitute {
	const few = 2
	count := map[string]int{s.Of.Group: -1} // one more of its own
	var first, rest []Substitute
	for _, x := range list {
		if count[x.Food.Group]++; count[x.Food.Group] <= few && x.far <= 1 && len(first) < mostFound {
			first = append(first, x)
		} else {
			rest = append(rest, x)
		}
	}
	list = append(first, rest...)
	list = list[:min(len(list), mostFound)]
	slices.SortStableFunc(list, better)
	return list
}

// better puts last what is smelled, and first what brings no new taste, then what keeps the drink most often, then what comes nearest.
func better(a, b Substitute) int {
	last := func(x Substitute) int { return map[bool]int{true: 1}[x.Smelled] }
	return cmp.Or(last(a)-last(b), cmp.Compare(len(a.Comes), len(b.Comes)), cmp.Compare(ofAHundred(b.Sure), ofAHundred(a.Sure)), cmp.Compare(a.far, b.far))
}

// alike reports whether two foods are one proposal: of one name before the comma, or of one group, poured in one
// amount and as near.
func alike(x Substitute, t *trial) bool {
	if headOf(x.Food.Name()) == headOf(t.food.Name()) {
		return true
	}
	const untold = 0.25 // of what a judge notices
	near := unit.LimitOf("what is matched of a variant", "share")
	return x.Food.Group == t.food.Group && math.Abs(x.far-t.far) < untold && !slices.ContainsFunc(t.pours, func(p Pour) bool {
		i := slices.IndexFunc(x.Poured, func(o Pour) bool { return o.Path == p.Path })
		ratio := p.To.Base() / x.Poured[i].To.Base()
		return ratio < near.Low || ratio > near.High
	})
}

// ofAHundred is a share as far as it is told.
func ofAHundred(x float64) float64 { return math.Round(x * unit.Hundred) }

// judged runs a trial with draws and says what stays.
func (s *swap) judged(ctx context.Context, t *trial, before *claims.Glass, want assay.Want) (Substitute, error) {
	x := Substitute{Food: t.food, Poured: t.pours, Recipe: t.recipe, Asked: t.asked, Smelled: t.smelled, far: t.far}
	t.bench.Drawn.Follow(t.follows())
	var err error
	if x.After, err = t.bench.Drawn.Run(ctx, t.to(), want); err != nil {
		return x, err
	}
	after := claims.NewGlass(x.After, t.bench.Declared)
	var all together
	for _, k := range s.Kept {
		if k.After, err = figure(k.goal, x.After, after); err != nil {
			return x, err
		}
		holds, err := k.stays(before, after)
		if err != nil {
			return x, err
		}
		if k.After.Unknown { // it may be as it was, and nobody can say so
			holds = [2][]bool{make([]bool, len(holds[0])), slices.Repeat([]bool{true}, len(holds[1]))}
		}
		all.add(holds)
		k.Hurt, k.Help = shareOf(holds[0]), shareOf(holds[1])
		x.Held = append(x.Held, k)
	}
	x.Sure, x.May = all.shares()
	x.Comes, err = s.comes(x.After, before, after)
	x.Still, x.Thick = s.still(t.recipe), thick(x.After, t.food)
	return x, err
}

// stays judges draw by draw whether a figure stays; one that is held by what is known of it
// may stay where what is unknown of it reaches so far.
func (t Trait) stays(before, after *claims.Glass) (holds [2][]bool, err error) {
	r := Ready{Least: t.Least, Most: t.Most}
	if !t.known {
		return beside(t.goal, r, before, after)
	}
	was, _, err := t.goal.Values(before)
	if err != nil {
		return holds, err
	}
	is, upTo, err := t.goal.Values(after)
	surely := r.within(was, is)
	may := make([]bool, len(surely))
	for d := range may {
		may[d] = is[d] <= r.Most*was[d] && upTo[d] >= r.Least*was[d]
	}
	return [2][]bool{surely, may}, err
}

// comes lists the tastes that the drink has, and had not, or not half as much of.
func (s *swap) comes(a *assay.Assay, before, after *claims.Glass) (list []Trait, err error) {
	r, err := readyOf(a, s.bench.Declared)
	if err != nil {
		return nil, err
	}
	now, _, err := r.traits(s.Less)
	if err != nil {
		return nil, err
	}
	const half = 0.5
	for _, t := range now {
		held := func(k Trait) bool { return k.Figure == t.Figure || k.Quality == Sour && t.Quality == Sour }
		if slices.ContainsFunc(s.Kept, held) {
			continue
		}
		was, _, err := t.ends(before)
		if err != nil {
			return nil, err
		}
		if t.Quality != Sour && was > half*t.low || s.Less != nil && s.Less.ID == t.Of {
			continue
		}
		if t.After, err = figure(t.goal, a, after); err != nil {
			return nil, err
		}
		list = append(list, t)
	}
	return list, nil
}

// still lists the foods of a drink that hold, or may hold, what the other food is to be without.
func (s *swap) still(r *recipe.Recipe) (list []string) {
	for _, it := range r.Items {
		if is, may, _ := s.holds(itemOf(it.Food)); (is || may) && !slices.Contains(list, it.Food.Name()) {
			list = append(list, it.Food.Name())
		}
	}
	return list
}

// headOf is what stands before the comma of a name.
func headOf(name string) string {
	short, _, _ := strings.Cut(name, ",")
	return spelling.Plain(short)
}

// plainOf is what an error says is wrong.
func plainOf(err error) string {
	var e *fail.Error
	if errors.As(err, &e) && len(e.Faults) > 0 {
		return e.Faults[0].What
	}
	return err.Error()
}
