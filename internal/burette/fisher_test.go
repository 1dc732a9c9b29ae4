package burette_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"sipsum/internal/burette"
	"sipsum/internal/estimate"
)

// bound gives the least standard deviation of the logarithm of each acid by Fisher's information
// of a curve at its truth, joined with the priors of all that is unknown: derivatives of the
// simulated curve, which shares nothing with the solver.
func (s scene) bound(is truth, k kitOf, points []burette.Point) []float64 {
	covariance := s.covariance(is, k, points)
	out := make([]float64, len(s.acids))
	for i := range out {
		out[i] = math.Sqrt(covariance.At(i, i))
	}
	return out
}

// covariance is the least one: that of the acids, in the order of the scene, comes first.
func (s scene) covariance(is truth, k kitOf, points []burette.Point) *mat.SymDense {
	type unknown struct {
		sd    float64
		moved func(t *truth, by float64)
	}
	var list []unknown
	copied := func() truth {
		t := is
		t.mol, t.shift = map[string]float64{}, map[string][]float64{}
		for _, name := range s.acids {
			t.mol[name] = is.mol[name]
			t.shift[name] = make([]float64, len(constants[name]))
			copy(t.shift[name], is.shift[name])
		}
		return t
	}
	for _, name := range s.acids {
		list = append(list, unknown{math.Sqrt(math.Log1p(s.relative * s.relative)), func(t *truth, by float64) { t.mol[name] *= math.Exp(by) }})
	}
	for _, name := range s.acids {
		list = append(list, unknown{math.Hypot(0.02, 0.01), func(t *truth, by float64) {
			for i := range t.shift[name] {
				t.shift[name][i] += by
			}
		}})
	}
	list = append(list,
		unknown{0.2 * s.strong * sampleKg, func(t *truth, by float64) { t.strong += by }},
		unknown{k.zero, func(t *truth, by float64) { t.zero += by }},
		unknown{k.slope, func(t *truth, by float64) { t.slope += by }},
		unknown{k.factor, func(t *truth, by float64) { t.factor += by }},
		unknown{0.02 / math.Sqrt(12), func(t *truth, by float64) { t.carbonate += by }},
	)
	n := len(list)
	information := mat.NewSymDense(n, nil)
	for i, u := range list {
		information.SetSym(i, i, 1/(u.sd*u.sd))
	}
	shown := func(t truth, p burette.Point, more float64) float64 {
		return t.shown(t.pH(sampleKg+waterKg+p.Water, (p.Base+more)*t.factor))
	}
	for _, p := range points {
		row := make([]float64, n)
		for i, u := range list {
			const part = 1e-3
			up, down := copied(), copied()
			u.moved(&up, part*u.sd)
			u.moved(&down, -part*u.sd)
			row[i] = (shown(up, p, 0) - shown(down, p, 0)) / (2 * part * u.sd)
		}
		const step = 1e-8
		volume := (shown(is, p, step) - shown(is, p, -step)) / (2 * step) * p.Off
		information.SymRankOne(information, 1/(k.noise*k.noise+volume*volume), mat.NewVecDense(n, row))
	}
	var ch mat.Cholesky
	ch.Factorize(information)
	var covariance mat.SymDense
	_ = ch.InverseTo(&covariance)
	return &covariance
}

// "Cannot tell apart" is said where two acids are correlated below −0.8 in truth, by the derivatives
// of the simulated curve, and not where they are not; between −0.75 and −0.85 a thousand draws do
// not tell.
func TestWhatIsSaidOfTwoAcidsIsTrue(t *testing.T) {
	said := map[bool]int{}
	for i, c := range []struct {
		acids []string
		grams []float64
		kit   kitOf
	}{
		{[]string{"tartaric", "lactic"}, []float64{3, 1}, good},
		{[]string{"malic", "tartaric"}, []float64{3, 3}, good},
		{[]string{"citric", "acetic"}, []float64{3, 1}, good},
		{[]string{"phosphoric", "citric"}, []float64{1, 3}, good},
		{[]string{"phosphoric", "malic"}, []float64{1, 3}, good},
		{[]string{"malic", "lactic"}, []float64{2, 2}, good},
		{[]string{"lactic", "quinic"}, []float64{2, 2}, good},
		{[]string{"acetic", "malic"}, []float64{2, 2}, poor},
		{[]string{"phosphoric", "lactic"}, []float64{1, 2}, poor},
	} {
		s := scene{acids: c.acids, grams: c.grams, relative: 0.6, strong: 0.02}
		is := truth{mol: map[string]float64{}, shift: map[string][]float64{}, strong: s.strong * sampleKg, factor: 1, carbonate: 0.01, slope: 1}
		for i, name := range s.acids {
			is.mol[name] = s.grams[i] / molar[name] * sampleKg
		}
		points := is.titrate(rand.New(rand.NewPCG(uint64(i), 3)), c.kit, 25)
		least := s.covariance(is, c.kit, points)
		rho := least.At(0, 1) / math.Sqrt(least.At(0, 0)*least.At(1, 1))
		l, kit := s.prior(c.kit, 1000, 4)
		p, err := burette.Ask(estimate.Ensemble{Seed: 1, N: 1001}, "x", 25, l, kit, points)
		require.NoError(t, err)
		together := len(burette.Together(p.Acids)) > 0
		t.Logf("%v: in truth %.2f, together %t", c.acids, rho, together)
		if rho < -0.85 || rho > -0.75 {
			assert.Equal(t, rho < -0.8, together, "%v: %.2f", c.acids, rho)
			said[together]++
		}
	}
	assert.Greater(t, min(said[true], said[false]), 2, "both were asked for")
}

// No interval is wider than 1.5 times what Fisher's information allows, and none claims more than
// it does: half of it would.
func TestIntervalsAreNearFishersBound(t *testing.T) {
	const ninety = 1.645 // standard deviations
	s := juice
	s.nameless, s.relative = 0, 0.3
	l, kit := s.prior(good, 600, 4)
	is := truth{mol: map[string]float64{}, shift: map[string][]float64{}, strong: s.strong * sampleKg, factor: 1, carbonate: 0.01, slope: 1}
	for i, name := range s.acids {
		is.mol[name] = s.grams[i] / molar[name] * sampleKg
	}
	const curves = 4
	width := make([]float64, len(s.acids))
	var least []float64
	for i := range curves {
		points := is.titrate(rand.New(rand.NewPCG(uint64(i), 3)), good, 25)
		least = s.bound(is, good, points)
		p, err := burette.Ask(estimate.Ensemble{Seed: 1, N: 601}, "x", 25, l, kit, points)
		require.NoError(t, err)
		for j := range s.acids {
			of := estimate.Summarise(p.Acids[j])
			width[j] += math.Log(of.High/of.Low) / 2 / curves
		}
	}
	for j, name := range s.acids {
		t.Logf("%s: ± %.3f of itself, the bound ± %.3f", name, width[j], ninety*least[j])
		assert.Less(t, width[j], 1.5*ninety*least[j], name)
		assert.Greater(t, width[j], 0.8*ninety*least[j], name)
	}
}
