package claims_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claim"
)

// Below a limit is between none and the limit, and no draw tells where. 50 g of a food with less than 20 mg of caffeine
// in 100 g have less than 10 mg: that there is some nobody knows, nor that there are less than 5 mg. Beside what is
// known of another food it only adds to what may be.
func TestBelowALimitIsOpenFromZero(t *testing.T) {
	said := judged(t, assaytest.Core(t), `drink: "x"
serves: 1
foods:
  decaf: {name: "Decaf, invented", per: 100 g, values: {WATER: 98 g ± 0, CAFFN: < 20 mg}, source: "x"}
  dark: {name: "Dark, invented", per: 100 g, values: {WATER: 98 g ± 0, CAFFN: 40 mg ± 0}, source: "x"}
components:
  decaf pot: {ingredients: [50.00 g own:decaf]}
  dark pot: {ingredients: [50.00 g own:dark]}
build: [50.00 g decaf pot, 50.00 g dark pot]
claims:
  - {say: x, check: 'component("decaf pot", CAFFN) > 0 mg'}
  - {say: x, check: 'component("decaf pot", CAFFN) < 5 mg'}
  - {say: x, check: 'component("decaf pot", CAFFN) < 10.2 mg'}
  - {say: x, check: 'component("decaf pot", CAFFN) > 10.2 mg'}
  - {say: x, check: serving(CAFFN) > 19 mg}
  - {say: x, check: serving(CAFFN) > 25 mg}
  - {say: x, check: serving(CAFFN) > 31 mg}
  - {say: x, check: 'share(CAFFN, "dark pot") > 64 %'}
  - {say: x, check: 'share(CAFFN, "dark pot") > 75 %'}
`)
	for i, word := range []claim.Word{claim.Unknown, claim.Unknown, "supported", "refuted", "supported", claim.Unknown, "refuted", "supported", claim.Unknown} {
		assert.Equal(t, word, said[i].Word, said[i].Check+": "+said[i].Line())
	}
	require.NotNil(t, said[0].Settle)
	assert.Equal(t, "how much caffeine there is in decaf: less than could be found", said[0].Settle.What)
	assert.Equal(t, "values: {CAFFN: … mg}", said[0].Settle.Settle)
	assert.True(t, math.IsNaN(said[0].Figure.Mean), "no figure is printed of it")
}

// The same holds of alcohol by volume: what is below a limit is no strength.
func TestStrengthBelowALimit(t *testing.T) {
	said := judged(t, assaytest.Core(t), `drink: "x"
serves: 1
foods:
  must: {name: "Must, invented", per: 100 g, values: {WATER: 98 g ± 0, alcohol: < 0.4 g}, source: "x"}
build: [100.00 g own:must]
claims:
  - {say: x, check: alcohol_abv() > 0 %}
  - {say: x, check: alcohol_abv() < 0.3 %}
  - {say: x, check: alcohol_abv() < 0.6 %}
`)
	for i, word := range []claim.Word{claim.Unknown, claim.Unknown, "supported"} {
		assert.Equal(t, word, said[i].Word, said[i].Check+": "+said[i].Line())
	}
}
