package cli_test

import (
	"io"
	"path/filepath"
	"strings"
	"testing"

	"sipsum/internal/cli"
)

func BenchmarkAssayDemo(b *testing.B) {
	db := filepath.Join(b.TempDir(), "x.db")
	run := func() {
		cli.Main([]string{"assay", "demo", "--db", db}, cli.Streams{In: strings.NewReader(""), Out: io.Discard, Err: io.Discard, Env: func(string) string { return "" }})
	}
	run()
	for b.Loop() {
		run()
	}
}
