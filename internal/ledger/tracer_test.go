package ledger_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// charge is a tracer as a reading leaves it.
type charge struct {
	name string
	as   constituent.ID
}

func (c charge) As() constituent.ID { return c.as }

// half keeps half of the potassium and all of the rest.
type half struct{}

func (half) Share(_ ledger.Row, c *constituent.Constituent, share []float64) {
	for d := range share {
		share[d] = 1
		if c.ID == "K" {
			share[d] = 0.5
		}
	}
}

func TestTracerGoesWithItsConstituentAndWeighsNothing(t *testing.T) {
	pot, _ := pots(t, 1)
	before := pot.Mass()[0]
	read := charge{"read", "K"}
	still := charge{"read", "NA"}
	copy(pot.Carry(0, read), []float64{8, 4})
	copy(pot.Carry(0, still), []float64{6, 2})

	pot.Apply(half{})
	assert.Equal(t, []float64{4, 2}, pot.Carry(0, read)[:2])
	assert.Equal(t, []float64{6, 2}, pot.Carry(0, still)[:2])
	assert.Equal(t, before, pot.Mass()[0])

	quarter := column(pot.N, 0.25)
	mixed := ledger.New(pot.Columns, pot.N)
	mixed.Mix(pot, quarter, "syrup")
	require.Len(t, mixed.Traced(0), 2)
	assert.Equal(t, []float64{1, 0.5}, mixed.Carry(0, read)[:2])
	assert.Equal(t, 4.0, pot.Carry(0, read)[0], "what was mixed is a copy")
	mixed.Scale(quarter)
	assert.Equal(t, 0.25, mixed.Carry(0, read)[0])
	assert.Empty(t, mixed.Traced(1), "each row carries its own")
	assert.Len(t, mixed.Only(func(row int) bool { return row == 0 }).Traced(0), 2)

	mixed.Drop(0)
	assert.Empty(t, mixed.Traced(0))
}
