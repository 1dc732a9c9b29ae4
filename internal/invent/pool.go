package invent

import (
	"cmp"
	"errors"
	"math"
	"slices"
	"strings"

	"sipsum/internal/estimate"
	"sipsum/internal/unit"
)

// pool is the search as arithmetic: what the drink as written is of each condition, and what a gram of each
// candidate adds.
type pool struct {
	base     [][]float64 // by condition and draw, the central value first
	strict   []bool
	list     []candidate
	most     float64         // g that may be put in altogether
	enough   float64         // the share of the draws in which an answer holds
	sure     float64         // the share from which on more is no better
	together int             // of how many candidates threesomes are tried
	won      map[string]bool // sets that are answers
	dropped  map[string]bool // those of them of which a calculation has shown that they are none
}

// candidate is one thing that may be poured.
type candidate struct {
	centre []float64 // by condition: what a gram adds at central values
	grams  []float64 // that are tried, the least first
	words  []string  // by which it is like others
	helped []float64 // the same with what nobody knows at the end that helps
	plain  bool      // sugar, acid, water: what any drink may have
	drawn  func() (columns, error)

	best []float64 // by condition: the most that it can add
}

// answer is a set of candidates with its best amounts.
type answer struct {
	of    []int
	grams []float64
	other int // so many of it are no sugar, acid or water, which any drink may have
	holds int // in so many of the draws
	ranks int // the same, but for what is surely enough: more is no better
	draws int
	total float64
}

// before puts fewer foods first, then what holds in more draws until it hardly fails, then as few foods beside
// sugar, acids and water as do, but one, then what moves the drink less.
func (a answer) before(b answer) int {
	return cmp.Or(cmp.Compare(len(a.of), len(b.of)), cmp.Compare(b.ranks, a.ranks), cmp.Compare(a.foods(), b.foods()), cmp.Compare(a.total, b.total), slices.Compare(a.of, b.of))
}

// foods counts what gives a set its own character; a set of nothing but sugar, acids and water comes last.
func (a answer) foods() int {
	if a.other == 0 {
		return largest + 1
	}
	return a.other
}

// prepare works out the most that each candidate can do.
func (p *pool) prepare() {
	p.won, p.dropped = map[string]bool{}, map[string]bool{}
	for i := range p.list {
		c := &p.list[i]
		c.best = make([]float64, len(p.base))
		for k, a := range c.centre {
			c.best[k] = max(a*c.grams[0], a*c.grams[len(c.grams)-1])
		}
	}
}

// dust is what arithmetic leaves of a sum that is made of so much.
func dust(of float64) float64 { return unit.Closeness * of }

// reaches reports whether a condition holds at a sum of what is made of so much.
func (p *pool) reaches(k int, x, of float64) bool {
	if p.strict[k] {
		return x > dust(of)
	}
	return x >= -dust(of)
}

// could reports whether candidates together may meet every condition at central values, each at the amount
// that is best for it.
func (p *pool) could(of ...int) bool {
	least := 0.0
	for _, i := range of {
		least += p.list[i].grams[0]
	}
	if least > p.most {
		return false
	}
	for k := range p.base {
		x, made := p.base[k][0], math.Abs(p.base[k][0])
		for _, i := range of {
			x += p.list[i].best[k]
			made += math.Abs(p.list[i].best[k])
		}
		if !p.reaches(k, x, made) {
			return false
		}
	}
	return true
}

// firm is in how many of the draws a set holds that hardly fails.
func (p *pool) firm() int { return int(math.Ceil(p.sure*float64(p.drawsOf()) - unit.Closeness)) }

// drawsOf is how many draws there are.
func (p *pool) drawsOf() int { return len(p.base[0]) - 1 }

// trial is a set whose amounts are tried: the draws of the drink, with what hands are off by, those of what
// it pours, and which have failed.
type trial struct {
	base   [][]float64
	cols   [largest][][]float64 // of fewer foods the last add nothing
	failed []bool
}

func (p *pool) trial(of []int) (*trial, error) {
	var list []columns
	for _, i := range of {
		c, err := p.list[i].drawn()
		if err != nil {
			return nil, err
		}
		list = append(list, c)
	}
	t := p.trialOf(list)
	return t, nil
}

