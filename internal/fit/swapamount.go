package fit

import (
	"cmp"
	"context"
	"math"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/claims"
	"sipsum/internal/fail"
	"sipsum/internal/recipe"
	"sipsum/internal/unit"
)

// trial is a food in its place, with the amounts at which the drink comes nearest to what it was.
type trial struct {
	near
	bench  Bench
	recipe *recipe.Recipe
	pours  []Pour
	first  int     // the pour by whose steps the others go
	step   float64 // of it
	pot    *Range  // how much of the pot that the food fills is poured; nil: it fills none
	seen   map[point]float64
	why    error // of a step that could not be done
}

// point is how many steps of the food are poured, and of the pot that it fills.
type point [2]int

// try makes the drink with a food. Nil if it cannot be made, or not with what is asked.
func (s *swap) try(ctx context.Context, n near) (*trial, error) {
	d, pours := s.with(n.food)
	t := &trial{near: n, pours: pours, seen: map[point]float64{}}
	var err error
	if t.bench, t.recipe, err = s.kitchen(ctx, d); err != nil {
		return nil, s.leaveOut(t, err)
	}
	t.begin(s)
	best, err := t.walk(ctx, s)
	if err != nil {
		return nil, err
	}
	t.far = t.seen[best]
	if math.IsInf(t.far, 1) {
		return nil, s.leaveOut(t, cmp.Or(t.why, errFarOff))
	}
	for i, a := range t.amounts(s, best) {
		t.pours[i].To = a
	}
	if why, err := s.beyond(ctx, t); why != nil || err != nil {
		return nil, cmp.Or(err, s.leaveOut(t, why))
	}
	return t, nil
}

// walk looks for the nearest point: strides that halve, along the one amount that decides. Of a pot that
// the food fills that is how much of it is poured: into the pot goes as much as before.
func (t *trial) walk(ctx context.Context, s *swap) (point, error) {
	as := point{max(1, int(math.Round(t.number(s, t.first, 1)/t.step))), 0}
	at, on := point{max(1, int(math.Round(t.number(s, t.first, t.times)/t.step))), 0}, 0
	if t.pot != nil {
		as[1], on = int(math.Round(t.pot.Written.Number/t.pot.Step)), 1
		at = as
	}
	for _, x := range []point{as, at} {
		if _, err := t.at(ctx, s, x); err != nil {
			return at, err
		}
	}
	if t.seen[as] < t.seen[at] || s.even {
		at = as
	}
	if s.even {
		return at, nil
	}
	const quarter = 4
	for stride := max(1, at[on]/quarter); ; stride /= 2 {
		for moved := true; moved; {
			moved = false
			for _, by := range []int{-stride, stride} {
				to := at
				to[on] += by
				far, err := t.at(ctx, s, to)
				if err != nil {
					return at, err
				}
				if far < t.seen[at] {
					at, moved = to, true
					break
				}
			}
		}
		if stride <= 1 {
			return t.leastChange(at, as, on), nil
		}
	}
}

// leastChange is, of the points that no judge tells from the nearest, the one that pours most nearly as much as before.
func (t *trial) leastChange(best, as point, on int) point {
	const untold = 0.05 // of what a judge notices
	change := func(x point) float64 { return math.Abs(float64(x[on] - as[on])) }
	at := best
	for x, far := range t.seen {
		if a, b := change(x), change(at); far <= t.seen[best]+untold && (a < b || a == b && x[on] < at[on]) {
			at = x
		}
	}
	return at
}

var errFarOff error = fail.New(fail.Wrong, "at no amount does it bring as much less as is asked and keep the rest", "")

// leaveOut keeps why one that comes near cannot be used; an error that is nobody's fault goes on.
func (s *swap) leaveOut(t *trial, err error) error {
	if fail.ExitCode(err) != fail.Wrong {
		return err
	}
	if err != errFarOff {
		s.Out = append(s.Out, LeftOut{t.food, plainOf(err), t.far})
	}
	return nil
}

// begin finds the pour that is most, the step of its amount, and the pot that the food fills.
func (t *trial) begin(s *swap) {
	for i, p := range t.pours {
		if s.weighs(p) > s.weighs(t.pours[t.first]) {
			t.first = i
		}
	}
	t.step = t.stepOf(t.pours[t.first].From, t.number(s, t.first, t.times))
	if s.fills == nil {
		return
	}
	within := unit.LimitOf("amount that nobody lets vary", "share")
	w := s.fills.Amount
	t.pot = &Range{Path: s.fills.Path, Of: s.fills.Food, Written: w, From: within.Low * w.Number, To: within.High * w.Number, Step: step(t.bench.Drink, w)}
	t.pours = append(t.pours, Pour{Path: s.fills.Path, Now: s.fills.Path, Pot: s.fills.Food, From: w, To: w})
}

// stepOf is the step of an amount that comes to so much: that of the scale, or of what is written; finer
// where it would be less than a few of them.
func (t *trial) stepOf(w unit.Amount, number float64) float64 {
	const few, spoon = 5, 0.5
	if w.Measure.Spread > 0 { // nobody fills a spoon to a tenth
		return spoon
	}
	st := step(t.bench.Drink, w)
	for number < few*st && decimals(st) < mostDecimals {
		st /= 10
	}
	return st
}

