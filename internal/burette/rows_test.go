package burette

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acid"
)

// The prior of an acid without a name is counted from the carboxyl steps of data/acid_steps.csv.
func TestStrengthOfAnAcidWithoutAName(t *testing.T) {
	var pK []float64
	for _, a := range acid.All() {
		for _, s := range a.Steps {
			if s.Group == "carboxyl" {
				pK = append(pK, s.PK)
			}
		}
	}
	mean, sd := stat.MeanStdDev(pK, nil)
	row := rowOf("pK of an acid without a name")
	assert.InDelta(t, mean, row.value, 0.15)
	assert.InDelta(t, sd, row.sd, 0.15)
}
