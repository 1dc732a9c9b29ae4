package tasting

import (
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"slices"
	"strings"

	"sipsum/internal/fail"
)

// Serving is what one taster gets: glasses in their order, each under a code.
type Serving struct {
	Order string // of A and B
	Codes []string
}

// Plan is a serving plan: every order as often as any other, or once more.
type Plan struct {
	Test     Test
	Servings []Serving
	Of       map[string]int // how often each order is served
	Even     bool           // all orders are served equally often
	A, B     int            // glasses of each
	Each     float64        // ml in a glass
}

// orders are those of a test: each drink is the odd one, or the first, as often as the other.
var orders = map[Test][]string{
	Triangle: {"AAB", "ABA", "ABB", "BBA", "BAB", "BAA"},
	Paired:   {"AB", "BA"},
}

// Codes have three digits and do not begin with a zero, and no two glasses of a plan share one.
const firstCode, lastCode = 100, 999

// PlanOf lays out a tasting of n. The seed codes it, with what it is of: who has seen the plan of another
// tasting knows nothing of this one. Errors are *fail.Error.
func PlanOf(t Test, n int, seed uint64, of ...string) (Plan, error) {
	list := orders[t]
	glasses := len(list[0])
	if most := (lastCode - firstCode + 1) / glasses; n < 1 || n > most {
		return Plan{}, fail.New(fail.Wrong, fmt.Sprintf("a plan for %d tasters cannot be coded", n), fmt.Sprintf("give a number from 1 to %d: each glass has a code of three digits of its own", most))
	}
	random := rand.New(rand.NewPCG(seed, mixed(append([]string{string(t), fmt.Sprint(n)}, of...))))
	codes := random.Perm(lastCode - firstCode + 1)
	p := Plan{Test: t, Of: map[string]int{}, Even: n%len(list) == 0, Each: usual().glass}
	var round []string
	for i := range n {
		if len(round) == 0 {
			round = t.round(random, n-i)
		}
		s := Serving{Order: round[0]}
		round = round[1:]
		for g := range glasses {
			s.Codes = append(s.Codes, fmt.Sprint(firstCode+codes[i*glasses+g]))
		}
		p.Servings = append(p.Servings, s)
		p.Of[s.Order]++
		p.A += strings.Count(s.Order, "A")
		p.B += strings.Count(s.Order, "B")
	}
	return p, nil
}

// round shuffles every order of a test once. Of a round that is not full, the odd glass is as often A as B,
// and as often at each place, as the number allows.
func (t Test) round(random *rand.Rand, left int) []string {
	list := slices.Clone(orders[t])
	random.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	if left < len(list) && t == Triangle {
		list = alternating(list)[:left]
		random.Shuffle(left, func(i, j int) { list[i], list[j] = list[j], list[i] })
	}
	return list
}

// alternating puts the six orders so that the odd glass is another from each to the next, and stands at
// all three places in any three.
func alternating(list []string) []string {
	first := list[0]
	_, place := odd(first)
	var out []string
	for i := range len(list) {
		out = append(out, list[slices.IndexFunc(list, func(o string) bool {
			letter, at := odd(o)
			was, _ := odd(first)
			return (letter == was) == (i%2 == 0) && at == (place+i)%len(first)
		})])
	}
	return out
}

// odd is the glass of which an order of three has one, and where it stands.
func odd(order string) (letter byte, at int) {
	for at = range len(order) {
		if strings.Count(order, order[at:at+1]) == 1 {
			break
		}
	}
	return order[at], at
}

// mixed makes a number of words.
func mixed(words []string) uint64 {
	h := fnv.New64a()
	for _, w := range words {
		fmt.Fprintf(h, "%d:%s", len(w), w)
	}
	return h.Sum64()
}

// Orders lists the orders of a test.
func (t Test) Orders() []string { return orders[t] }

// Usual is how many tasters a plan is for if nobody says.
func Usual() int { return usual().tasters }

// Verdict is what so many right answers say. That they are too few for more than chance is no proof
// that the drinks are the same.
type Verdict struct {
	Panel
	Answers int     // that were right
	ByLuck  float64 // how often guesses alone give as many, or more
	More    bool    // more than chance gives
}

// Judge says what a count of right answers of n tasters says. Errors are *fail.Error.
func Judge(t Test, answers, n int) (Verdict, error) {
	p, err := Of(t, n)
	if err != nil {
		return Verdict{}, err
	}
	if answers < 0 || answers > n {
		return Verdict{}, fail.New(fail.Wrong, fmt.Sprintf("%d of %d tasters cannot be right", answers, n), "give the right answers and the tasters: 14/24")
	}
	return Verdict{Panel: p, Answers: answers, ByLuck: t.Power(n, answers, 0), More: p.Right > 0 && answers >= p.Right}, nil
}
