package liquid_test

import (
	"fmt"
	"testing"

	"sipsum/internal/assay/assaytest"

	"github.com/stretchr/testify/assert"
)

// Average Brix values of unconcentrated natural fruit juices: 19 CFR 151.91. A
// Brix value is a reading corrected for acid, 0.2 per cent of it (Kimball 1999,
// Citrus Processing, appendix A). A table's juice is another sample than the
// customs' average: within a quarter.
func TestBrixOfJuicesAgainstCustomsAverages(t *testing.T) {
	lib := assaytest.Core(t)
	for code, want := range map[string]float64{
		"apple-juice": 13.3, "orange-juice": 11.8, "grapefruit-juice": 10.2, "pineapple-juice": 14.3, "lemon-juice": 8.9, "lime-juice": 10,
		"sour-cherry-juice": 14.3, "cranberry-juice": 10.5, "grape-juice": 16, "mandarin-juice": 11.5,
	} {
		a := assaytest.Assay(t, lib, fmt.Sprintf("drink: \"Neat\"\nserves: 1\nbuild: [100 g core:%s]\n", code), 200)
		value := a.Chemistry.Brix.Mean + 0.2*assaytest.Figure(t, a.Per100g, "OA").Mean
		t.Logf("%-20s reads %.1f °Bx (%.1f–%.1f), Brix value %.1f; customs average %.1f", code, a.Chemistry.Brix.Mean, a.Chemistry.Brix.Low, a.Chemistry.Brix.High, value, want)
		assert.InEpsilon(t, want, value, 0.25, code)
	}
}
