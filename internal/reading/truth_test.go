package reading_test

import (
	"fmt"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
)

// A pot is made as the recipe says, within its spread, and read with an instrument that is
// off by its own. Nine of ten truths lie in the intervals.
func TestReadTruthsLieInTheirIntervals(t *testing.T) {
	const worlds, draws = 250, 1000
	random := rand.New(rand.NewSource(7))
	for _, c := range []struct {
		reading string
		read    func(water, sugar float64) float64
	}{
		{"brix: %.4f ± 0.3 sd", func(w, s float64) float64 { return 100*s/(w+s) + 0.3*random.NormFloat64() }},
		{"mass: %.4f g ± 3 g sd", func(w, s float64) float64 { return w + s + 3*random.NormFloat64() }},
		{"tds: %.4f %% ± 1.5 %% sd", func(w, s float64) float64 { return 100*s/(w+s) + 1.5*random.NormFloat64() }},
	} {
		inside := map[constituent.ID]int{}
		for range worlds {
			water, sugar := 200+4*random.NormFloat64(), 100+6*random.NormFloat64()
			a := read(t, assaytest.Library{}, fmt.Sprintf(weighed, "finish:\n  - measured: {"+fmt.Sprintf(c.reading, c.read(water, sugar))+"}"), draws)
			for id, x := range map[constituent.ID]float64{"WATER": water, "SUCS": sugar} {
				if f := assaytest.Figure(t, a.PerServing, id); f.Low <= x && x <= f.High {
					inside[id]++
				}
			}
		}
		for id, n := range inside {
			share := float64(n) / worlds
			t.Logf("%s: %.1f %% of %s", c.reading, 100*share, id)
			assert.InDelta(t, 0.90, share, 0.05, "%s of %s", id, c.reading)
		}
	}
}
