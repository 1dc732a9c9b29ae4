package sheet_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// Volatiles are named with a source, and with no amount.
func TestVolatilesAreNamedWithASourceAndNoDose(t *testing.T) {
	for _, row := range embedded.Rows("aroma_volatiles.csv") {
		at := row.Text("material")
		assert.NotEmpty(t, row.Text("source"), at)
		assert.Contains(t, []string{"seen", "at second hand"}, row.Text("read"), at)
		assert.False(t, source.IsFromMemory(row.Text("source")), at)
		assert.NotRegexp(t, `\d+(\.\d+)? ?(%|mg|g)`, row.Text("volatiles"), at)
	}
}

// Gölükçü et al. 2024 find 76 to 89 % limonene in the oil of lemon peel; of rosemary our tables
// name nothing, and nothing is made up.
func TestSmellsAreFoundByTheWordsOfTheirMaterial(t *testing.T) {
	for _, x := range []struct {
		of, published string
		leads         string
	}{
		{"orange peel", "peel of sweet orange", "limonene"},
		{"Lemon zest", "peel of lemon", "limonene"},
		{"a twist of lemon", "peel of lemon", "limonene"},
		{"Zitronenschale", "peel of lemon", "limonene"},
		{"rosemary", "", ""},
		{"orange blossom", "", ""},
		{"lemon verbena", "", ""},
	} {
		list := sheet.Smells(&drink.Drink{Service: drink.Service{Aroma: []drink.Aroma{{Of: x.of, Treatment: "expressed"}}}})
		require.Len(t, list, 1)
		assert.Equal(t, x.published, list[0].PublishedOf, x.of)
		if x.leads == "" {
			assert.Empty(t, list[0].Volatiles, x.of)
			continue
		}
		assert.Equal(t, x.leads, list[0].Volatiles[0], x.of)
		assert.NotEmpty(t, list[0].Source, x.of)
	}
}
