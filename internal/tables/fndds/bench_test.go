package fndds_test

import (
	"testing"

	"sipsum/internal/tables/fndds"
	"sipsum/internal/tables/tablestest"
)

func BenchmarkRead(b *testing.B) {
	tablestest.Bench(b, fndds.Format, tablestest.Published(b, "fndds1718"))
}
