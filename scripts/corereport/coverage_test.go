package main

import (
	"bytes"
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

func TestMeasure(t *testing.T) {
	value := func(state estimate.State, limit float64) food.Value {
		return food.Value{Constituent: "CAFFN", State: state, Amount: food.None, Limit: limit}
	}
	foods := []*food.Food{
		{ID: food.ID{Code: "stated"}, Group: "cocoa", Values: []food.Value{value(estimate.Below, 3)}},
		{ID: food.ID{Code: "bounded"}, Group: "cocoa", Values: []food.Value{value(estimate.Unknown, 3)}},
		{ID: food.ID{Code: "silent"}, Group: "tea leaf"},
		{ID: food.ID{Code: "elsewhere"}, Group: "milk"},
	}
	c := line{"caffeine", xanthic, all("CAFFN"), acids("CAFFN")}.measure(foods)
	assert.Equal(t, 3, c.asked)
	assert.Equal(t, 1, c.known, "below a limit is known, a bound is not")
	var out bytes.Buffer
	require.NoError(t, c.write(&out))
	assert.Equal(t, "\ncaffeine: 1 of 3 (33 %)\n  bounded: caffeine up to 3 mg\n  silent\n", out.String())
}

func TestReportRuns(t *testing.T) {
	foods, err := coreFoods(context.Background())
	require.NoError(t, err)
	var out bytes.Buffer
	require.NoError(t, write(&out, foods))
	assert.Contains(t, out.String(), "citric and malic acid, fruits and juices")
}
