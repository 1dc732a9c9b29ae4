package recipe_test

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/recipe"
)

const example = "testdata/drinks/copper-orchard.drink.yaml"

// The example of the drink file's grammar is whole, but not all of it is
// computed: what is not is refused line by line, and nothing else. Each later
// version shortens this list.
func TestExampleIsRefusedExactlyWhereItIsNotComputed(t *testing.T) {
	text := assaytest.FileOf(t, example)
	d, faults := drink.Parse(example, text, func(path string) ([]byte, error) {
		return os.ReadFile(filepath.Join("../../testdata/drinks", path))
	})
	require.NoError(t, faults.Err(fail.Wrong), "the file itself has no fault")
	_, err := recipe.Find(context.Background(), d, faults, assaytest.Core(t))
	var e *fail.Error
	require.True(t, errors.As(err, &e), "%v", err)
	assert.Equal(t, fail.Wrong, e.Exit)

	var refused []string
	for _, f := range e.Faults {
		assert.Contains(t, f.What, " understood but not computed yet")
		assert.NotEmpty(t, f.Do)
		refused = append(refused, fmt.Sprintf("%s:%d %s", f.File, f.Line, strings.SplitN(f.What, " understood", 2)[0]))
	}
	assert.ElementsMatch(t, []string{
		example + ":53 targets are",
		example + ":54 targets are",
		example + ":55 targets are",
	}, refused)
}
