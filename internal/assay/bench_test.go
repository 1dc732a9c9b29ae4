package assay_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/assay"
	"sipsum/internal/drink"
)

func BenchmarkDemo(b *testing.B) {
	lib := coreLibrary(b)
	text, err := data.FS.ReadFile("demo/garden-tide.yaml")
	require.NoError(b, err)
	for b.Loop() {
		d, faults := drink.Parse("demo", text, nil)
		_, err := assay.Run(context.Background(), d, faults, lib, assay.Options{Draws: 1000, Seed: 1})
		require.NoError(b, err)
	}
}
