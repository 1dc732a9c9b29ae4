package liquid_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
)

// A gum, inulin and the fibre of a wine are in solution and read as sugars do; of the fibre
// of pulp a third dissolves (data/refraction.csv, rows CHOCDF and FIBTG; data/phases.csv).
func TestFibreThatIsInSolutionIsRead(t *testing.T) {
	powder := assaytest.Exact("powder", "gum", figures{"WATER": 10, "CHOCDF": 90, "FIBTG": 90})
	pulp := assaytest.Exact("pulp", "fruit", figures{"WATER": 10, "CHOCDF": 90, "FIBTG": 90})
	b := assaytest.NewBench(draws, powder, pulp)
	g := b.Lab.Gauge
	gum, fruit := pour(b, part{powder, 10}, part{nil, 90}), pour(b, part{pulp, 10}, part{nil, 90})
	assert.InDelta(t, 9, g.Brix(gum)[0], 1e-9)
	assert.InDelta(t, 9, g.Solids(gum)[0], 1e-9)
	assert.InDelta(t, 0.3*9, g.Brix(fruit)[0], 1e-9)
	assert.InDelta(t, 0.3*9, g.Solids(fruit)[0], 1e-9)
}
