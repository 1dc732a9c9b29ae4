package assay_test

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
)

func BenchmarkDemo(b *testing.B) {
	lib := assaytest.Core(b)
	text, err := data.FS.ReadFile("demo/garden-tide.yaml")
	require.NoError(b, err)
	for b.Loop() {
		d, faults := drink.Parse("demo", text, nil)
		_, err := assaytest.Run(context.Background(), d, faults, lib, assaytest.Options{Draws: 1000, Seed: 1})
		require.NoError(b, err)
	}
}

// large writes a drink of 12 components and 60 ingredients, five foods in each, strained and what
// further steps say.
func large(lib assaytest.Library, steps ...string) string {
	var foods []string
	for id, f := range lib {
		if f.Group == "fruit juice" || f.Group == "citrus juice" || f.Group == "syrup" || f.Group == "milk" || f.Group == "plant drink" || f.Group == "coffee drink" {
			foods = append(foods, id.String())
		}
	}
	slices.Sort(foods)
	var b strings.Builder
	b.WriteString("drink: \"Large\"\nserves: 2\ncomponents:\n")
	const components, each = 12, 5
	for c := range components {
		fmt.Fprintf(&b, "  part %c:\n    ingredients:\n", 'a'+c)
		for i := range each {
			fmt.Fprintf(&b, "      - %d g ± 2 g %s\n", 40+i, foods[(c*each+i)%len(foods)])
		}
		fmt.Fprintf(&b, "    steps:\n      - strain: {collect: 150 g, through: cloth}\n")
		for _, step := range steps {
			fmt.Fprintf(&b, "      - %s\n", step)
		}
	}
	b.WriteString("build:\n")
	for c := range components {
		fmt.Fprintf(&b, "  - 20 g ± 1 g part %c\n", 'a'+c)
	}
	return b.String()
}

// BenchmarkLarge is a drink of 12 components and 60 ingredients at 1,000 draws: from its foods to
// its figures.
func BenchmarkLarge(b *testing.B) {
	lib := assaytest.Core(b)
	for _, c := range []struct {
		name  string
		steps []string
		want  assay.Want
	}{
		{"figures", nil, assay.Want{Intervals: true}},
		{"chemistry", nil, assay.Want{Intervals: true, Chemistry: true}},
		{"shares", nil, assay.Want{Intervals: true, Figures: every()}},
		{"reduced", []string{"reduce: {by: 10 %}"}, assay.Want{Intervals: true, Chemistry: true}},
	} {
		b.Run(c.name, func(b *testing.B) {
			found := assaytest.Found(b, lib, large(lib, c.steps...))
			var a *assay.Assay
			before := processor(b)
			for b.Loop() {
				var err error
				a, err = assay.Prepare(found, estimate.Ensemble{Seed: 1, N: 1001}).Run(context.Background(), nil, c.want)
				require.NoError(b, err)
			}
			b.ReportMetric(float64(processor(b)-before)/float64(b.N), "cpu-ns/op")
			tellWork(b, a)
		})
	}
}

// every lists all that drinks hold.
func every() (ids []constituent.ID) {
	for _, c := range constituent.All() {
		if c.InLedger() {
			ids = append(ids, c.ID)
		}
	}
	return ids
}

// processor is the time that this process has used, on all cores.
func processor(b *testing.B) time.Duration {
	var used syscall.Rusage
	require.NoError(b, syscall.Getrusage(syscall.RUSAGE_SELF, &used))
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// tellWork reports how much a run has drawn and read, for scripts/bench to set the same work beside it.
func tellWork(b *testing.B, a *assay.Assay) {
	cells, shares := 0, 0
	for _, row := range a.Serving.Rows {
		for _, c := range constituent.All() {
			if cell := row.Profile.Cells[c.Order]; c.InLedger() && cell.Known && cell.Amount != 0 {
				cells++
			}
		}
	}
	for _, c := range a.Components {
		for _, f := range c.Constituents {
			if !math.IsNaN(f.Share.Mean) {
				shares++
			}
		}
	}
	for _, f := range a.PerServing {
		for _, c := range f.Contributions {
			if !math.IsNaN(c.Share.Mean) {
				shares++
			}
		}
	}
	for unit, n := range map[string]int{"cells": cells, "foods": len(a.Serving.Rows), "parts": len(a.Components), "figures": len(a.PerServing), "shares": shares} {
		b.ReportMetric(float64(n), unit)
	}
}

// BenchmarkRunAgain is a run with one amount changed, at 200 draws: what a slider costs.
func BenchmarkRunAgain(b *testing.B) {
	lib := assaytest.Core(b)
	demo := string(assaytest.FileOf(b, "data/demo/garden-tide.yaml"))
	for _, c := range []struct{ name, text, path string }{
		{"demo", demo, "passion syrup/core:passion-fruit-juice-purple"},
		{"large", large(lib, "reduce: {by: 10 %}"), "part a/"},
	} {
		for _, chemistry := range []bool{false, true} {
			b.Run(fmt.Sprintf("%s/chemistry=%t", c.name, chemistry), func(b *testing.B) {
				plan := planOf(b, lib, c.text, 200)
				d, _ := drink.Parse("again", []byte(c.text), nil)
				want := assay.Want{Figures: evidence.Constituents(d), Intervals: true, Chemistry: chemistry} // what a page wants
				_, err := plan.Run(context.Background(), nil, want)
				require.NoError(b, err)
				path := ""
				for at := range plan.Written() {
					if strings.HasPrefix(at, c.path) && (path == "" || at < path) {
						path = at
					}
				}
				written := plan.Written()[path]
				step := 0.0
				for b.Loop() {
					step += 0.01
					other := written
					other.Number += step
					_, err := plan.Run(context.Background(), amount.Amounts{path: other}, want)
					require.NoError(b, err)
				}
			})
		}
	}
}
