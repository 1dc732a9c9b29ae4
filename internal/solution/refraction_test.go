package solution_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/solution"
)

// sucroseIndex is the refractive index of sucrose solutions at 20 °C by mass per
// cent: CRC Handbook of Chemistry and Physics, "Concentrative properties of
// aqueous solutions". The scale of a refractometer is this table.
var sucroseIndex = [][2]float64{{0, 1.3330}, {1, 1.3344}, {2, 1.3359}, {5, 1.3403}, {10, 1.3478}, {12, 1.3509}, {15, 1.3557}, {20, 1.3639}, {26, 1.3741}, {30, 1.3812}}

// brixAt reads the table backwards.
func brixAt(t *testing.T, n float64) float64 {
	t.Helper()
	for i := 1; i < len(sucroseIndex); i++ {
		a, b := sucroseIndex[i-1], sucroseIndex[i]
		if n <= b[1] {
			return a[0] + (b[0]-a[0])*(n-a[1])/(b[1]-a[1])
		}
	}
	require.Fail(t, "beyond the table")
	return 0
}

// brix adds up what a refractometer reads of constituents in per cent by mass.
func brix(percent map[constituent.ID]float64) (sum float64) {
	for id, of := range percent {
		r, _ := solution.RefractionOf(id)
		sum += of * r.Brix
	}
	sum += solution.AcidRefractionExcess(percent["CITAC"], percent["SUCS"])
	return sum
}

// Indices at 20 °C: CRC Handbook of Chemistry and Physics, same tables.
func TestBrixAgainstPublishedIndices(t *testing.T) {
	cases := []struct {
		solute                   constituent.ID
		percent, index, relative float64
	}{
		{"SUCS", 15, 1.3557, 0.001}, {"SUCS", 26, 1.3741, 0.001},
		{"ALC", 5, 1.3360, 0.10}, {"ALC", 10, 1.3395, 0.05}, {"ALC", 20, 1.3469, 0.05},
		// Alone in water; in juice it reads less (below).
		{"CITAC", 5, 1.3394, 0.01}, {"CITAC", 10, 1.3459, 0.01}, {"CITAC", 20, 1.3598, 0.01}, {"CITAC", 30, 1.3744, 0.01},
		{"ACEAC", 5, 1.3366, 0.03}, {"ACEAC", 10, 1.3402, 0.03}, {"ACEAC", 20, 1.3472, 0.04},
		{"LACAC", 5, 1.3380, 0.03}, {"LACAC", 10, 1.3430, 0.03}, {"LACAC", 20, 1.3532, 0.03},
	}
	for _, c := range cases {
		want := brixAt(t, c.index)
		got := brix(map[constituent.ID]float64{c.solute: c.percent, constituent.Water: 100 - c.percent})
		t.Logf("%v %% %s reads %.2f °Bx, by the index %.2f", c.percent, c.solute, got, want)
		assert.InEpsilon(t, want, got, c.relative, "%v %% %s", c.percent, c.solute)
	}
}

// Ethanol in water by its strength, CRC Handbook: rows that data/solution_ethanol_refraction.csv lacks.
// A neat spirit is no solution of 0.45 a per cent.
func TestAlcoholRefractsByItsStrength(t *testing.T) {
	for percent, index := range map[float64]float64{7: 1.3374, 12: 1.3410, 18: 1.3455, 24: 1.3498, 34: 1.3557, 46: 1.3604, 56: 1.3630, 64: 1.3644, 76: 1.3657} {
		row, _ := solution.RefractionOf("ALC")
		got := percent*row.Brix + solution.RefractionExcess(100-percent, percent)
		assert.InDelta(t, brixAt(t, index), got, 0.15, "%g %%", percent)
	}
	assert.Zero(t, solution.RefractionExcess(100, 0))
}

// Kimball 1999, Citrus Processing, appendix A: what to add to a refractometer's
// reading of juice for its citric acid.
func TestBrixOfAcidIsLowByTheAcidCorrection(t *testing.T) {
	for _, c := range [][2]float64{{0.25, 0.05}, {0.50, 0.10}, {1.0, 0.20}, {2.0, 0.39}, {3.0, 0.58}, {4.0, 0.78}, {5.0, 0.97}} {
		const sugar = 11.0
		acid, add := c[0], c[1]
		reading := brix(map[constituent.ID]float64{"SUCS": sugar, "CITAC": acid, "WATER": 100 - sugar - acid})
		assert.InDelta(t, sugar+acid, reading+add, 0.035, "%v %% acid", acid)
	}
}

func TestEveryPartOfTheMassHasARefraction(t *testing.T) {
	for _, leaf := range constituent.Sums().Leaves(constituent.Mass) {
		r, _ := solution.RefractionOf(leaf.ID)
		assert.NotEmpty(t, r.Source, leaf.ID)
		assert.GreaterOrEqual(t, r.BrixSD, 0.0, leaf.ID)
		assert.LessOrEqual(t, r.Solids, 1.0, leaf.ID)
	}
}

// Acetic acid boils at 118 °C (CRC Handbook) and dries off with its water: of vinegar nothing
// of it counts as dissolved solids, though it refracts. An acid without a row of its own is
// known less well than one that has been read.
func TestOtherAcidsAreNoCitricAcid(t *testing.T) {
	acetic, row := solution.RefractionOf("ACEAC")
	assert.Equal(t, constituent.ID("ACEAC"), row)
	assert.Zero(t, acetic.Solids)
	citric, _ := solution.RefractionOf("CITAC")
	other, row := solution.RefractionOf("TARAC")
	assert.Equal(t, constituent.OrganicAcids, row)
	assert.Greater(t, other.BrixSD, citric.BrixSD)
	volume, _ := solution.VolumeOf("CITAC")
	unread, _ := solution.VolumeOf("TARAC")
	assert.Greater(t, unread.SD, volume.SD)
}
