package main

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Each table in turn left out of what the intervals are derived from, its figures lie in
// them: of every kind 85 to 95 %. Of the table that is kept back too. `--report` prints each
// constituent and class.
func TestIntervalsHoldATableThatTheyDoNotKnow(t *testing.T) {
	shared := os.Getenv("SIPSUM_SHARED")
	if shared == "" {
		t.Skip("SIPSUM_SHARED is not set: the published files are needed")
	}
	l, err := readLibrary(context.Background(), filepath.Join(shared, "tables"))
	require.NoError(t, err)
	if !slices.ContainsFunc(l.others, func(s *shelf) bool { return s.format == "afcd" }) {
		t.Skip("without the Australian table nothing is known of acids")
	}
	inTurn, keptBack, err := l.folds()
	require.NoError(t, err)
	kind := func(t try) string { return t.kind }
	for i, of := range [][]try{inTurn, keptBack} {
		groups, _ := grouped(of, kind)
		for _, name := range []string{"water", "proximates", "sugars", "minerals"} {
			held := heldOf(groups[name])
			t.Logf("%s: %.1f %% of %d held, score %.2f", name, 100*held, len(groups[name]), mean(each(groups[name], try.score)))
			assert.GreaterOrEqual(t, held, []float64{0.85, 0.83}[i], name)
			assert.LessOrEqual(t, held, 0.97, name)
		}
	}
	wide, _ := grouped(inTurn, func(t try) string { return string(t.id) + "/" + t.class })
	for name, most := range map[string]float64{"SUGAR/fruits": 0.45, "PROCNT/fruits": 0.55, "FIBTG/fruits": 0.60, "K/fruits": 0.50} {
		assert.LessOrEqual(t, median(each(wide[name], try.halfWidth)), most, name)
	}
}

// Rounding tells nothing: 1 and 2 mg printed to the milligram may be 1.49 and 1.51.
func TestApartBeyondRounding(t *testing.T) {
	assert.InDelta(t, 0.0134, apart(figure{amount: 1, half: 0.49}, figure{amount: 2, half: 0.49}), 1e-3)
	assert.Zero(t, apart(figure{amount: 1, half: 0.5}, figure{amount: 2, half: 0.5}))
	assert.InDelta(t, 0.6931, apart(figure{amount: 2}, figure{amount: 1}), 1e-4)
}

// Of foods apart by 1 to 100 hundredths, a lognormal number that holds 90 of them reaches
// up to 0.9 and more, since its median lies σ²/2 below its mean.
func TestReachHoldsItsLevel(t *testing.T) {
	var e evidence
	for i := range 100 {
		e = append(e, comparison{code: string(rune('A' + i)), apart: float64(i+1) / 100})
	}
	sigma := e.reach(0.9)
	up, down := limit*sigma-sigma*sigma/2, limit*sigma+sigma*sigma/2
	assert.InDelta(t, 0.9, (min(up, 1)+min(down, 1))/2, 0.015)
}
