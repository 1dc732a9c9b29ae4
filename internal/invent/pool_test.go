package invent

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const poolDraws = 60

// randomPool is a drink that misses some conditions, and foods of which a gram brings something of each and
// takes something away, all in draws.
func randomPool(r *rand.Rand, foods, amounts int, hard float64) *pool {
	conditions := 2 + r.IntN(3)
	p := &pool{most: 100, enough: 0.75, sure: 0.95, together: 1000}
	for k := range conditions {
		centre := -hard * r.Float64()
		if k == 0 {
			centre = -hard
		}
		p.base = append(p.base, spreadOf(r, centre, 0.3))
		p.strict = append(p.strict, r.IntN(2) == 0)
	}
	names := strings.Split("apple pear plum cherry quince grape lemon lime peach melon fig date mango kiwi papaya", " ")
	for range foods {
		var c columns
		for range conditions {
			c.hurt = append(c.hurt, spreadOf(r, 0.4*r.NormFloat64()-0.1, 0.08))
		}
		c.hand = spreadOf(r, 0, 0.2)
		one := candidate{plain: r.IntN(6) == 0, words: []string{names[r.IntN(len(names))]}, drawn: func() (columns, error) { return c, nil }}
		x := 1 + 3*r.Float64()
		for range amounts {
			one.grams = append(one.grams, x)
			x *= 1.5
		}
		for k := range conditions {
			one.centre = append(one.centre, c.hurt[k][0])
		}
		p.list = append(p.list, one)
	}
	p.prepare()
	return p
}

func spreadOf(r *rand.Rand, centre, sd float64) []float64 {
	col := []float64{centre}
	for range poolDraws {
		col = append(col, centre+sd*r.NormFloat64())
	}
	return col
}

// exhausted tries every set and every amount, and nothing else.
func exhausted(t *testing.T, p *pool) [][]answer {
	t.Helper()
	won := map[string]bool{}
	lists := make([][]answer, largest)
	for size := 1; size <= largest; size++ {
		best, wins := map[string]answer{}, []string{}
		eachSet(p.all(), size, func(of []int) {
			for smaller := 1; smaller < size; smaller++ {
				skip := false
				eachSet(of, smaller, func(part []int) { skip = skip || won[key(part)] })
				if skip {
					return
				}
			}
			for n, i := range of {
				if slices.ContainsFunc(of[:n], func(j int) bool { return p.list[i].words[0] == p.list[j].words[0] }) {
					return // two of one kind
				}
			}
			found := tried(t, p, of)
			if found == nil {
				return
			}
			wins = append(wins, key(of))
			name := p.family(of)
			if than, have := best[name]; !have || found.before(than) < 0 {
				best[name] = *found
			}
		})
		for _, w := range wins {
			won[w] = true
		}
		for _, a := range best {
			lists[size-1] = append(lists[size-1], a)
		}
		slices.SortFunc(lists[size-1], answer.before)
	}
	return lists
}

// tried tries every amount of a set.
func tried(t *testing.T, p *pool, of []int) *answer {
	t.Helper()
	var best *answer
	var cols []columns
	for _, i := range of {
		c, err := p.list[i].drawn()
		require.NoError(t, err)
		cols = append(cols, c)
	}
	at := make([]int, len(of))
	for {
		a := answer{of: slices.Clone(of), draws: poolDraws}
		for n, i := range of {
			x := p.list[i].grams[at[n]]
			a.grams, a.total = append(a.grams, x), a.total+x
			if !p.list[i].plain {
				a.other++
			}
		}
		if holds(p, cols, a.grams, 0) && a.total <= p.most {
			for d := 1; d <= poolDraws; d++ {
				if holds(p, cols, a.grams, d) {
					a.holds++
				}
			}
			a.ranks = min(a.holds, 57) // 95 % of 60
			if a.holds >= 45 && (best == nil || a.before(*best) < 0) {
				best = &a
			}
		}
		n := 0
		for ; n < len(at); n++ {
			if at[n]++; at[n] < len(p.list[of[n]].grams) {
				break
			}
			at[n] = 0
		}
		if n == len(at) {
			return best
		}
	}
}

// holds adds up one draw.
func holds(p *pool, cols []columns, grams []float64, d int) bool {
	for k := range p.base {
		sum := p.base[k][d]
		for n := range cols {
			sum += (grams[n] + cols[n].hand[d]) * cols[n].hurt[k][d]
		}
		if sum < 0 {
			return false
		}
	}
	return true
}

// Whatever is pruned, the answers are those of trying every set of thirty foods at every amount.
func TestAnswersAreThoseOfTryingEverySet(t *testing.T) {
	r := rand.New(rand.NewPCG(16, 30))
	var sizes [largest + 1]int
	for round, hard := range []float64{1, 2, 4, 8, 14} {
		p := randomPool(r, 30, 3, hard)
		want := exhausted(t, p)
		for size := 1; size <= largest; size++ {
			got, whole, err := p.answers(size)
			require.NoError(t, err)
			assert.True(t, whole)
			if assert.Len(t, got, len(want[size-1]), "round %d, %d foods", round, size) {
				for n := range got {
					assert.Equal(t, want[size-1][n], got[n], "round %d, %d foods", round, size)
				}
			}
			sizes[size] += len(got)
		}
	}
	t.Logf("families of answers of one, two and three foods: %v", sizes[1:])
	for size := 1; size <= largest; size++ {
		assert.Positive(t, sizes[size], "some are found of %d foods", size)
	}
}

// A set of which a part is an answer is none, until a calculation shows that the part does not do.
func TestWhatIsDroppedLeavesRoomForMore(t *testing.T) {
	flat := func(centre float64) []float64 { return make0(centre) }
	food := func(word string, brings ...float64) candidate {
		var c columns
		for _, x := range brings {
			c.hurt = append(c.hurt, flat(x))
		}
		return candidate{words: []string{word}, grams: []float64{10}, centre: brings, drawn: func() (columns, error) { return c, nil }}
	}
	p := &pool{base: [][]float64{flat(-10)}, strict: []bool{false}, most: 100, enough: 0.75, sure: 0.95, together: 10, list: []candidate{food("apple", 1), food("pear", 0.5), food("plum", 0.5)}}
	p.prepare()
	one, _, err := p.answers(1)
	require.NoError(t, err)
	require.Len(t, one, 1)
	two, _, err := p.answers(2)
	require.NoError(t, err)
	require.Len(t, two, 1)
	assert.Equal(t, []int{1, 2}, two[0].of, "apple does by itself")
	p.dropped[key([]int{0})] = true
	two, _, err = p.answers(2)
	require.NoError(t, err)
	assert.Len(t, two, 3)
}

func make0(x float64) []float64 {
	col := make([]float64, poolDraws+1)
	for i := range col {
		col[i] = x
	}
	return col
}