// weighs is what of the food a pour weighs in as it is written, in grams.
func (s *swap) weighs(p Pour) float64 {
	if s.recipe.Lines[p.Path].Line.Portion != "" || p.From.Measure.Kind == unit.Share {
		return p.From.Base()
	}
	return p.From.Base() * s.recipe.Lines[p.Path].Grams
}

// number is the amount of a pour that weighs so many times what was poured.
func (t *trial) number(s *swap, i int, times float64) float64 {
	p := t.pours[i]
	if p.From.Measure.Kind == unit.Share {
		return p.From.Number * times
	}
	return s.weighs(p) * times / t.recipe.Lines[p.Now].Grams / p.From.Measure.Factor
}

// amounts are those of a point; lines that pour the food too go with the first.
func (t *trial) amounts(s *swap, at point) []unit.Amount {
	times := float64(at[0]) * t.step / t.number(s, t.first, 1)
	list := make([]unit.Amount, len(t.pours))
	for i, p := range t.pours {
		switch {
		case p.Pot != "":
			list[i] = poured(p.From, float64(at[1])*t.pot.Step, t.pot.Step)
		case i == t.first:
			list[i] = poured(p.From, float64(at[0])*t.step, t.step)
		default:
			x := t.number(s, i, times)
			list[i] = poured(p.From, x, t.stepOf(p.From, x))
		}
	}
	return list
}

// poured is another number of what is poured, on the steps of a scale; a hand errs by as much of it.
func poured(a unit.Amount, number, st float64) unit.Amount {
	a.Decimals = decimals(st)
	digits := math.Pow10(a.Decimals)
	number = math.Round(math.Round(number/st)*st*digits) / digits
	if a.Number > 0 {
		const finer = 10
		a.Half = math.Round(a.Half*number/a.Number*digits*finer) / (digits * finer)
	}
	a.Number = number
	return a
}

func (t *trial) other(list []unit.Amount) amount.Amounts {
	other := amount.Amounts{}
	for i, p := range t.pours {
		other[p.Now] = list[i]
	}
	return other
}

// at is how far the drink is from what it was at a point; infinitely where it cannot be made.
func (t *trial) at(ctx context.Context, s *swap, at point) (float64, error) {
	if far, ok := t.seen[at]; ok {
		return far, nil
	}
	within := unit.LimitOf("mass of a swap", "times")
	times := float64(at[0]) * t.step / t.number(s, t.first, 1)
	if at[0] < 1 || times < within.Low && at[0] > 1 || times > within.High || t.pot != nil && !t.pot.holds(float64(at[1])*t.pot.Step) {
		t.seen[at] = math.Inf(1)
		return t.seen[at], nil
	}
	a, err := t.bench.Central.Run(ctx, t.other(t.amounts(s, at)), assay.Want{Draws: true, Chemistry: true})
	if fail.ExitCode(err) == fail.Wrong {
		t.why, t.seen[at] = err, math.Inf(1)
		return t.seen[at], nil
	}
	if err != nil {
		return 0, err
	}
	t.seen[at], err = s.farOf(t, a)
	return t.seen[at], err
}

// farOf is the most of what a judge would notice of what is held.
func (s *swap) farOf(t *trial, a *assay.Assay) (far float64, err error) {
	if !s.standsFor(a, t.food.ID) {
		return math.Inf(1), nil
	}
	if s.tooMuch(a, t.food.ID) {
		return math.Inf(1), nil
	}
	g := claims.NewGlass(a, t.bench.Declared)
	for _, x := range s.Kept {
		low, high, err := x.ends(g)
		if err != nil {
			return 0, err
		}
		if x.known {
			all := x
			all.known = false
			if _, most, err := all.ends(g); err != nil || low < x.Least*x.low && most >= x.Least*x.low {
				far = max(far, 1) // what is unknown may make it up
				continue
			}
		}
		far = max(far, x.off(low, high))
	}
	return far, nil
}

// off is how far a figure is off, in what a judge notices: as far as it surely is, and by what nobody knows of it
// no further than to be told neither as kept nor as lost, and a tenth of what it may be beyond that.
func (t Trait) off(low, high float64) float64 {
	share := func(now, was float64) float64 {
		if now == 0 && was == 0 {
			return 1
		}
		return now / was
	}
	a, b := share(low, t.low), share(high, t.high)
	sure := min(t.noticed(a), t.noticed(b))
	switch {
	case math.IsNaN(a) || math.IsInf(a, 0):
		return 1
	case math.IsNaN(b) || math.IsInf(b, 0):
		if sure = t.noticed(a); a < 1 {
			sure = 0
		}
		return max(sure, 1)
	case (a-1)*(b-1) < 0:
		sure = 0
	}
	const tenth = 0.1
	most := max(t.noticed(a), t.noticed(b))
	return max(sure, min(most, 1+tenth*(most-1)))
}

// to are the amounts that were found.
func (t *trial) to() amount.Amounts {
	list := make([]unit.Amount, len(t.pours))
	for i, p := range t.pours {
		list[i] = p.To
	}
	return t.other(list)
}

// follows names the streams of what is poured: the hand that pours it is that of before.
func (t *trial) follows() amount.Streams {
	streams := amount.Streams{}
	for _, p := range t.pours {
		streams[p.Now] = p.Path
	}
	return streams
}
