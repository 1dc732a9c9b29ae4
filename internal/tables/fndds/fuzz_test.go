package fndds

import (
	"strings"
	"testing"
	"testing/fstest"

	"sipsum/internal/tables/tablestest"
)

// FuzzFNDDS reads any row below the header of the CSV copy: it ends with foods
// whose values are finite and not negative, or with an error for people.
func FuzzFNDDS(f *testing.F) {
	raw := string(tablestest.Bytes(f, "../../../testdata/tables/fndds-csv/fndds1718_nutrient_values.csv"))
	at := strings.Index(raw, "11000000")
	head, body := raw[:at], raw[at:]
	f.Add(body)
	for line := range strings.Lines(body) {
		f.Add(line)
	}
	f.Fuzz(func(t *testing.T, body string) {
		release, err := open(t.Context(), fstest.MapFS{"t.csv": {Data: []byte(head + body)}}, "fuzz", "")
		tablestest.Legal(t, release, err)
	})
}
