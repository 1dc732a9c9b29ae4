package tasting_test

import (
	"encoding/csv"
	"math"
	"math/big"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/tasting"
)

// published reads a table of testdata.
func published(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	require.NoError(t, err)
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	var rows []map[string]string
	for _, cells := range all[1:] {
		row := map[string]string{}
		for i, c := range cells {
			row[all[0][i]] = c
		}
		rows = append(rows, row)
	}
	return rows
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return x
}

func TestPublishedCriticalNumbers(t *testing.T) {
	rows := published(t, "critical_numbers.csv")
	require.Len(t, rows, 645)
	for _, r := range rows {
		test := tasting.Paired
		if strings.HasPrefix(r["test"], "triangle") {
			test = tasting.Triangle
		}
		n := int(number(t, r["n"]))
		right, achieved, ok := test.Critical(n, number(t, r["alpha"]))
		if r["critical"] == "" {
			assert.False(t, ok, "%v", r)
			continue
		}
		assert.True(t, ok, "%v", r)
		assert.Equal(t, int(number(t, r["critical"])), right, "%v", r)
		assert.InDelta(t, chance(test, n, right), achieved, 1e-12, "%v", r)
	}
}

// chance is P(X ≥ right) in whole numbers.
func chance(test tasting.Test, n, right int) float64 {
	others := int64(2)
	if test == tasting.Paired {
		others = 1
	}
	sum := new(big.Int)
	for k := right; k <= n; k++ {
		ways := new(big.Int).Binomial(int64(n), int64(k))
		sum.Add(sum, ways.Mul(ways, new(big.Int).Exp(big.NewInt(others), big.NewInt(int64(n-k)), nil)))
	}
	all := new(big.Int).Exp(big.NewInt(others+1), big.NewInt(int64(n)), nil)
	share, _ := new(big.Rat).SetFrac(sum, all).Float64()
	return share
}

// The published numbers of assessors are the first that reach the power.
func TestPublishedAssessors(t *testing.T) {
	rows := published(t, "assessors.csv")
	require.Len(t, rows, 125)
	steady, checked := 0, 0
	for _, r := range rows {
		n := int(number(t, r["n_published"]))
		if n > 320 { // beyond what was worked out beside the table
			continue
		}
		checked++
		share, alpha, power := number(t, r["pd_percent"])/100, number(t, r["alpha"]), 1-number(t, r["beta"])
		need := tasting.Triangle.Need(share, alpha, power)
		assert.Equal(t, n, need.First, "%v", r)
		right, _, _ := tasting.Triangle.Critical(n, alpha)
		assert.InDelta(t, number(t, r["power_at_published"]), tasting.Triangle.Power(n, right, share), 5e-5, "%v", r)
		assert.Equal(t, int(number(t, r["exact_stable_n"])), need.Steady, "%v", r)
		if need.Steady == n {
			steady++
		}
	}
	assert.Equal(t, 100, checked)
	assert.Equal(t, 12, steady, "the others lose the power again")
}

// What is published beyond that reaches its power, and is the first number that does but in one cell: of a
// tenth, 0.05 and 0.001, 1178 tasters do already, in whole numbers, and 1181 are published.
func TestPublishedAssessorsOfLargePanels(t *testing.T) {
	checked, later := 0, 0
	for _, r := range published(t, "assessors.csv") {
		n := int(number(t, r["n_published"]))
		if n <= 320 {
			continue
		}
		checked++
		share, alpha, power := number(t, r["pd_percent"])/100, number(t, r["alpha"]), 1-number(t, r["beta"])
		right, _, ok := tasting.Triangle.Critical(n, alpha)
		assert.True(t, ok, "%v", r)
		assert.GreaterOrEqual(t, tasting.Triangle.Power(n, right, share), power, "%v", r)
		reaches := func(n int) bool {
			right, _, ok := tasting.Triangle.Critical(n, alpha)
			return ok && tasting.Triangle.Power(n, right, share) >= power
		}
		for fewer := n - 1; fewer > n-12; fewer-- { // the power falls again within two or three tasters
			if reaches(fewer) {
				later++
				assert.Equal(t, []int{1181, 1178}, []int{n, fewer}, "%v", r)
			}
		}
	}
	assert.Equal(t, 25, checked)
	assert.Equal(t, 1, later)
}

