package burette_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"sipsum/internal/burette"
	"sipsum/internal/estimate"
)

func TestTmpDiag(t *testing.T) {
	for _, c := range []struct {
		name  string
		alter func(*truth)
		s     func(*scene)
	}{
		{"all", func(*truth) {}, func(*scene) {}},
		{"no shift", func(x *truth) {
			for k := range x.shift {
				clear(x.shift[k])
			}
		}, func(*scene) {}},
		{"no shift no nameless", func(x *truth) {
			for k := range x.shift {
				clear(x.shift[k])
			}
		}, func(s *scene) { s.nameless = 0 }},
		{"two acids", func(x *truth) {}, func(s *scene) { s.nameless = 0; s.acids = s.acids[:2]; s.grams = s.grams[:2] }},
	} {
		s := juice
		c.s(&s)
		n := 150
		inside := make([]int, len(s.acids))
		bias := make([]float64, len(s.acids))
		l, kit := s.prior(good, 400, 1)
		ens := estimate.Ensemble{Seed: 1, N: 401}
		scat, ch := 0.0, 0.0
		for i := range n {
			r := rand.New(rand.NewPCG(uint64(i), 99))
			is := s.sample(r, good)
			c.alter(&is)
			p, err := burette.Ask(ens, "x", 25, l, kit, is.titrate(r, good, 25))
			require.NoError(t, err)
			scat += p.Scatter / float64(n)
			ch += burette.ChanceOf(p) / float64(n)
			for j, name := range s.acids {
				m := estimate.Moments(p.Acids[j])
				su := estimate.Summarise(p.Acids[j])
				if su.Low <= is.mol[name] && is.mol[name] <= su.High {
					inside[j]++
				}
				bias[j] += math.Pow((is.mol[name]-m.Mean)/m.SD, 2) / float64(n)
			}
		}
		t.Log(c.name, inside, bias, scat, ch)
	}
}