func (p *pool) trialOf(list []columns) *trial {
	t := &trial{base: p.base, failed: make([]bool, p.drawsOf()+1), cols: [largest][][]float64{p.base, p.base, p.base}}
	for n, c := range list {
		t.cols[n] = c.hurt
	}
	if !slices.ContainsFunc(list, func(c columns) bool { return c.hand != nil }) {
		return t
	}
	t.base = make([][]float64, len(p.base))
	for k, base := range p.base {
		t.base[k] = slices.Clone(base)
		for _, c := range list {
			for d, off := range c.hand {
				if off != 0 {
					t.base[k][d] += off * c.hurt[k][d]
				}
			}
		}
	}
	return t
}

// holding counts the draws in which all conditions hold; ok is false where more than so many fail.
func (p *pool) holding(t *trial, grams []float64, fails int) (holds int, ok bool) {
	var g [largest]float64
	copy(g[:], grams)
	clear(t.failed)
	n := 0
	for k, base := range t.base {
		least := p.least(k)
		a, b, c := t.cols[0][k], t.cols[1][k], t.cols[2][k]
		for d := 1; d < len(base); d++ {
			x := base[d] + g[0]*a[d]
			if len(grams) > 1 {
				x += g[1]*b[d] + g[2]*c[d]
			}
			if !t.failed[d] && !(x >= least) {
				t.failed[d] = true
				n++
			}
		}
		if n > fails {
			return 0, false
		}
	}
	return p.drawsOf() - n, true
}

// least is from where on a condition holds in a draw: nothing, but for what arithmetic leaves.
func (p *pool) least(k int) float64 {
	if p.strict[k] {
		return dust(math.Abs(p.base[k][0]))
	}
	return -dust(math.Abs(p.base[k][0]))
}

// may reports whether a set may hold in enough draws, were each amount in each draw that which is best for
// each condition.
func (p *pool) may(t *trial, of []int, fails int) bool {
	n := 0
	for d := 1; d <= p.drawsOf(); d++ {
		for k, base := range t.base {
			x := base[d]
			for i, c := range of {
				grams, a := p.list[c].grams, t.cols[i][k][d]
				x += max(a*grams[0], a*grams[len(grams)-1])
			}
			if x < p.least(k) {
				n++
				break
			}
		}
		if n > fails {
			return false
		}
	}
	return true
}

// bestOf finds the amounts of a set at which it holds in most draws, of those the least; ok is false where it
// does not hold in enough.
func (p *pool) bestOf(of []int) (best answer, ok bool, err error) {
	fails := int(math.Floor((1-p.enough)*float64(p.drawsOf()) + unit.Closeness))
	var t *trial
	err = p.eachAmount(of, func(grams []float64) (err error) {
		if t == nil {
			if t, err = p.trial(of); err != nil {
				return err
			}
			if !p.may(t, of, fails) {
				return errNone
			}
		}
		n, done := p.holding(t, grams, fails)
		if !done {
			return nil
		}
		next := answer{of: of, grams: slices.Clone(grams), holds: n, ranks: min(n, p.firm()), draws: p.drawsOf()}
		for m, i := range of {
			next.total += grams[m]
			if !p.list[i].plain {
				next.other++
			}
		}
		if !ok || next.before(best) < 0 {
			best, ok = next, true
			fails = p.drawsOf() - next.ranks
		}
		return nil
	})
	if errors.Is(err, errNone) {
		err = nil
	}
	return best, ok, err
}

// errNone ends the amounts of a set that holds in too few draws at any.
var errNone = errors.New("no amounts do")

// eachAmount gives every choice of amounts of a set that may be put in and that meets every condition at
// central values. A choice of which the first amounts leave too much to the others is not gone through.
func (p *pool) eachAmount(of []int, use func([]float64) error) error {
	conditions, size := len(p.base), len(of)
	grams := make([]float64, size)
	sums, made := make([]float64, (size+1)*conditions), make([]float64, (size+1)*conditions) // with the first n amounts
	rest := make([]float64, (size+1)*conditions)                                             // the most that those from n on add
	for k := range conditions {
		sums[k], made[k] = p.base[k][0], math.Abs(p.base[k][0])
		for n := size - 1; n >= 0; n-- {
			rest[n*conditions+k] = rest[(n+1)*conditions+k] + p.list[of[n]].best[k]
		}
	}
	var at func(n int, left float64) error
	at = func(n int, left float64) error {
		if n == size {
			return use(grams)
		}
		c, now, next := &p.list[of[n]], n*conditions, (n+1)*conditions
		for _, x := range c.grams {
			if x > left+unit.Closeness {
				break
			}
			grams[n] = x
			could := true
			for k := 0; k < conditions && could; k++ {
				add := c.centre[k] * x
				sums[next+k], made[next+k] = sums[now+k]+add, made[now+k]+math.Abs(add)
				could = p.reaches(k, sums[next+k]+rest[next+k], made[next+k]+math.Abs(rest[next+k]))
			}
			if !could {
				continue
			}
			if err := at(n+1, left-x); err != nil {
				return err
			}
		}
		return nil
	}
	return at(0, p.most)
}

