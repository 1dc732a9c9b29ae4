package cli

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/report/json"
	"sipsum/internal/sheet"
	"sipsum/internal/web"
	"sipsum/internal/workshop"
)

// One kitchen calculates for many at once, each drink as it would alone; the race detector sees that none disturbs another.
func TestAKitchenServesMany(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, houseRulesFile), []byte("rules: \"ours\"\nlimits: [{say: \"little sugar\", check: serving(sugars) < 20 g}]\n"), 0o600))
	folder, err := workshop.Open(dir, mostText)
	require.NoError(t, err)
	defer folder.Close()
	a := &app{streams: Streams{Out: io.Discard, Err: io.Discard, Env: func(string) string { return "" }}}
	a.options.db, a.options.seed = filepath.Join(dir, "x.db"), 1
	k, err := newKitchen(context.Background(), a, folder)
	require.NoError(t, err)
	defer a.db.Close()
	document := func(name string) string {
		text, err := data.FS.ReadFile("demo/" + name + demoEnding)
		var s *sheet.Sheet
		if err == nil {
			s, err = k.Sheet(t.Context(), web.File{Name: name + demoEnding, Text: text}, web.Ask{Draws: 40, Claims: true, Next: true, Change: true, House: true})
		}
		var out strings.Builder
		if err == nil {
			err = jsonreport.Sheet(&out, s)
		}
		assert.NoError(t, err)
		return out.String()
	}
	alone := map[string]string{}
	for _, name := range demos() {
		alone[name] = document(name)
		assert.Contains(t, alone[name], "little sugar", "the rules beside the drinks are answered")
	}
	var all sync.WaitGroup
	for range 3 {
		for _, name := range demos() {
			all.Go(func() { assert.Equal(t, alone[name], document(name), name) })
		}
	}
	all.Go(func() {
		text, err := data.FS.ReadFile("demo/garden-tide.yaml")
		assert.NoError(t, err)
		_, err = k.Compare(t.Context(), web.File{Name: "a", Text: text}, web.File{Name: "b", Text: []byte(strings.Replace(string(text), "30 g passion", "20 g passion", 1))}, 40)
		assert.NoError(t, err)
	})
	all.Wait()
}
