package drink_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

const smelled = "drink: a\nserves: 1\nbuild: [20 g core:sugar-white]\naroma:\n"

func TestAromaIsReadAsWritten(t *testing.T) {
	d, faults := drink.Parse("a.yaml", []byte(smelled+"  - {of: orange peel, treatment: flamed, note: \"first\"}\n  - {of: mint, treatment: Infused}\n"), nil)
	require.NoError(t, faults.Err(fail.Wrong))
	require.Len(t, d.Aroma, 2)
	assert.Equal(t, "orange peel", d.Aroma[0].Of)
	assert.Equal(t, "flamed", d.Aroma[0].Treatment)
	assert.Equal(t, "first", d.Aroma[0].Note)
}

func TestAromaWantsAMaterialAndWhatIsDoneWithIt(t *testing.T) {
	for text, want := range map[string]string{
		"  - {of: mint, treatment: burnt}\n": `a.yaml:5:27: treatment does not know "burnt" (use expressed, flamed or infused)`,
		"  - {treatment: flamed}\n":          "of",
		"  - {of: mint}\n":                   "treatment",
	} {
		_, faults := drink.Parse("a.yaml", []byte(smelled+text), nil)
		require.Error(t, faults.Err(fail.Wrong), text)
		assert.Contains(t, faults.Err(fail.Wrong).Error(), want, text)
	}
}
