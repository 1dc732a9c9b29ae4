package estimate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/estimate"
)

// JCGM 100:2008, table G.2: t for a fraction of 90 % is 6.31, 2.92, 2.02, 1.81 and 1.72 for 1, 2, 5, 10 and 20 degrees
// of freedom, and 1.645 for infinitely many.
func TestFewRepeatsAreWidenedAsStudentHasIt(t *testing.T) {
	for free, factor := range map[float64]float64{1: 6.31, 2: 2.92, 5: 2.02, 10: 1.81, 20: 1.72} {
		assert.InDelta(t, factor/1.645, estimate.Student(free), 0.004, "ν = %g", free)
	}
}
