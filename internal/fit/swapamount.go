package fit

import (
	"cmp"
	"context"
	"math"
	"slices"

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
	first  int // the pour by whose steps the others go
	step   float64
	seen   map[int]float64
	why    error // of a step that could not be done
}

// try makes the drink with a food. Nil if it cannot be made, or not with what is asked.
func (s *swap) try(ctx context.Context, n near) (*trial, error) {
	d, pours := s.with(n.food)
	t := &trial{near: n, pours: pours, seen: map[int]float64{}}
	var err error
	if t.bench, t.recipe, err = s.kitchen(ctx, d); err != nil {
		return nil, s.leaveOut(t, err)
	}
	t.begin(s)
	at := max(1, int(math.Round(t.number(s, t.first, n.times)/t.step)))
	if _, err := t.at(ctx, s, at); err != nil {
		return nil, err
	}
	const quarter = 4
	for stride := max(1, at/quarter); ; stride /= 2 {
		for moved := true; moved; {
			moved = false
			for _, to := range []int{at - stride, at + stride} {
				far, err := t.at(ctx, s, to)
				if err != nil {
					return nil, err
				}
				if far < t.seen[at] {
					at, moved = to, true
					break
				}
			}
		}
		if stride <= 1 {
			break
		}
	}
	t.far = t.seen[at]
	if math.IsInf(t.far, 1) {
		return nil, s.leaveOut(t, cmp.Or(t.why, errFarOff))
	}
	t.settle(s, at)
	return t, nil
}

var errFarOff error = fail.New(fail.Wrong, "at no amount does it bring as much less as is asked and keep the rest", "")

// leaveOut keeps why one that comes near cannot be used; an error that is nobody's fault goes on.
func (s *swap) leaveOut(t *trial, err error) error {
	if fail.ExitCode(err) != fail.Wrong {
		return err
	}
	if len(s.Out) < mostOut && err != errFarOff {
		s.Out = append(s.Out, LeftOut{t.food, plainOf(err)})
	}
	return nil
}

// begin finds the pour that is most, and the step of its amount.
func (t *trial) begin(s *swap) {
	for i, p := range t.pours {
		if s.weighs(p) > s.weighs(t.pours[t.first]) {
			t.first = i
		}
	}
	t.step = t.stepOf(t.pours[t.first].From, t.number(s, t.first, t.times))
}

// stepOf is the step of an amount that comes to so much: that of the scale, or of what is written; finer
// where it would be less than a few of them.
func (t *trial) stepOf(w unit.Amount, number float64) float64 {
	const few = 5
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

// amounts are those of a number of steps of the first pour; the others go with it.
func (t *trial) amounts(s *swap, at int) []unit.Amount {
	times := float64(at) * t.step / t.number(s, t.first, 1)
	list := make([]unit.Amount, len(t.pours))
	for i, p := range t.pours {
		x := t.number(s, i, times)
		st := t.step
		if i != t.first {
			st = t.stepOf(p.From, x)
			x = math.Round(x/st) * st
		}
		a := p.From
		if p.From.Number > 0 {
			a.Half *= x / p.From.Number
		}
		a.Number, a.Decimals = x, decimals(st)
		digits := math.Pow10(a.Decimals)
		a.Number, a.Half = math.Round(a.Number*digits)/digits, math.Round(a.Half*digits*10)/(digits*10)
		list[i] = a
	}
	return list
}

func (t *trial) other(list []unit.Amount) amount.Amounts {
	other := amount.Amounts{}
	for i, p := range t.pours {
		other[p.Now] = list[i]
	}
	return other
}

// at is how far the drink is from what it was, at so many steps of the first pour; infinitely where it cannot be made.
func (t *trial) at(ctx context.Context, s *swap, at int) (float64, error) {
	if far, ok := t.seen[at]; ok {
		return far, nil
	}
	within := unit.LimitOf("mass of a swap", "times")
	if times := float64(at) * t.step / t.number(s, t.first, 1); at < 1 || times < within.Low && at > 1 || times > within.High {
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
	if s.Less != nil && s.bring(a, s.Less, t.food.ID) > s.brought*unit.LimitOf("what a swap for less brings", "share").High {
		return math.Inf(1), nil
	}
	g := claims.NewGlass(a, t.bench.Declared)
	for _, x := range s.Kept {
		low, high, err := x.ends(g)
		if err != nil {
			return 0, err
		}
		for _, now := range [][2]float64{{low, x.low}, {high, x.high}} {
			share := now[0] / now[1]
			switch {
			case now[1] == 0 && now[0] == 0:
			case math.IsNaN(share) || math.IsInf(share, 0):
				far = max(far, 1) // nobody knows: neither is it told as kept nor as lost
			default:
				far = max(far, x.noticed(share))
			}
		}
	}
	return far, nil
}

// settle takes the amounts of a point for those of the drink.
func (t *trial) settle(s *swap, at int) {
	for i, a := range t.amounts(s, at) {
		t.pours[i].To = a
	}
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

// unlike reports whether two foods are two proposals: not of one name before the comma, nor of one group
// where others have not had their turn.
func unlike(list []Substitute, f *trial) bool {
	return !slices.ContainsFunc(list, func(x Substitute) bool { return headOf(x.Food.Name()) == headOf(f.food.Name()) })
}
