package stfcj_test

import (
	"testing"

	"sipsum/internal/tables/stfcj"
	"sipsum/internal/tables/tablestest"
)

func BenchmarkRead(b *testing.B) {
	tablestest.Bench(b, stfcj.Format, tablestest.Published(b, "japan2020"))
}
