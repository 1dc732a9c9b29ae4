package assay_test

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
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

// large writes a drink of 12 components and 60 ingredients, five foods in each.
func large(lib assaytest.Library) string {
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
		fmt.Fprintf(&b, "    steps:\n      - reduce: {by: 10 %%}\n      - strain: {collect: 150 g, through: cloth}\n")
	}
	b.WriteString("build:\n")
	for c := range components {
		fmt.Fprintf(&b, "  - 20 g ± 1 g part %c\n", 'a'+c)
	}
	return b.String()
}

// BenchmarkLarge is a drink of 12 components and 60 ingredients at 1,000 draws.
func BenchmarkLarge(b *testing.B) {
	lib := assaytest.Core(b)
	text := []byte(large(lib))
	for b.Loop() {
		d, faults := drink.Parse("large", text, nil)
		_, err := assaytest.Run(context.Background(), d, faults, lib, assaytest.Options{Draws: 1000, Seed: 1})
		require.NoError(b, err)
	}
}
