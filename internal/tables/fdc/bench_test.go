package fdc_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"sipsum/internal/tables/fdc"
	"sipsum/internal/tables/tablestest"
)

// BenchmarkRead reads a release of scripts/bench: the one in the folder
// named by SIPSUM_BENCH_FDC, or a small one made here.
func BenchmarkRead(b *testing.B) {
	dir := os.Getenv("SIPSUM_BENCH_FDC")
	if dir == "" {
		dir = filepath.Join(b.TempDir(), "release")
		out, err := exec.Command("go", "run", "sipsum/scripts/bench", "release", "-foods", "40000", "-values", "500000", "-out", dir).CombinedOutput()
		require.NoError(b, err, string(out))
	}
	most := uint64(0)
	stop := make(chan struct{})
	go func() { // memory that the process has at most, by the runtime's count
		var m runtime.MemStats
		for {
			select {
			case <-stop:
				return
			case <-time.After(200 * time.Millisecond):
				runtime.ReadMemStats(&m)
				most = max(most, m.Sys-m.HeapReleased)
			}
		}
	}()
	values := tablestest.Bench(b, fdc.Format, dir)
	close(stop)
	b.ReportMetric(float64(values)/float64(b.N), "values/op")
	b.ReportMetric(float64(most)/(1<<20), "MiB")
}
