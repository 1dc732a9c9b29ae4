package batch_test

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/batch"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// Every amount that a step can state grows with its pot, whatever step is added to the grammar; only
// what a titration takes does not.
func TestEveryAmountOfAStepGrows(t *testing.T) {
	text := "drink: x\nserves: 1\ncomponents:\n  p:\n    ingredients: [1 g core:salt]\n    steps:\n"
	for _, e := range drink.Steps() {
		text += "      " + e.Example + "\n"
	}
	d, faults := drink.Parse("t", []byte(text+"build: [1 g p]\n"), nil)
	require.NoError(t, faults.Err(fail.Wrong))
	require.Len(t, d.Components, 1)
	amounts := 0
	for _, step := range d.Components[0].Steps {
		grows := batch.Growing(step)
		of := reflect.ValueOf(step).Elem()
		for i := range of.NumField() {
			if !of.Type().Field(i).IsExported() {
				continue
			}
			stated, ok := of.Field(i).Addr().Interface().(*unit.Amount)
			if p, optional := of.Field(i).Interface().(*unit.Amount); optional {
				stated, ok = p, p != nil
			}
			if !ok || of.Type().Field(i).Name == "Sample" {
				continue
			}
			amounts++
			found := false
			for _, g := range grows {
				found = found || g.Amount == stated
			}
			assert.True(t, found, "%s: %s does not grow", step.Kind(), of.Type().Field(i).Name)
		}
	}
	assert.Greater(t, amounts, 10)
}
