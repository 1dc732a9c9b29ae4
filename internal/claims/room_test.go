package claims_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claim"
)

// Nothing in a food weighs more than the food: 50 g of which 40 are water have room for 10 g of anything,
// whichever table says nothing of it. No figure of that is printed, and no world is told in which it is so.
func TestWhatNothingBoundsIsBoundByItsMass(t *testing.T) {
	text := `drink: "x"
serves: 1
foods:
  herb: {name: "Herb, invented", per: 100 g, values: {WATER: 80 g ± 0, CAFFN: unknown}, source: "x"}
  dark: {name: "Dark, invented", per: 100 g, values: {WATER: 98 g ± 0, CAFFN: 40 mg ± 0}, source: "x"}
build: [50.0000 g own:herb, 50.0000 g own:dark]
claims:
  - {say: x, check: serving(CAFFN) < 1000 g}
  - {say: x, check: serving(CAFFN) < 15 g}
  - {say: x, check: serving(CAFFN) < 5 g}
  - {say: x, check: 'share(CAFFN, "herb") < 99.9 %'}
`
	said := judged(t, assaytest.Core(t), text)
	for i, word := range []claim.Word{"supported", "supported", claim.Unknown, "supported"} {
		assert.Equal(t, word, said[i].Word, said[i].Check+": "+said[i].Line())
		assert.True(t, math.IsNaN(said[i].UpTo), said[i].Check)
	}
	require.NotNil(t, said[2].Settle)
	assert.Equal(t, "caffeine of herb", said[2].Settle.What)
	assert.NotContains(t, strings.Join(said[1].Lines(), " "), "which nobody knows")
}

// Of acids, all that is known and no acid counts, but ash: salts of acids leave some of it. 50 g with 30 g of protein
// and 15 g of ash, of which nobody knows the water or the acids, have room for 20 g.
func TestRoomOfAnAcid(t *testing.T) {
	text := `drink: "x"
serves: 1
foods:
  powder: {name: "Powder, invented", per: 100 g, values: {PROCNT: 60 g ± 0, ASH: 30 g ± 0, MALAC: unknown}, source: "x"}
build: [50.0000 g own:powder]
claims:
  - {say: x, check: serving(MALAC) < 22 g}
  - {say: x, check: serving(MALAC) < 10 g}
`
	said := judged(t, assaytest.Core(t), text)
	assert.EqualValues(t, "supported", said[0].Word, said[0].Line())
	assert.Equal(t, claim.Unknown, said[1].Word, said[1].Line())
}
