package acid_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/acid"
)

func TestEveryConstantHasASource(t *testing.T) {
	for i, a := range acid.All() {
		assert.NotEmpty(t, a.Steps, a.ID)
		for n, s := range a.Steps {
			assert.NotEmpty(t, s.Source, "%s step %d", a.ID, n+1)
			assert.NotEmpty(t, s.Group, "%s step %d", a.ID, n+1)
			assert.True(t, s.DH == 0 && s.DCp == 0 || s.TemperatureSource != "", "%s step %d: a temperature coefficient without a source", a.ID, n+1)
			if n > 0 {
				assert.Greater(t, s.PK, a.Steps[n-1].PK, "%s: steps in order", a.ID)
			}
		}
		for _, p := range a.Pairs {
			assert.NotEmpty(t, p.Source, a.ID)
			assert.Less(t, p.Hydrogens, len(a.Steps)+1, a.ID)
		}
		back, ok := acid.Find(a.ID)
		assert.True(t, ok)
		assert.Equal(t, acid.Index(i), back)
	}
}

// Whoever sees one of these in print takes it off this list and writes its
// source into data/acid_steps.csv.
func TestConstantsNotSeenInPrint(t *testing.T) {
	var unseen []string
	for _, a := range acid.All() {
		if a.FromMemory() {
			unseen = append(unseen, a.ID)
		}
	}
	assert.Equal(t, []string{"isocitric", "aconitic", "gluconic", "shikimic", "ascorbic", "chlorogenic", "sorbic"}, unseen)
}
