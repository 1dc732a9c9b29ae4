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
