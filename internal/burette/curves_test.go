package burette_test

import (
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

var (
	good = kitOf{0.02, 0.05 / math.Sqrt(3), 0.005, 0.01, 0.02}
	poor = kitOf{0.05, 0.05, 0.01, 0.03, 0.05}
)

// scene is what the recipe expects of 10 ml: acids in g/l with their relative standard deviation.
type scene struct {
	acids    []string
	grams    []float64
	relative float64
	nameless float64 // the most of it over the acids' protons
	strong   float64 // mol/l
}

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
	t.strong = s.strong * sampleKg * (1 + 0.2*r.NormFloat64())
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

// The true acids are inside their 90 % intervals as often as they should be, each apart.
func TestIntervalsHoldTheTruth(t *testing.T) {
	n := curves(t, 12)
	inside, wide := make([]int, len(juice.acids)), make([]float64, len(juice.acids))
	l, kit := juice.prior(good, 400, 1)
	ens := estimate.Ensemble{Seed: 1, N: 401}
	for i := range n {
		r := rand.New(rand.NewPCG(uint64(i), 99))
		is := juice.sample(r, good)
		p, err := burette.Ask(ens, "x", 25, l, kit, is.titrate(r, good, 25))
		require.NoError(t, err)
		for j, name := range juice.acids {
			s := estimate.Summarise(p.Acids[j])
			wide[j] += (s.High - s.Low) / 2 / sampleKg * molar[name] / float64(n)
			if s.Low <= is.mol[name] && is.mol[name] <= s.High {
				inside[j]++
			}
		}
	}
	for j, name := range juice.acids {
		t.Logf("%s: %d of %d inside; ± %.2f g/l", name, inside[j], n, wide[j])
	}
	assert.NotZero(t, n)
}
