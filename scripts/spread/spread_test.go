package main

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"
)

// TestTheQuantileCovers is the argument of doc.go in numbers: with ln r normal,
// 90 % intervals at the 70 % quantile of r hold about 90 % of samples on average
// over rows, and at the median fewer.
func TestTheQuantileCovers(t *testing.T) {
	const rows = 4001
	z := distuv.UnitNormal.Quantile(0.95)
	for _, s := range []float64{0.6, 0.8, 1.0} {
		r := make([]float64, rows)
		for i := range r {
			r[i] = math.Exp(s * distuv.UnitNormal.Quantile((float64(i)+0.5)/rows))
		}
		held := func(at float64) float64 {
			sum := 0.0
			for _, truth := range r {
				sum += 2*distuv.UnitNormal.CDF(z*at/truth) - 1
			}
			return sum / rows
		}
		assert.InDelta(t, 0.90, held(quantile(r, share)), 0.02, "s = %g", s)
		assert.Less(t, held(median(r)), 0.87, "s = %g", s)
	}
}

func TestQuantile(t *testing.T) {
	// Hyndman and Fan (1996), definition 7: at = p(n−1).
	assert.InDelta(t, 3.8, quantile([]float64{5, 1, 4, 2, 3, math.NaN()}, 0.7), 1e-12)
	assert.Equal(t, 2.5, median([]float64{4, 1, 2, 3}))
	assert.Equal(t, 7.0, quantile([]float64{7}, 0.7))
	assert.True(t, math.IsNaN(median(nil)))
}

func TestParseReport(t *testing.T) {
	r, err := parseReport([]string{"CITAC", "fruit juice", "1.19", "0.30", "", "", "477", "x", ""})
	require.NoError(t, err)
	assert.InDelta(t, 0.2521, r.relative, 1e-4)
	// d₂(4) = 2.059 as printed in tables of control-chart factors
	r, err = parseReport([]string{"CITAC", "citrus juice", "", "", "48.54", "60.32", "4", "x", ""})
	require.NoError(t, err)
	assert.InDelta(t, 11.78/2.059/54.43, r.relative, 1e-4)
	r, err = parseReport([]string{"NA", "salt", "", "", "97", "100", "", "x", ""})
	require.NoError(t, err)
	assert.InDelta(t, 3/math.Sqrt(12)/98.5, r.relative, 1e-9)
	_, err = parseReport([]string{"NA", "salt", "1", "", "", "", "", "x", ""})
	assert.Error(t, err)
}

func TestLiteratureIsWhole(t *testing.T) {
	reports, err := literature()
	require.NoError(t, err)
	for _, r := range reports {
		assert.Less(t, r.relative, 1.0, "%s of %s", r.constituent, r.group)
		assert.NotEmpty(t, r.source)
	}
}

// TestTheFileIsWhatTheSourcesGive needs the published files, which are not part
// of sipsum.
func TestTheFileIsWhatTheSourcesGive(t *testing.T) {
	shared := os.Getenv("SIPSUM_SHARED")
	if shared == "" {
		t.Skip("SIPSUM_SHARED is not set: the published files are needed")
	}
	require.NoError(t, run(filepath.Join(shared, "tables"), "../../data", true, false))
}

// Samples of one source that deviate by 4 % or 5 %: the default has their quantile
// and what lies between sources, which standardised sugar has none of.
func TestTheDefaultJoinsWhatLiesBetweenSources(t *testing.T) {
	in := []sample{{constituent: "K", relative: 0.04, byRange: math.NaN()}, {constituent: "K", relative: 0.05, byRange: math.NaN()}}
	r := of("K", "nut", in, "")
	assert.InDelta(t, 0.045*betweenOf("K"), r.between, 1e-12)
	assert.InDelta(t, math.Hypot(0.047, r.between), r.relative, 1e-12)
	r = of("SUCS", refined, in, "")
	assert.Zero(t, r.between)
	assert.InDelta(t, 0.047, r.relative, 1e-12)
}
