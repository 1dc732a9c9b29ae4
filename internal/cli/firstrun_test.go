package cli_test

import (
	"bytes"
	"database/sql"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/store"
)

// command is the program with a home of its own.
func command(t testing.TB, home string, args ...string) *exec.Cmd {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), "sipsum", args...) // TestMain puts it on the path
	cmd.Env = append(os.Environ(), "HOME="+home, "XDG_DATA_HOME=", "SIPSUM_DB=")
	return cmd
}

// All of many first runs at once answer, and the core table is written once; so
// it is where an older core table is to be replaced.
func TestManyFirstRunsAtOnce(t *testing.T) {
	const runs = 16
	home := t.TempDir()
	path := filepath.Join(home, ".local", "share", "sipsum", "sipsum.db")
	releases := func() (last int) {
		db, err := sql.Open("sqlite", path)
		require.NoError(t, err)
		defer db.Close()
		require.NoError(t, db.QueryRow("SELECT max(key) FROM release").Scan(&last))
		return last
	}
	for _, wrote := range []int{1, 3} {
		var all sync.WaitGroup
		answers := make([]bytes.Buffer, runs)
		for i := range runs {
			all.Go(func() {
				cmd := command(t, home, "food", "show", "core:sugar-white")
				cmd.Stdout, cmd.Stderr = &answers[i], &answers[i]
				assert.NoError(t, cmd.Run())
			})
		}
		all.Wait()
		for i := range answers {
			assert.Equal(t, answers[0].String(), answers[i].String())
			assert.Contains(t, answers[i].String(), "sucrose")
		}
		assert.Equal(t, wrote, releases(), "releases written so far")
		makeOld(t, path)
	}
}

// makeOld puts the core table of another sipsum into a database: release 2.
func makeOld(t *testing.T, path string) {
	t.Helper()
	db, err := store.Open(t.Context(), path, store.Options{})
	require.NoError(t, err)
	defer db.Close()
	old := source.Table{ID: store.Core, Format: "core", Title: "old", Edition: "old", Licence: "x", Citation: "x", Hash: "old"}
	one := &food.Food{ID: food.ID{Table: store.Core, Code: "x"}, Names: []food.Name{{Language: "en", Text: "x"}}}
	_, err = db.Load(t.Context(), store.Incoming{Table: old, Foods: func(yield func(*food.Food, error) bool) { yield(one, nil) }}, nil)
	require.NoError(t, err)
}
