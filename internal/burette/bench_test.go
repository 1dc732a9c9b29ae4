package burette_test

import (
	"math/rand/v2"
	"testing"

	"sipsum/internal/burette"
	"sipsum/internal/estimate"
)

// BenchmarkAsk conditions 1,000 draws of six acids and one without a name on 25 points.
func BenchmarkAsk(b *testing.B) {
	l, kit := juice.prior(good, 1000, 1)
	r := rand.New(rand.NewPCG(5, 5))
	points := juice.sample(r, good).titrate(r, good, 25)
	for b.Loop() {
		if _, err := burette.Ask(estimate.Ensemble{Seed: 1, N: 1001}, "x", 25, l, kit, points); err != nil {
			b.Fatal(err)
		}
	}
}