// answers finds the best set of so many candidates of each family that are alike, the best first. A set of
// which a part is an answer by itself is none. whole: all sets were tried.
func (p *pool) answers(size int) (list []answer, whole bool, err error) {
	among := p.all()
	if size == largest && len(among) > p.together {
		among = p.telling()
	}
	var sets [][]int
	eachSet(among, size, func(of []int) {
		if !p.twice(of) && !p.dropped[key(of)] && !p.spare(of) && p.could(of...) {
			sets = append(sets, slices.Clone(of))
		}
	})
	found := make([]*answer, len(sets))
	err = estimate.InBlocks(len(sets), func(from, to int) error {
		for n := from; n < to; n++ {
			a, ok, err := p.bestOf(sets[n])
			if err != nil {
				return err
			}
			if ok {
				found[n] = &a
			}
		}
		return nil
	})
	best := map[string]*answer{}
	for _, a := range found {
		if a == nil {
			continue
		}
		p.won[key(a.of)] = true
		name := p.family(a.of)
		if than, have := best[name]; !have || a.before(*than) < 0 {
			best[name] = a
		}
	}
	for _, a := range best {
		list = append(list, *a)
	}
	slices.SortFunc(list, answer.before)
	return list, len(among) == len(p.list), err
}

// largest is the size of the largest set that is tried.
const largest = 3

func (p *pool) all() []int {
	list := make([]int, len(p.list))
	for i := range list {
		list[i] = i
	}
	return list
}

// eachSet gives every set of so many of a list.
func eachSet(among []int, size int, use func([]int)) {
	of := make([]int, size)
	var at func(n, from int)
	at = func(n, from int) {
		if n == size {
			use(of)
			return
		}
		for i := from; i < len(among); i++ {
			of[n] = among[i]
			at(n+1, i+1)
		}
	}
	at(0, 0)
}

// key names a set.
func key(of []int) string {
	b := make([]byte, 0, 3*len(of))
	for _, i := range of {
		b = append(b, byte(i), byte(i>>8), byte(i>>16))
	}
	return string(b)
}

// twice reports whether a set holds two of one kind, or one in two preparations.
func (p *pool) twice(of []int) bool {
	for n, i := range of {
		for _, j := range of[:n] {
			if slices.Equal(p.list[i].words, p.list[j].words) {
				return true
			}
		}
	}
	return false
}

// spare reports whether a part of a set is an answer by itself.
func (p *pool) spare(of []int) bool {
	if len(p.won) == 0 {
		return false
	}
	for size := 1; size < len(of); size++ {
		spare := false
		eachSet(of, size, func(part []int) { k := key(part); spare = spare || p.won[k] && !p.dropped[k] })
		if spare {
			return true
		}
	}
	return false
}

// family names what a set is like: the words of what it pours.
func (p *pool) family(of []int) string {
	var list []string
	for _, i := range of {
		list = append(list, strings.Join(p.list[i].words, " "))
	}
	slices.Sort(list)
	return strings.Join(list, " + ")
}

// telling are the candidates that do most for a condition that the drink as written misses, or that others
// take from it.
func (p *pool) telling() []int {
	each := max(1, p.together/max(1, len(p.base)))
	chosen := map[int]bool{}
	for k := range p.base {
		order := p.all()
		slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(p.list[b].best[k], p.list[a].best[k]) })
		for _, i := range order[:min(each, len(order))] {
			chosen[i] = true
		}
	}
	var list []int
	for i := range p.list {
		if chosen[i] {
			list = append(list, i)
		}
	}
	return list
}
