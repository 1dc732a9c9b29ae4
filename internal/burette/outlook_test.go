package burette_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/burette"
	"sipsum/internal/estimate"
)

// wide is a scene of which the tables tell next to nothing.
func wide(acids []string, grams []float64) scene {
	return scene{acids: acids, grams: grams, relative: 100, centred: true, strong: 0.02, salts: 20}
}

// look is the outlook of a scene with a plan of points up to pH 9.5.
func (s scene) look(t *testing.T, k kitOf, points int) (*burette.Outlook, []burette.Point) {
	t.Helper()
	l, kit := s.prior(k, 1000, 3)
	if s.centred {
		for _, a := range l.Acids {
			for d := 1; d < len(a.Mol); d++ {
				a.Mol[d] *= math.Sqrt(1 + s.relative*s.relative)
			}
		}
	}
	o, err := burette.Look(estimate.Ensemble{Seed: 1, N: 1001}, "x", 25, l, kit, nil)
	require.NoError(t, err)
	end, err := o.BaseTo(9.5, 1/molarity)
	require.NoError(t, err)
	var plan []burette.Point
	for i := range points {
		base := end * float64(i) / float64(points-1)
		p := burette.Point{Base: base, Water: base / molarity}
		if i > 0 {
			p.Off = k.ml / 1000 * molarity
		}
		plan = append(plan, p)
	}
	require.NoError(t, o.Shown(plan))
	return o, plan
}

var poor = kitOf{0.05, 0.05, 0.005, 0.03, 0.05}

// What a kit can tell is never more than the linear bounds that were worked out by code which
// shares nothing with this (constants exact, 10 ml of the liquid and 40 ml of water, 25 points,
// salts free; g/l). A fifth of it is for constants: where two acids are all but one, a hundredth in
// a pK moves the bound by that.
func TestAKitTellsNoMoreThanItsLinearBound(t *testing.T) {
	const constants, atMost = 0.8, 3
	for _, c := range []struct {
		acids      []string
		grams      []float64
		good, poor []float64
	}{
		{[]string{"citric", "malic"}, []float64{3, 3}, []float64{0.17, 0.13}, []float64{0.52, 0.35}},
		{[]string{"citric", "malic", "tartaric"}, []float64{3, 3, 3}, []float64{0.18, 0.29, 0.29}, []float64{0.52, 0.76, 0.74}},
		{[]string{"tartaric", "malic", "lactic"}, []float64{3, 2, 1}, []float64{2.5, 0.33, 2.0}, []float64{6.1, 0.9, 4.9}},
		{[]string{"citric", "acetic"}, []float64{3, 3}, []float64{0.15, 0.08}, []float64{0.40, 0.23}},
		{[]string{"phosphoric", "citric"}, []float64{1, 3}, []float64{0.04, 0.05}, []float64{0.10, 0.15}},
	} {
		for _, k := range []struct {
			kit   kitOf
			bound []float64
		}{{good, c.good}, {poor, c.poor}} {
			o, plan := wide(c.acids, c.grams).look(t, k.kit, 25)
			is, err := o.Tells(plan)
			require.NoError(t, err)
			for i, name := range c.acids {
				half := is.Half[i] * molar[name] / sampleKg
				t.Logf("%v, %s: ± %.2f g/l, the bound ± %.2f", c.acids, name, half, k.bound[i])
				assert.Greater(t, half, constants*k.bound[i], "%v %s", c.acids, name)
				assert.Less(t, half, atMost*k.bound[i], "%v %s", c.acids, name)
			}
			joined := is.Joined()
			switch c.acids[0] {
			case "tartaric": // with lactic acid
				require.NotEmpty(t, joined)
				assert.Equal(t, [2]int{0, 2}, [2]int{joined[0].First, joined[0].Second})
			case "phosphoric":
				assert.Empty(t, joined)
			}
		}
	}
}

// Without a point it is the recipe that is told: half of its own 90 % interval.
func TestWithoutPointsTheRecipeStands(t *testing.T) {
	s := juice
	o, _ := s.look(t, good, 3)
	is, err := o.Tells(nil)
	require.NoError(t, err)
	l, _ := s.prior(good, 1000, 3)
	for i := range s.acids {
		of := estimate.Summarise(l.Acids[i].Mol)
		assert.InEpsilon(t, (of.High-of.Low)/2, is.Half[i], 0.1, s.acids[i])
	}
	assert.Zero(t, is.Narrows(is))
}

// What was foreseen comes true: curves of the recipe's own liquid, read at the points of the plan,
// leave intervals as wide as the outlook says, in the mean of curves.
func TestWhatIsForeseenComesTrue(t *testing.T) {
	s := juice
	s.nameless, s.relative = 0, 0.3
	l, kit := s.prior(good, 600, 4)
	ens := estimate.Ensemble{Seed: 1, N: 601}
	is := truth{mol: map[string]float64{}, strong: s.strong * sampleKg, factor: 1, carbonate: 0.01, slope: 1}
	for i, name := range s.acids {
		is.mol[name] = s.grams[i] / molar[name] * sampleKg
	}
	o, err := burette.Look(ens, "x", 25, l, kit, nil)
	require.NoError(t, err)
	const curves = 4
	width := make([]float64, len(s.acids))
	var foreseen burette.Told
	for i := range curves {
		points := is.titrate(rand.New(rand.NewPCG(uint64(i), 3)), good, 25)
		p, err := burette.Ask(ens, "x", 25, l, kit, points)
		require.NoError(t, err)
		require.NoError(t, o.Shown(points))
		foreseen, err = o.Tells(points)
		require.NoError(t, err)
		for j := range s.acids {
			of := estimate.Summarise(p.Acids[j])
			width[j] += (of.High - of.Low) / 2 / curves
		}
	}
	for j, name := range s.acids {
		t.Logf("%s: ± %.2g mol, foreseen ± %.2g", name, width[j], foreseen.Half[j])
		assert.InEpsilon(t, foreseen.Half[j], width[j], 0.25, name)
	}
}

// A point more never tells less, whatever it is, and the same point again and again tells less
// and less: in the end what is not known is in no point.
func TestAPointMoreNeverTellsLess(t *testing.T) {
	o, plan := juice.look(t, good, 12)
	all, err := o.Each(plan[4:], plan[:4])
	require.NoError(t, err)
	for _, with := range all[1:] {
		assert.GreaterOrEqual(t, with.Narrows(all[0]), 0.0)
		for i := range with.Half {
			assert.LessOrEqual(t, with.Half[i], all[0].Half[i]*(1+1e-9))
		}
	}
	last, read := 1.0, plan[:4:4]
	for range 6 {
		both, err := o.Each(plan[6:7], read)
		require.NoError(t, err)
		gain := both[1].Narrows(both[0])
		assert.Less(t, gain, last)
		last, read = gain, append(read, plan[6])
	}
}
