package assay_test

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
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
		{"reduced", []string{"reduce: {by: 10 %}"}, assay.Want{Intervals: true, Chemistry: true}},
	} {
		b.Run(c.name, func(b *testing.B) {
			text := large(lib, c.steps...)
			found := assaytest.Found(b, lib, text)
			for b.Loop() {
				_, err := assay.Prepare(found, estimate.Ensemble{Seed: 1, N: 1001}).Run(context.Background(), nil, c.want)
				require.NoError(b, err)
			}
		})
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