// Critical numbers and powers of panels of 5 to 100, against sums of binomials in whole numbers.
func TestPanelsAgainstWholeNumbers(t *testing.T) {
	for _, x := range []struct {
		test   tasting.Test
		chance *big.Rat
	}{{tasting.Triangle, big.NewRat(1, 3)}, {tasting.Paired, big.NewRat(1, 2)}} {
		for n := 5; n <= 100; n++ {
			guessed := tails(n, x.chance)
			told := map[int64][]*big.Rat{}
			for _, pd := range []int64{10, 20, 30, 40, 50} {
				share := big.NewRat(pd, 100)
				p := new(big.Rat).Sub(big.NewRat(1, 1), share)
				told[pd] = tails(n, p.Mul(p, x.chance).Add(p, share))
			}
			for _, alpha := range []*big.Rat{big.NewRat(5, 100), big.NewRat(1, 100), big.NewRat(1, 1000)} {
				want := 0
				for guessed[want].Cmp(alpha) > 0 {
					want++
				}
				a, _ := alpha.Float64()
				right, achieved, ok := x.test.Critical(n, a)
				assert.Equal(t, want <= n, ok, "%s %d %v", x.test, n, a)
				if !ok {
					continue
				}
				assert.Equal(t, want, right, "%s %d %v", x.test, n, a)
				exact, _ := guessed[right].Float64()
				assert.InEpsilon(t, exact, achieved, 1e-9)
				for pd, of := range told {
					exact, _ := of[right].Float64()
					assert.InEpsilon(t, exact, x.test.Power(n, right, float64(pd)/100), 1e-9, "%s %d %v %d %%", x.test, n, a, pd)
				}
			}
		}
	}
}

// tails gives P(X ≥ k) of n for every k, and 0 beyond n.
func tails(n int, p *big.Rat) []*big.Rat {
	yes, no := p.Num(), new(big.Int).Sub(p.Denom(), p.Num())
	all := new(big.Int).Exp(p.Denom(), big.NewInt(int64(n)), nil)
	sum, list := new(big.Int), make([]*big.Rat, n+2)
	list[n+1] = new(big.Rat)
	for k := n; k >= 0; k-- {
		ways := new(big.Int).Binomial(int64(n), int64(k))
		ways.Mul(ways, new(big.Int).Exp(yes, big.NewInt(int64(k)), nil))
		sum.Add(sum, ways.Mul(ways, new(big.Int).Exp(no, big.NewInt(int64(n-k)), nil)))
		list[k] = new(big.Rat).SetFrac(new(big.Int).Set(sum), all)
	}
	return list
}

// Whether one taster more loses the power is what the powers say.
func TestOneTasterMoreMayLoseThePower(t *testing.T) {
	lost := 0
	for _, share := range []float64{0.3, 0.4, 0.5} {
		for _, test := range []tasting.Test{tasting.Triangle, tasting.Paired} {
			need := test.Need(share, 0.05, 0.8)
			right, _, _ := test.Critical(need.First+1, 0.05)
			below := test.Power(need.First+1, right, share) < 0.8
			assert.Equal(t, below, need.Loses, "%s %v", test, share)
			if below {
				lost++
			}
		}
	}
	assert.Positive(t, lost)
}

func TestPanel(t *testing.T) {
	p, err := tasting.Of(tasting.Triangle, 2)
	require.NoError(t, err)
	assert.Zero(t, p.Right, "two of two right answers are chance in one of nine")
	for _, l := range p.Lines {
		assert.Zero(t, l.Power)
	}
	p, err = tasting.Of(tasting.Triangle, 3)
	require.NoError(t, err)
	assert.Equal(t, 3, p.Right)
	assert.InDelta(t, math.Pow(1./3, 3), p.Achieved, 1e-15)
	for _, n := range []int{0, -4, 1_000_000} {
		_, err := tasting.Of(tasting.Paired, n)
		assert.ErrorContains(t, err, "tasters")
	}
}
