package stfcj_test

import (
	"os"
	"path/filepath"
	"testing"

	"sipsum/internal/tables/stfcj"
)

func BenchmarkRead(b *testing.B) {
	shared := os.Getenv("SIPSUM_SHARED")
	if shared == "" {
		b.Skip("SIPSUM_SHARED is not set: the published workbooks are needed")
	}
	values := 0
	for b.Loop() {
		release, err := stfcj.Format.Open(b.Context(), filepath.Join(shared, "tables", "japan2020"), "")
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
