package claims_test

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
)

var expected = regexp.MustCompile(`(?m)# expect (\w+)$`)

// The claims of testdata/claims have the verdicts that arithmetic on paper gives: it stands in each
// file.
func TestClaimsOfKnownTruth(t *testing.T) {
	files, err := filepath.Glob("../../testdata/claims/*.drink.yaml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 12)
	core := assaytest.Core(t)
	words := map[string]int{}
	for _, name := range files {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		said := judged(t, core, string(text))
		want := expected.FindAllStringSubmatch(string(text), -1)
		require.Len(t, said, len(want), name)
		for i, s := range said {
			assert.EqualValues(t, want[i][1], s.Word, "%s: %s: %.3f", filepath.Base(name), s.Check, s.P)
			words[want[i][1]]++
		}
	}
	for _, word := range []string{"supported", "likely", "unclear", "unlikely", "refuted", "unknown"} {
		assert.Positive(t, words[word], word)
	}
}
