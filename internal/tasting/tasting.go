package tasting

import (
	"fmt"
	"sync"

	"gonum.org/v1/gonum/stat/distuv"

	"sipsum/internal/embedded"
	"sipsum/internal/fail"
)

// Test is a test of difference.
type Test string

// The tests.
const (
	Triangle Test = "triangle"
	Paired   Test = "paired"
)

// Chance is how often who guesses is right.
func (t Test) Chance() float64 { return usual().chance[t] }

// Critical gives the fewest right answers of n tasters that chance alone gives with a probability
// of at most alpha, and that probability. There may be none: then even n right answers are chance.
func (t Test) Critical(n int, alpha float64) (right int, achieved float64, ok bool) {
	guessed := distuv.Binomial{N: float64(n), P: t.Chance()}
	for right = n + 1; ; right-- {
		// P(X ≥ right − 1): with one right answer fewer
		p := guessed.Survival(float64(right - 2))
		if p > alpha || right == 1 {
			return right, achieved, right <= n
		}
		achieved = p
	}
}

// Power is how often n tasters, of whom a share can tell, give so many right answers.
func (t Test) Power(n, right int, share float64) float64 {
	tells := distuv.Binomial{N: float64(n), P: share + (1-share)*t.Chance()}
	return tells.Survival(float64(right - 1))
}

// Need is how many tasters a power wants; 0 if more than the most of data/tasting.csv.
type Need struct {
	First  int  // the smallest number that reaches it
	Steady int  // from here on no larger number falls below it
	Loses  bool // one taster more than First falls below it
}

// Need finds how many tasters find a share of discriminators with a power.
func (t Test) Need(share, alpha, power float64) Need {
	var n Need
	most := usual().most
	first := 0
	for tasters := 1; tasters <= most; tasters++ {
		right, _, ok := t.Critical(tasters, alpha)
		reaches := ok && t.Power(tasters, right, share) >= power
		switch {
		case reaches && first == 0:
			first, n.Steady = tasters, tasters
		case reaches && n.Steady == 0:
			n.Steady = tasters
		case !reaches && first > 0:
			n.Steady = 0
			n.Loses = n.Loses || tasters == first+1
		}
		if first > 0 && n.Steady > 0 && tasters > n.Steady+window {
			break
		}
	}
	n.First = first
	return n
}

// window is after how many tasters who all reach it a power is not lost again: where the critical
// number moves it falls once in two or three tasters, and less each time (our own bound).
const window = 40

// Line is what so many tasters find of a share of discriminators.
type Line struct {
	Share float64
	Power float64 // 0 if no number of right answers is more than chance
	Need
}

// Panel is what some tasters can find.
type Panel struct {
	Test     Test
	Tasters  int
	Alpha    float64 // asked for
	Wanted   float64 // the power that Need is for
	Right    int     // the critical number; 0: none, too few taste
	Achieved float64 // α
	Lines    []Line
}

// Of gives what n tasters can find in a test. Errors are *fail.Error.
func Of(t Test, n int) (Panel, error) {
	u := usual()
	if n < 1 || n > u.most {
		return Panel{}, fail.New(fail.Wrong, fmt.Sprintf("%d is no number of tasters", n), fmt.Sprintf("give a number from 1 to %d", u.most))
	}
	p := Panel{Test: t, Tasters: n, Alpha: u.alpha, Wanted: u.power}
	right, achieved, ok := t.Critical(n, u.alpha)
	if ok {
		p.Right, p.Achieved = right, achieved
	}
	for _, share := range u.shares {
		l := Line{Share: share, Need: t.Need(share, u.alpha, u.power)}
		if ok {
			l.Power = t.Power(n, right, share)
		}
		p.Lines = append(p.Lines, l)
	}
	return p, nil
}

// settings are those of data/tasting.csv.
type settings struct {
	chance       map[Test]float64
	alpha, power float64
	shares       []float64
	most         int
	glass        float64 // ml
	tasters      int
}

var usual = sync.OnceValue(func() settings {
	u := settings{chance: map[Test]float64{}}
	for _, row := range embedded.Rows("tasting.csv") {
		switch what := row.Text("what"); what {
		case "chance":
			u.chance[Test(row.Text("of"))] = row.Number("value")
		case "alpha":
			u.alpha = row.Number("value")
		case "power":
			u.power = row.Number("value")
		case "share":
			u.shares = append(u.shares, row.Number("value"))
		case "glass":
			u.glass = row.Number("value")
		case "usual tasters":
			u.tasters = row.Whole("value")
		case "most tasters":
			u.most = row.Whole("value")
		default:
			row.Fail("no setting %q", what)
		}
	}
	return u
})

// Most is the most tasters that anybody gathers.
func Most() int { return usual().most }
