package recipe_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
)

// unloaded knows of tables that are not loaded.
type unloaded struct{ assaytest.Library }

func (u unloaded) Food(ctx context.Context, id food.ID) (*food.Food, error) {
	if id.Table != "core" {
		return nil, fail.New(fail.NeedsTable, "table "+id.Table+" is not loaded", "load it")
	}
	return u.Library.Food(ctx, id)
}

// A table that is not loaded does not hide what else is wrong with a file: all is told at
// once, with its place. Alone it keeps its own exit code.
func TestAMissingTableHidesNoFault(t *testing.T) {
	find := func(build string) error {
		d, faults := drink.Parse("f", []byte("drink: x\nserves: 1\nbuild: ["+build+"]\n"), nil)
		_, err := recipe.Find(context.Background(), d, faults, unloaded{assaytest.Core(t)})
		return err
	}
	err := find("10 g sr:09160, 10 g core:nope")
	require.Error(t, err)
	assert.Equal(t, fail.Wrong, fail.ExitCode(err))
	assert.Contains(t, err.Error(), "f:3:14: table sr is not loaded")
	assert.Contains(t, err.Error(), "core:nope")
	err = find("10 g sr:09160")
	assert.Equal(t, fail.NeedsTable, fail.ExitCode(err))
	assert.ErrorContains(t, err, "f:3:14: table sr is not loaded", "it has its place too")
	err = find("10 g sr:09160, 5 g ifct:E033")
	assert.Equal(t, fail.NeedsTable, fail.ExitCode(err))
	assert.ErrorContains(t, err, "f:3:28: table ifct is not loaded")
}
