package textreport_test

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/text"
)

// A card tells the claims that are allowed with their numbers and what stands with them, and
// in a few words what is near; what a stronger claim says, and what no figure comes near, is
// left out. The sheet only names them.
func TestClaimsOfACard(t *testing.T) {
	var card, whole bytes.Buffer
	require.NoError(t, textreport.Cards(&card, tide(), textreport.Style{}))
	assert.Contains(t, card.String(), "  claim “low[2J sodium” ‡: allowed, 35 mg sodium per serving, at most 140;\n    print with it: a statement\n")
	assert.Contains(t, card.String(), "  not allowed, but near: “fat free” (0.4 g fat, up to 0.6; below 0.5)\n")
	assert.Contains(t, card.String(), "  ‡ the condition of the claim was read in a secondary source: check the\n    official text\n")
	assert.NotContains(t, card.String(), "‡‡", "of a claim that is not told")
	for _, left := range []string{"low fat", "implied", "low sugars", "at length"} {
		assert.NotContains(t, card.String(), left)
	}
	require.NoError(t, textreport.Sheet(&whole, tide(), textreport.Style{}))
	assert.Contains(t, whole.String(), "claims that the rules allow, if the authority does on a served drink:\n    “low[2J sodium”; their conditions: see sipsum card\n")
	assert.NotContains(t, whole.String(), "not allowed, but near")
}
