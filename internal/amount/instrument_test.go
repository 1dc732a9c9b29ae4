package amount_test

import (
	"encoding/csv"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/amount"
)

// Every row of data/instruments.csv is an instrument, as it stands there.
func TestInstrumentsAreThoseOfTheTable(t *testing.T) {
	file, err := data.FS.Open("instruments.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	at := map[string]int{}
	for i, name := range rows[0] {
		at[name] = i
	}
	number := func(row []string, name string) float64 {
		x, err := strconv.ParseFloat(row[at[name]], 64)
		require.NoError(t, err, "%v", row)
		return x
	}
	seen := map[string]bool{}
	for _, row := range rows[1:] {
		kind := row[at["reading"]]
		seen[kind] = true
		i := amount.MustInstrument(kind)
		assert.Equal(t, row[at["unit"]], i.Unit, kind)
		assert.Equal(t, number(row, "half"), i.Half, kind)
		const z = 12.0
		assert.InDelta(t, number(row, "half")+number(row, "relative")*z, i.HalfAt(z), 1e-12, kind)
		usual := 0.0
		if row[at["usual"]] != "" {
			usual = number(row, "usual")
		}
		assert.Equal(t, usual, i.Usual, kind)
	}
	for _, kind := range []string{
		amount.ReadMass, amount.ReadBrix, amount.ReadTDS, amount.ReadDensity, amount.ReadABV, amount.ReadPH, amount.ReadTA, amount.ReadStrength, amount.ReadSample,
	} {
		assert.True(t, seen[kind], kind)
	}
	assert.Panics(t, func() { amount.MustInstrument("dowsing rod") })
}
