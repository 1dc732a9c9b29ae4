package tasting_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/tasting"
)

// ISO 4120: the six orders equally often; of 24 tasters each four times, and 36 glasses of each.
func TestAPlanIsBalancedAndCoded(t *testing.T) {
	p, err := tasting.PlanOf(tasting.Triangle, 24, 7)
	require.NoError(t, err)
	assert.True(t, p.Even)
	for _, order := range []string{"AAB", "ABA", "ABB", "BBA", "BAB", "BAA"} {
		assert.Equal(t, 4, p.Of[order], order)
	}
	assert.Equal(t, []int{36, 36}, []int{p.A, p.B})
	seen := map[string]bool{}
	for _, s := range p.Servings {
		for _, code := range s.Codes {
			assert.Regexp(t, `^[1-9][0-9]{2}$`, code)
			assert.False(t, seen[code], code)
			seen[code] = true
		}
	}
	assert.Len(t, seen, 72)
	again, err := tasting.PlanOf(tasting.Triangle, 24, 7)
	require.NoError(t, err)
	assert.Equal(t, p, again, "the seed is the plan")
	other, err := tasting.PlanOf(tasting.Triangle, 24, 8)
	require.NoError(t, err)
	assert.NotEqual(t, p.Servings, other.Servings)
}

// What cannot be even is told, and no order is served more than once oftener than another.
func TestAPlanOfAnyNumber(t *testing.T) {
	for n := 1; n <= 40; n++ {
		for _, test := range []tasting.Test{tasting.Triangle, tasting.Paired} {
			p, err := tasting.PlanOf(test, n, 1)
			require.NoError(t, err)
			least, most := n, 0
			for _, order := range test.Orders() {
				least, most = min(least, p.Of[order]), max(most, p.Of[order])
			}
			assert.LessOrEqual(t, most-least, 1)
			assert.Equal(t, n%len(test.Orders()) == 0, p.Even)
		}
	}
	_, err := tasting.PlanOf(tasting.Triangle, 301, 1)
	assert.ErrorContains(t, err, "cannot be coded")
	_, err = tasting.PlanOf(tasting.Paired, 450, 1)
	assert.NoError(t, err)
}

// Of a number that six do not divide, the odd glass is as often A as B, and as often at each place, as it can
// be; and one more or less of a glass is all that the two drinks differ by.
func TestAnUnevenPlanIsAsEvenAsItCanBe(t *testing.T) {
	for n := 1; n <= 40; n++ {
		for seed := range uint64(5) {
			p, err := tasting.PlanOf(tasting.Triangle, n, seed)
			require.NoError(t, err)
			ofA, places := 0, [3]int{}
			for order, times := range p.Of {
				odd := "A"
				if strings.Count(order, "A") == 2 {
					odd = "B"
				} else {
					ofA += times
				}
				places[strings.Index(order, odd)] += times
			}
			assert.LessOrEqual(t, max(2*ofA-n, n-2*ofA), 1, "%d: %v", n, p.Of)
			assert.LessOrEqual(t, max(places[0], places[1], places[2])-min(places[0], places[1], places[2]), 1, "%d: %v", n, p.Of)
			assert.LessOrEqual(t, max(p.A-p.B, p.B-p.A), 1, "%d", n)
		}
	}
}

// Who has seen the codes of one tasting knows nothing of those of another, though nobody gave a seed.
func TestCodesAreOfOneTasting(t *testing.T) {
	plan := func(of ...string) []tasting.Serving {
		p, err := tasting.PlanOf(tasting.Triangle, 12, 1, of...)
		require.NoError(t, err)
		return p.Servings
	}
	assert.Equal(t, plan("Reed Lamp", "cordial"), plan("Reed Lamp", "cordial"))
	assert.NotEqual(t, plan("Reed Lamp", "cordial"), plan("Reed Lamp", "espresso"))
	assert.NotEqual(t, plan("Reed Lamp", "cordial"), plan("Reed", "Lampcordial"))
}

// Critical numbers at 5 %: of 24 in a triangle 13, of 24 in a pair 17 (ISO 4120 and ISO 5495; testdata).
func TestWhatACountSays(t *testing.T) {
	for _, x := range []struct {
		test       tasting.Test
		answers, n int
		more       bool
	}{
		{tasting.Triangle, 13, 24, true}, {tasting.Triangle, 12, 24, false}, {tasting.Paired, 17, 24, true}, {tasting.Paired, 16, 24, false},
		{tasting.Triangle, 2, 2, false},
	} {
		v, err := tasting.Judge(x.test, x.answers, x.n)
		require.NoError(t, err)
		assert.Equal(t, x.more, v.More, "%v", x)
	}
	v, err := tasting.Judge(tasting.Paired, 3, 3) // (1/2)³
	require.NoError(t, err)
	assert.InDelta(t, 0.125, v.ByLuck, 1e-12)
	v, err = tasting.Judge(tasting.Triangle, 0, 9)
	require.NoError(t, err)
	assert.InDelta(t, 1, v.ByLuck, 1e-12)
	_, err = tasting.Judge(tasting.Triangle, 25, 24)
	assert.ErrorContains(t, err, "cannot be right")
}
