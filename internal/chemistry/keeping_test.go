package chemistry_test

import (
	"fmt"
	"math"
	"testing"

	"sipsum/internal/assay/assaytest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const kept = `
drink: "Shelf Life"
serves: 1
components:
  syrup:
    ingredients: [100 g core:lemon-juice, 60 g core:sugar-white]
    %s
    keeps: 5 days at 4 °C
build: [20 g syrup, 80 g core:water-tap]
`

// FDA Food Code 2022, 1-201.10, table B: a food of pH 4.2 or less needs no control of
// time and temperature whatever its water activity. Only a meter may say that it has it.
func TestOnlyAMetersPHLiftsControl(t *testing.T) {
	lib := assaytest.Core(t)
	estimated := assaytest.Component(t, assaytest.Assay(t, lib, fmt.Sprintf(kept, ""), 500), "syrup")
	require.NotNil(t, estimated.Chemistry.Keeping)
	require.Less(t, estimated.Chemistry.PHMeter.High, 4.2, "composition says so as well")
	assert.True(t, math.IsNaN(estimated.Chemistry.Keeping.Holding.PH))
	assert.True(t, estimated.Chemistry.Keeping.Holding.NeedsAssessment)

	read := assaytest.Component(t, assaytest.Assay(t, lib, fmt.Sprintf(kept, "measured: {ph: 2.45 ± 0.05}"), 500), "syrup")
	assert.InDelta(t, 2.5, read.Chemistry.Keeping.Holding.PH, 0.05, "the top of its interval")
	assert.False(t, read.Chemistry.Keeping.Holding.NeedsAssessment)
}
