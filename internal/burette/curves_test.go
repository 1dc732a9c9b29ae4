package burette_test

import (
	"cmp"
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

// kitOf is how far a bench is off, as standard deviations.
type kitOf struct{ noise, zero, slope, factor, ml float64 }

var good = kitOf{0.02, 0.05 / math.Sqrt(3), 0.005, 0.01, 0.02}

// scene is what the recipe expects of 10 ml: acids in g/l with their relative standard deviation.
type scene struct {
	acids    []string
	grams    []float64
	relative float64
	nameless float64 // the most of it over the acids' protons
	strong   float64 // mol/l
	centred  bool    // the recipe's grams are the median and not the mean of what may be
	salts    float64 // relative standard deviation of strong; 0: a fifth
}

// saltsOff is it.
func (s scene) saltsOff() float64 { return cmp.Or(s.salts, 0.2) }

const (
	sampleKg = 0.010
	waterKg  = 0.040
	molarity = 0.1
)

// sample draws a truth.
func (s scene) sample(r *rand.Rand, k kitOf) truth {
	t := truth{mol: map[string]float64{}, shift: map[string][]float64{}}
	protons := 0.0
	for i, name := range s.acids {
		t.mol[name] = lognormal(r, s.grams[i]/molar[name]*sampleKg, s.relative)
		protons += s.grams[i] / molar[name] * sampleKg * float64(len(constants[name]))
		for range constants[name] {
			t.shift[name] = append(t.shift[name], 0)
		}
		common := 0.02 * r.NormFloat64()
		for j := range t.shift[name] {
			t.shift[name][j] = common + 0.01*r.NormFloat64()
		}
	}
	if s.nameless > 0 {
		t.nameless, t.pk = s.nameless*protons*r.Float64(), 4.2+r.NormFloat64()
	}
	t.strong = s.strong * sampleKg * (1 + s.saltsOff()*r.NormFloat64())
	t.factor = 1 + k.factor*r.NormFloat64()
	t.carbonate = 0.02 * r.Float64()
	t.zero, t.slope = k.zero*r.NormFloat64(), 1+k.slope*r.NormFloat64()
	return t
}

// prior makes the ensemble that a recipe and a kit bring: draws of the same distributions.
func (s scene) prior(k kitOf, draws int, seed uint64) (burette.Liquid, burette.Kit) {
	r := rand.New(rand.NewPCG(seed, 7))
	l := burette.Liquid{Rest: acid.New(sampleKg + waterKg), Strong: make([]float64, draws+1)}
	kit := burette.Kit{Noise: k.noise, Zero: make([]float64, draws+1), Slope: make([]float64, draws+1), Factor: make([]float64, draws+1), Carbonate: make([]float64, draws+1)}
	for _, name := range s.acids {
		l.Acids = append(l.Acids, burette.Amount{Acid: acid.Must(name), Mol: make([]float64, draws+1)})
	}
	if s.nameless > 0 {
		l.Nameless = make([]float64, draws+1)
	}
	for d := range draws + 1 {
		t := s.sample(r, k)
		if d == 0 { // central values
			t.strong, t.factor, t.carbonate, t.zero, t.slope = s.strong*sampleKg, 1, 0.01, 0, 1
			t.nameless = 0
			for i, name := range s.acids {
				t.mol[name] = s.grams[i] / molar[name] * sampleKg
				t.nameless += s.nameless / 2 * t.mol[name] * float64(len(constants[name]))
			}
		}
		for i, name := range s.acids {
			l.Acids[i].Mol[d] = t.mol[name]
		}
		if s.nameless > 0 {
			l.Nameless[d] = t.nameless
		}
		l.Strong[d], kit.Zero[d], kit.Slope[d], kit.Factor[d], kit.Carbonate[d] = t.strong, t.zero, t.slope, t.factor, t.carbonate
	}
	return l, kit
}

// titrate reads a curve of a truth, in equal steps up to pH 9.5.
func (t truth) titrate(r *rand.Rand, k kitOf, points int) []burette.Point {
	end := 0.0
	for _, step := range []float64{1e-4, 1e-5} {
		for t.pH(sampleKg+waterKg+end/molarity, end) < 9.5 {
			end += step
		}
		end -= step
	}
	var list []burette.Point
	for i := range points {
		stated := end * float64(i) / float64(points-1)
		read := stated
		p := burette.Point{Base: stated, Water: stated / molarity}
		if i > 0 {
			p.Off = k.ml / 1000 * molarity
			read += p.Off * r.NormFloat64()
		}
		p.PH = t.shown(t.pH(sampleKg+waterKg+stated/molarity, read*t.factor)) + k.noise*r.NormFloat64()
		list = append(list, p)
	}
	return list
}

// curves is how many are simulated: a few, or as many as SIPSUM_CURVES says.
func curves(t *testing.T, few int) int {
	n, err := strconv.Atoi(os.Getenv("SIPSUM_CURVES"))
	if err != nil {
		t.Logf("%d curves: SIPSUM_CURVES=500 simulates as many", few)
		return few
	}
	return n
}

var juice = scene{
	acids: []string{"citric", "malic", "tartaric", "lactic", "acetic", "phosphoric"}, grams: []float64{3, 3, 1, 1, 0.5, 0.3},
	relative: 0.6, nameless: 0.15, strong: 0.02,
}

// The true acids are inside their 90 % intervals as often as they should be, each apart. The band
// is that of a binomial of 0.90 for as many curves (four standard deviations) for the acids
// together; what each has is logged.
func TestIntervalsHoldTheTruth(t *testing.T) {
	for _, c := range []struct {
		name     string
		nameless float64
		least    float64 // of the intervals
	}{
		{"named acids", 0, 0.86},
		{"and one without a name", 0.15, 0.80},
	} {
		s := juice
		s.nameless = c.nameless
		n := curves(t, 20)
		inside, wide, all := make([]int, len(s.acids)), make([]float64, len(s.acids)), 0
		l, kit := s.prior(good, 400, 1)
		ens := estimate.Ensemble{Seed: 1, N: 401}
		for i := range n {
			r := rand.New(rand.NewPCG(uint64(i), 99))
			is := s.sample(r, good)
			p, err := burette.Ask(ens, "x", 25, l, kit, is.titrate(r, good, 25))
			require.NoError(t, err)
			for j, name := range s.acids {
				of := estimate.Summarise(p.Acids[j])
				wide[j] += (of.High - of.Low) / 2 / sampleKg * molar[name] / float64(n)
				if of.Low <= is.mol[name] && is.mol[name] <= of.High {
					inside[j]++
					all++
				}
			}
		}
		for j, name := range s.acids {
			t.Logf("%s: %s: %d of %d inside; ± %.2f g/l", c.name, name, inside[j], n, wide[j])
		}
		of := float64(n * len(s.acids))
		noise := 4 * math.Sqrt(0.9*0.1/float64(n)/2) // the acids of a curve go together: as two
		assert.Greater(t, float64(all)/of, c.least-noise/2, c.name)
		assert.Less(t, float64(all)/of, 0.95+noise/2, c.name)
	}
}

// In whatever order the points come they tell the same, draw by draw.
func TestOrderOfPointsChangesNothing(t *testing.T) {
	l, kit := juice.prior(good, 200, 1)
	ens := estimate.Ensemble{Seed: 1, N: 201}
	r := rand.New(rand.NewPCG(5, 5))
	points := juice.sample(r, good).titrate(r, good, 20)
	a, err := burette.Ask(ens, "x", 25, l, kit, points)
	require.NoError(t, err)
	for range 3 {
		r.Shuffle(len(points), func(i, j int) { points[i], points[j] = points[j], points[i] })
		b, err := burette.Ask(ens, "x", 25, l, kit, points)
		require.NoError(t, err)
		for i := range a.Acids {
			for d := range a.Acids[i] {
				require.InEpsilon(t, a.Acids[i][d], b.Acids[i][d], 1e-9)
			}
		}
		assert.InDelta(t, a.Zero[0], b.Zero[0], 1e-9)
	}
}

// Tartaric and lactic acid in a wine-like liquid cannot be told apart, citric and phosphoric can:
// the bound by Fisher's information is ± 2.5 g/l of 3 for the first and ± 0.05 for the second.
func TestWhatACurveCannotTellApart(t *testing.T) {
	for _, c := range []struct {
		scene scene
		apart bool
	}{
		{scene{acids: []string{"tartaric", "malic", "lactic"}, grams: []float64{3, 2, 1}, relative: 1, strong: 0.02}, false},
		{scene{acids: []string{"phosphoric", "citric"}, grams: []float64{1, 3}, relative: 0.6, strong: 0.02}, true},
	} {
		l, kit := c.scene.prior(good, 400, 3)
		r := rand.New(rand.NewPCG(8, 8))
		is := truth{mol: map[string]float64{}, strong: 0.02 * sampleKg, factor: 1, carbonate: 0.01, slope: 1}
		for i, name := range c.scene.acids {
			is.mol[name] = c.scene.grams[i] / molar[name] * sampleKg
		}
		p, err := burette.Ask(estimate.Ensemble{Seed: 1, N: 401}, "x", 25, l, kit, is.titrate(r, good, 25))
		require.NoError(t, err)
		together := burette.Together(p.Acids)
		if c.apart {
			assert.Empty(t, together)
			continue
		}
		require.Len(t, together, 1)
		assert.Subset(t, together[0], []int{0, 2}, "tartaric and lactic acid")
	}
}

func TestTooFewPointsTellNothing(t *testing.T) {
	l, kit := juice.prior(good, 50, 1)
	r := rand.New(rand.NewPCG(5, 5))
	_, err := burette.Ask(estimate.Ensemble{Seed: 1, N: 51}, "x", 25, l, kit, juice.sample(r, good).titrate(r, good, 7))
	assert.ErrorContains(t, err, "too few points")
}
