package assay_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
)

func TestAnInterruptedRunGivesNoFigures(t *testing.T) {
	text := "drink: \"x\"\nserves: 1\nbuild: [10 g core:sugar-white]\n"
	d, faults := drink.Parse("x.yaml", []byte(text), nil)
	require.Zero(t, faults.Len())
	ctx, stop := context.WithCancel(t.Context())
	stop()
	a, err := assaytest.Run(ctx, d, faults, assaytest.Core(t), assaytest.Options{Draws: 50, Seed: 1})
	require.ErrorIs(t, err, context.Canceled)
	assert.Nil(t, a)
}
