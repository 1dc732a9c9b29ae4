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

// readCurve reads each so many points of a published curve.
func readCurve(t *testing.T, name string, each int) (points []burette.Point) {
	t.Helper()
	file, err := os.Open("testdata/" + name + ".csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	for i, row := range rows[1:] {
		ml, err := strconv.ParseFloat(row[0], 64)
		require.NoError(t, err)
		pH, err := strconv.ParseFloat(row[1], 64)
		require.NoError(t, err)
		if i%each != 0 {
			continue
		}
		p := burette.Point{Base: ml * 1e-4, Water: ml / 1000, PH: pH}
		if ml > 0 {
			p.Off = 0.05 * 1e-4 // a burette of 50 ml, class A: ± 0.05 ml (ISO 385)
		}
		points = append(points, p)
	}
	return points
}

// The strength of published curves of acetic acid comes back within its interval, from a recipe
// that knows it to a factor of two, and the meter that nobody calibrated is named.
func TestPublishedCurvesOfAceticAcid(t *testing.T) {
	for _, c := range []struct {
		name string
		salt float64 // mol/l
	}{{"acetic_nacl0.0M_run1", 0}, {"acetic_nacl0.0M_run2", 0}, {"acetic_nacl0.2M_run1", 0.2}, {"acetic_nacl0.4M_run1", 0.4}} {
		const draws = 400
		const stated, spread, litre = 0.100, 0.005, 0.025 // mol/l, and l of the sample
		r := rand.New(rand.NewPCG(2, 2))
		k := good
		k.factor = 0.005 / math.Sqrt(3) / 0.1 // 0.10 mol/l, as it is printed
		kit := burette.Kit{Noise: 0.02, Zero: make([]float64, draws+1), Slope: make([]float64, draws+1), Factor: make([]float64, draws+1), Carbonate: make([]float64, draws+1)}
		l := burette.Liquid{Rest: acid.New(litre), Strong: make([]float64, draws+1), Acids: []burette.Amount{{Acid: acid.Must("acetic"), Mol: make([]float64, draws+1)}}}
		l.Rest.Background = c.salt * litre
		for d := range draws + 1 {
			kit.Zero[d], kit.Slope[d], kit.Factor[d], kit.Carbonate[d] = k.zero*r.NormFloat64(), 1+k.slope*r.NormFloat64(), 1+k.factor*r.NormFloat64(), 0.02*r.Float64()
			l.Acids[0].Mol[d] = lognormal(r, 0.1*litre, 0.7)
			l.Strong[d] = 1e-5 * r.NormFloat64()
		}
		kit.Zero[0], kit.Slope[0], kit.Factor[0], kit.Carbonate[0], l.Acids[0].Mol[0], l.Strong[0] = 0, 1, 1, 0.01, 0.07*litre, 0
		p, err := burette.Ask(estimate.Ensemble{Seed: 1, N: draws + 1}, "x", 25, l, kit, readCurve(t, c.name, 2))
		require.NoError(t, err, c.name)
		is, zero := estimate.Summarise(p.Acids[0]), estimate.Summarise(p.Zero)
		t.Logf("%s: %.4f mol/l (%.4f–%.4f), zero %.2f (%.2f–%.2f), scatter %.1f, adjusted %t", c.name, is.Mean/litre, is.Low/litre, is.High/litre, zero.Mean, zero.Low, zero.High, p.Scatter, p.Adjusted)
		assert.Less(t, is.Low/litre, stated+spread, c.name)
		assert.Greater(t, is.High/litre, stated-spread, c.name)
		assert.Greater(t, zero.Mean, 0.2, c.name)
		assert.False(t, p.Adjusted, c.name)
	}
}
