package data_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/food"
	"sipsum/internal/tables/core"
)

// contradicted lists the rows of data/core whose published figures do not go into 100 g,
// by more than two standard deviations, and why they stand all the same. A row that no
// longer needs its excuse may not keep it.
var contradicted = map[string]string{}

// No core food may say what cannot be: its parts go into 100 g, by what their spreads
// allow.
func TestNoCoreFoodContradictsItself(t *testing.T) {
	for code, f := range foodsOf(t, core.Format, "") {
		found := ""
		for _, n := range food.Enter(f, nil).Notes {
			if n.Kind == "contradiction" {
				found = n.Text
			}
		}
		switch why := contradicted[code]; {
		case found != "" && why == "":
			t.Errorf("%s: %s; correct the row, with its reason", code, found)
		case found != "":
			t.Logf("%s: %s: %s", code, found, why)
		default:
			assert.Empty(t, why, "%s needs no excuse any more", code)
		}
	}
}
