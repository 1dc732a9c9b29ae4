package recipe_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/recipe"
)

const example = "testdata/drinks/copper-orchard.drink.yaml"

// The example of the drink file's grammar is computed as it is printed.
func TestTheExampleOfTheGrammarIsComputedWhole(t *testing.T) {
	text := assaytest.FileOf(t, example)
	d, faults := drink.Parse(example, text, func(path string) ([]byte, error) {
		return os.ReadFile(filepath.Join("../../testdata/drinks", path))
	})
	require.NoError(t, faults.Err(fail.Wrong), "the file itself has no fault")
	require.NotEmpty(t, d.Targets)
	_, err := recipe.Find(context.Background(), d, faults, assaytest.Core(t))
	require.NoError(t, err)
}
