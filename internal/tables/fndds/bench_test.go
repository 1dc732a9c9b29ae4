package fndds_test

import (
	"os"
	"path/filepath"
	"testing"

	"sipsum/internal/tables/fndds"
)

func BenchmarkRead(b *testing.B) {
	shared := os.Getenv("SIPSUM_SHARED")
	if shared == "" {
		b.Skip("SIPSUM_SHARED is not set: the published workbooks are needed")
	}
	values := 0
	for b.Loop() {
		release, err := fndds.Format.Open(b.Context(), filepath.Join(shared, "tables", "fndds1718"), "")
		if err != nil {
			b.Fatal(err)
		}
		for f, err := range release.Foods {
			if err != nil {
				b.Fatal(err)
			}
			values += len(f.Values)
		}
	}
	b.ReportMetric(float64(values)/b.Elapsed().Seconds(), "values/s")
}
