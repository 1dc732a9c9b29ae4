package burette_test

import (
	"encoding/csv"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
	"sipsum/internal/burette"
	"sipsum/internal/estimate"
)

// readBuffers reads a series of published buffers as a curve: perMol is the mol of base in one of what
// its table counts in, digit the last digit of that.
func readBuffers(t *testing.T, series string, perMol, digit float64) (points []burette.Point) {
	t.Helper()
	file, err := os.Open("testdata/buffers.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	for _, row := range rows[1:] {
		if row[0] != series {
			continue
		}
		base, err := strconv.ParseFloat(row[1], 64)
		require.NoError(t, err)
		pH, err := strconv.ParseFloat(row[2], 64)
		require.NoError(t, err)
		points = append(points, burette.Point{Base: base * perMol, PH: pH, Off: digit * perMol / math.Sqrt(12)})
	}
	return points
}

// buffered is a series of published buffers of 100 ml: what was weighed in, and what else the
// recipe suspects that is not there.
type buffered struct {
	series, acid, suspected string
	celsius                 float64
	weighed, salts          float64 // mol of the acid, and of the strong ion that comes with it
	perMol, digit           float64 // of what the table counts the base in
	noise                   float64 // of a published pH
}

// ask asks what is in it of a recipe that knows its acid to a factor of two.
func (b buffered) ask(t *testing.T) *burette.Posterior {
	t.Helper()
	const draws, litre = 600, 0.1
	r := rand.New(rand.NewPCG(3, 9))
	kit := burette.Kit{Noise: b.noise, Zero: make([]float64, draws+1), Slope: make([]float64, draws+1), Factor: make([]float64, draws+1)}
	l := burette.Liquid{Rest: acid.New(litre), Strong: make([]float64, draws+1)}
	for _, name := range []string{b.acid, b.suspected} {
		l.Acids = append(l.Acids, burette.Amount{Acid: acid.Must(name), Mol: make([]float64, draws+1)})
	}
	for d := range draws + 1 {
		kit.Zero[d], kit.Slope[d], kit.Factor[d] = 0.02*r.NormFloat64(), 1+0.005*r.NormFloat64(), 1+0.005*r.NormFloat64()
		l.Acids[0].Mol[d] = lognormal(r, 0.8*b.weighed, 0.7)
		l.Acids[1].Mol[d] = 0.4 * b.weighed * r.Float64()
		l.Strong[d] = b.salts + 0.005*b.weighed*r.NormFloat64()
	}
	kit.Zero[0], kit.Slope[0], kit.Factor[0] = 0, 1, 1
	l.Acids[0].Mol[0], l.Acids[1].Mol[0], l.Strong[0] = 0.8*b.weighed, 0.2*b.weighed, b.salts
	p, err := burette.Ask(estimate.Ensemble{Seed: 1, N: draws + 1}, "x", b.celsius, l, kit, readBuffers(t, b.series, b.perMol, b.digit))
	require.NoError(t, err, b.series)
	return p
}

// What was weighed into published buffers comes back inside its 90 % interval; the sources are in
// testdata/README.md.
func TestWeighedBuffersComeBack(t *testing.T) {
	const mmol = 1e-3
	for _, b := range []buffered{
		{"phthalate", "phthalic", "lactic", 25, 5 * mmol, 5 * mmol, 0.1 * mmol, 0.1, 0.02},
		{"phosphates", "phosphoric", "citric", 20, 20 * mmol / 3, 20 * mmol / 3, mmol / 15, 0.1, 0.02},
		{"phosphate", "phosphoric", "citric", 25, 10 * mmol, 10 * mmol, 0.1 * mmol, 0.5, 0.05},
	} {
		p := b.ask(t)
		is, not, zero := estimate.Summarise(p.Acids[0]), estimate.Summarise(p.Acids[1]), estimate.Summarise(p.Zero)
		t.Logf("%s: %.3f mmol weighed, %.3f come back (%.3f–%.3f, ± %.3f); of %s acid %.3f (%.3f–%.3f); zero %+.3f, scatter %.1f",
			b.series, b.weighed/mmol, is.Mean/mmol, is.Low/mmol, is.High/mmol, (is.High-is.Low)/2/mmol, b.suspected, not.Mean/mmol, not.Low/mmol, not.High/mmol, zero.Mean, p.Scatter)
		assert.LessOrEqual(t, is.Low, b.weighed, b.series)
		assert.GreaterOrEqual(t, is.High, b.weighed, b.series)
		assert.Less(t, (is.High-is.Low)/2, 0.05*b.weighed, "%s: an interval that tells something", b.series)
		assert.Less(t, not.Mean, 0.05*b.weighed, "%s: hardly any %s acid", b.series, b.suspected)
		assert.LessOrEqual(t, zero.Low, 0.02, b.series)
		assert.GreaterOrEqual(t, zero.High, -0.02, b.series)
		assert.False(t, p.Contradicts(), b.series)
	}
}

// A published table that a primary standard contradicts by 0.19 pH (testdata/README.md) is no curve of
// what was weighed: that is noticed, by the meter or by the whole.
func TestATableThatAStandardContradictsIsNoticed(t *testing.T) {
	const mmol = 1e-3
	p := buffered{"citrate", "citric", "tartaric", 25, 5 * mmol, 0, 0.3 * mmol, 0.1, 0.05}.ask(t)
	t.Logf("zero %+.2f, scatter %.1f, adjusted %t, contradicts %t", p.Zero[0], p.Scatter, p.Adjusted, p.Contradicts())
	assert.True(t, !p.Adjusted || p.Contradicts())
	assert.Greater(t, p.Zero[0], 0.1)
}
