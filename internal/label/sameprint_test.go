package label_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// What is unknown of a row is worth a note only if it could change what is printed: 10.01 g
// and 10.2 g of fat are both "10 g" on the card (European Commission
// guidance on tolerances, December 2012, section 6: from 10 g on to the nearest gram), 10.8 g
// are not.
func TestNoteOnlyOfWhatWouldPrintDifferently(t *testing.T) {
	for _, c := range []struct {
		most float64
		note bool
	}{{10.2, false}, {10.8, true}} {
		f := facts(100, map[constituent.ID]float64{"CHOAVL": 10})
		f.Serving["FAT"] = estimate.Amount{Mean: 10.01, WithBounds: c.most, Known: true}
		made := card(t, "eu", f)
		assert.Equal(t, "10 g", row(t, made, "fat").Serving.Printed)
		if c.note {
			assert.Contains(t, notes(made), "fat: Fat: at least", "up to %g g", c.most)
		} else {
			assert.NotContains(t, notes(made), "fat: Fat: at least", "up to %g g", c.most)
		}
	}
}
