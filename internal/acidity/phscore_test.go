package acidity_test

import (
	"bytes"
	"flag"
	"fmt"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

var update = flag.Bool("update", false, "rewrite testdata/ph")

// phCase is a core food of which somebody has published a pH.
type phCase struct {
	code           string
	published      float64
	low, high      float64 // of what has been published
	own            bool    // else taken from another food
	blind, shipped chemistry.Estimate
	rests          bool // the published pH entered the figure that is shipped
}

// The interval score of Winkler (1972) for a 90 % interval: its width, and twenty times what
// it misses. A pH that is withheld scores as one who knows no more than that it is a
// food: the middle nine tenths of all published pH.
const winklerAlpha = 0.1

// Our own bounds on the forecast: what was reached when testdata/ph/README.md was last
// written, less what a change of a few foods may cost.
const (
	leastInside = 0.7
	mostScore   = 3.8
)

func winkler(low, high, x float64) float64 {
	return high - low + 2/winklerAlpha*max(low-x, x-high, 0)
}

// Every core food with a published pH, twice: with its own published pH taken out of the
// table, which is a forecast; and as shipped, where the published pH may have entered
// the figure and proves nothing. `-v` logs the table, `-update` writes it to
// testdata/ph/README.md.
func TestScoreOfPublishedPH(t *testing.T) {
	cases := phCases(t)
	var all []float64
	for _, c := range cases {
		all = append(all, c.published)
	}
	slices.Sort(all)
	ignorant := [2]float64{stat.Quantile(winklerAlpha/2, stat.Empirical, all, nil), stat.Quantile(1-winklerAlpha/2, stat.Empirical, all, nil)}

	var out bytes.Buffer
	fmt.Fprintf(&out, "| foods | how | n | given | inside | inside of n | half-width, median | Winkler, given | Winkler, all |\n|---|---|--:|--:|--:|--:|--:|--:|--:|\n")
	forecast := phSummary(&out, "with a pH of their own", "forecast: its published pH taken out", ignorant, cases,
		func(c phCase) bool { return c.own }, func(c phCase) chemistry.Estimate { return c.blind })
	phSummary(&out, "with a pH of their own", "shipped, the published pH did not enter", ignorant, cases,
		func(c phCase) bool { return c.own && !c.rests }, func(c phCase) chemistry.Estimate { return c.shipped })
	entered := phSummary(&out, "with a pH of their own", "shipped, the published pH entered: proves nothing", ignorant, cases,
		func(c phCase) bool { return c.own && c.rests }, func(c phCase) chemistry.Estimate { return c.shipped })
	phSummary(&out, "with a pH taken from another food", "forecast: its published pH taken out", ignorant, cases,
		func(c phCase) bool { return !c.own }, func(c phCase) chemistry.Estimate { return c.blind })
	fmt.Fprintf(&out, "\nA pH that is withheld counts as not inside, and scores as the middle nine tenths of all published pH, %.2f to %.2f.\n\n", ignorant[0], ignorant[1])
	fmt.Fprintf(&out, "| food | published | from to | forecast | 90 %% | shipped | 90 %% | |\n|---|--:|---|--:|---|--:|---|---|\n")
	for _, c := range cases {
		fmt.Fprintf(&out, "| %s | %.2f | %s | %s | %s | %s |\n", c.code, c.published, fromTo(c.low, c.high), phCells(c.blind), phCells(c.shipped), phRemark(c))
	}
	t.Log("\n" + out.String())
	if *update {
		folder := filepath.Join("..", "..", "testdata", "ph")
		require.NoError(t, os.MkdirAll(folder, 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(folder, "README.md"), []byte(phReadme+out.String()), 0o644))
	}

	require.GreaterOrEqual(t, forecast.n, 100)
	assert.GreaterOrEqual(t, forecast.inside/forecast.given, leastInside, "of what is given, nine in ten should be inside")
	assert.LessOrEqual(t, forecast.score, mostScore, "knowing nothing scores %.1f", ignorant[1]-ignorant[0])
	assert.GreaterOrEqual(t, entered.inside/entered.given, 0.9, "what rests on a published pH holds it but where its composition speaks against it")
}

const phReadme = `# The published pH of core foods, and what sipsum says

Written by ` + "`go test ./internal/acidity -run ScoreOfPublishedPH -update`" + `; the same command with ` + "`-v`" + ` instead of ` + "`-update`" + ` only prints it. Sources of the published
pH: ` + "`data/core/literature.csv`" + `, rows PH. 100 g of each food at 25 °C.

*Forecast*: the food as it is in the core table, but without its published pH, so that what is said rests on composition and titratable acidity alone. *Shipped*: as the
program says it. Where the published pH entered that figure it proves nothing and stands apart.

`

type phScore struct {
	n             int
	given, inside float64
	score         float64 // of all, the withheld as the ignorant
}

func phSummary(out *bytes.Buffer, foods, how string, ignorant [2]float64, cases []phCase, counts func(phCase) bool, of func(phCase) chemistry.Estimate) phScore {
	var s phScore
	var given, all, halves []float64
	for _, c := range cases {
		if !counts(c) {
			continue
		}
		s.n++
		e := of(c)
		if e.Why != "" {
			all = append(all, winkler(ignorant[0], ignorant[1], c.published))
			continue
		}
		s.given++
		if e.Low <= c.published && c.published <= e.High {
			s.inside++
		}
		score := winkler(e.Low, e.High, c.published)
		given, all, halves = append(given, score), append(all, score), append(halves, (e.High-e.Low)/2)
	}
	if s.n == 0 {
		return s
	}
	slices.Sort(halves)
	half := math.NaN()
	if len(halves) > 0 {
		half = stat.Quantile(0.5, stat.Empirical, halves, nil)
	}
	s.score = stat.Mean(all, nil)
	told := func(x float64) string {
		if math.IsNaN(x) {
			return "–" // of none that was given
		}
		return fmt.Sprintf("%.2f", x)
	}
	fmt.Fprintf(out, "| %s | %s | %d | %.0f | %.0f | %.0f %% | %s | %s | %s |\n",
		foods, how, s.n, s.given, s.inside, 100*s.inside/float64(s.n), told(half), told(stat.Mean(given, nil)), told(s.score))
	return s
}

// phCases assays every core food with a published pH, with and without it.
func phCases(t *testing.T) []phCase {
	lib := assaytest.Core(t)
	var cases []phCase
	for _, id := range slices.SortedFunc(maps.Keys(lib), func(a, b food.ID) int { return strings.Compare(a.Code, b.Code) }) {
		value, ok := lib[id].Value("PH")
		if !ok || !food.Stated(value.Amount) {
			continue
		}
		c := phCase{code: id.Code, published: value.Amount, low: value.Low, high: value.High, own: value.State == estimate.Measured}
		shipped := assaytest.Glass(t, lib, id.String(), 25)
		c.shipped, c.rests = shipped.PHMeter, len(shipped.RestsOn) > 0
		c.blind = assaytest.Glass(t, assaytest.Without(lib, id, "PH"), id.String(), 25).PHMeter
		cases = append(cases, c)
	}
	return cases
}

func fromTo(low, high float64) string {
	if math.IsNaN(low) || math.IsNaN(high) {
		return ""
	}
	return fmt.Sprintf("%.2f–%.2f", low, high)
}

func phCells(e chemistry.Estimate) string {
	if e.Why != "" {
		return "withheld | " + fromTo(e.Low, e.High)
	}
	return fmt.Sprintf("%.2f | %s", e.Mean, fromTo(e.Low, e.High))
}

func phRemark(c phCase) string {
	var remarks []string
	switch {
	case c.blind.Why != "":
	case c.published < c.blind.Low || c.published > c.blind.High:
		remarks = append(remarks, "missed")
	default:
		remarks = append(remarks, "inside")
	}
	if c.rests {
		remarks = append(remarks, "entered")
	}
	if !c.own {
		remarks = append(remarks, "of another food")
	}
	return strings.Join(remarks, ", ")
}
