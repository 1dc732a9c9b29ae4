package ledger_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/ledger"
)

// A draw that leans a quarter and a half towards two pots is a quarter of itself, a quarter of the
// one and a half of the other, grams by grams and with what it carries; where nothing counts
// nothing changes.
func TestAPotLeansTowardOthers(t *testing.T) {
	pot, _ := pots(t, 1)
	was, one, other := pot.Copy(), pot.Copy(), pot.Copy()
	only := charge{"read", "K"}
	copy(one.Carry(0, only), []float64{4, 4})
	ten := []float64{10, 10}
	one.Scale(ten)
	for row := range other.Rows {
		for col := range other.Columns.List {
			if other.Has(row, col) {
				clear(other.Write(row, col))
			}
		}
	}
	ledger.Lean(pot, ledger.Toward{Pot: one, Share: []float64{0, 0.25}}, ledger.Toward{Pot: other, Share: []float64{0, 0.5}})
	assert.Equal(t, was.Mass()[0], pot.Mass()[0])
	assert.InEpsilon(t, was.Mass()[1]*(0.25+10*0.25), pot.Mass()[1], 1e-12)
	assert.Equal(t, []float64{0, 10}, pot.Carry(0, only), "of 40 a quarter")
}
