package fndds

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/fail"
)

// FuzzFNDDS reads any row below the header of the CSV copy: it ends with foods
// whose values are finite and not negative, or with an error for people.
func FuzzFNDDS(f *testing.F) {
	raw, err := os.ReadFile("../../../testdata/tables/fndds-csv/fndds1718_nutrient_values.csv")
	require.NoError(f, err)
	at := strings.Index(string(raw), "11000000")
	head, body := string(raw[:at]), string(raw[at:])
	f.Add(body)
	for line := range strings.Lines(body) {
		f.Add(line)
	}
	f.Fuzz(func(t *testing.T, body string) {
		path := filepath.Join(t.TempDir(), "t.csv")
		require.NoError(t, os.WriteFile(path, []byte(head+body), 0o600))
		release, err := Format.Open(t.Context(), path, "")
		if err == nil {
			for food, e := range release.Foods {
				if e != nil {
					err = e
					break
				}
				for _, v := range food.Values {
					require.True(t, v.Amount >= 0 && !math.IsInf(v.Amount, 0))
				}
			}
		}
		if err != nil {
			assert.Equal(t, fail.Wrong, fail.ExitCode(err), err)
		}
	})
}
