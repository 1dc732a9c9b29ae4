package cli

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/sheet"
	"sipsum/internal/web"
	"sipsum/internal/workshop"
)

func servedKitchen(tb testing.TB) (kitchen, []byte) {
	tb.Helper()
	dir := tb.TempDir()
	text, err := os.ReadFile("testdata/twelve.yaml")
	require.NoError(tb, err)
	folder, err := workshop.Open(dir, mostText)
	require.NoError(tb, err)
	tb.Cleanup(func() { folder.Close() })
	a := &app{streams: Streams{Out: io.Discard, Err: io.Discard, Env: func(string) string { return "" }}}
	a.options.db, a.options.seed = filepath.Join(dir, "x.db"), 1
	k, err := newKitchen(context.Background(), a, folder)
	require.NoError(tb, err)
	tb.Cleanup(func() { a.db.Close() })
	return k, text
}

// A change in a drink of twelve pots, as it is answered while somebody works at it: at most 50 ms.
func BenchmarkChangeOfTwelvePots(b *testing.B) {
	k, text := servedKitchen(b)
	ask := web.Ask{Draws: 200, Claims: true, Typed: true}
	_, err := k.Sheet(context.Background(), web.File{Name: "twelve.yaml", Text: text}, ask)
	require.NoError(b, err)
	for i := 0; b.Loop(); i++ {
		s, err := k.Sheet(context.Background(), web.File{Name: "twelve.yaml", Text: changed(text, i)}, ask)
		if err != nil {
			b.Fatal(err)
		}
		sheet.FrontOf(s)
	}
}

// changed is the drink with another amount in its glass.
func changed(text []byte, i int) []byte {
	return []byte(strings.Replace(string(text), "- 20 g lemon cordial", fmt.Sprintf("- %d g lemon cordial", 20+i%30), 1))
}
