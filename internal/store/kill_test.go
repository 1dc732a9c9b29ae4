package store_test

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/fail"
	"sipsum/internal/store"
)

// The table that the killed process loads again and again.
const (
	killPath   = "SIPSUM_TEST_KILL"
	killFoods  = 200
	killValues = 30
)

// TestMain turns the test binary into a process that loads until it is killed.
func TestMain(m *testing.M) {
	if path := os.Getenv(killPath); path != "" {
		loadForEver(path)
	}
	os.Exit(m.Run())
}

func loadForEver(path string) {
	ctx := context.Background()
	db, err := store.Open(ctx, path, store.Options{})
	for i := 1; err == nil; i++ {
		_, err = db.Load(ctx, store.Incoming{Table: table("big", fmt.Sprint(i)), Foods: many(killFoods, killValues, float64(i)), Force: true}, nil)
		fmt.Println("loaded") // the parent waits for the first
	}
	fmt.Fprintln(os.Stderr, err)
	os.Exit(1)
}

func TestAKillLeavesOneWholeRelease(t *testing.T) {
	path := filepath.Join(t.TempDir(), "x.db")
	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	random := rand.New(rand.NewPCG(seed, 0))
	leftovers := 0
	for range 10 {
		cmd := exec.Command(os.Args[0])
		cmd.Env = append(os.Environ(), killPath+"="+path)
		out, err := cmd.StdoutPipe()
		require.NoError(t, err)
		var said bytes.Buffer
		cmd.Stderr = &said
		started := time.Now()
		require.NoError(t, cmd.Start())
		_, readErr := out.Read(make([]byte, 1))
		time.Sleep(time.Duration(random.Int64N(int64(time.Since(started))))) // somewhere in the next load or two
		require.NoError(t, cmd.Process.Kill())
		cmd.Wait() // its error is the kill
		require.NoError(t, readErr, "%s", said.String())

		db, err := store.Open(t.Context(), path, store.Options{})
		require.NoError(t, err)
		var verdict string
		require.NoError(t, db.Handle().Get(&verdict, "PRAGMA integrity_check"))
		require.Equal(t, "ok", verdict)
		_, err = db.Handle().Exec("INSERT INTO food_name_index (food_name_index) VALUES ('integrity-check')")
		require.NoError(t, err)
		require.GreaterOrEqual(t, whole(t, db, killFoods, killValues), 1.0)
		var old int
		require.NoError(t, db.Handle().Get(&old, "SELECT count(*) FROM release WHERE current = 0"))
		leftovers += old
		require.NoError(t, db.Close())
	}
	t.Logf("%d kills came between the switch and the end of the sweep", leftovers)
	db := open(t, path)
	_, err := db.Load(t.Context(), store.Incoming{Table: table("big", "last"), Foods: many(killFoods, killValues, -1)}, nil)
	require.NoError(t, err)
	assert.Equal(t, -1.0, whole(t, db, killFoods, killValues))
	nothingLeft(t, db)
}

// A sweep that was stopped half way, made by hand so that it is always tested.
func TestTheNextLoadSweepsWhatAKillLeft(t *testing.T) {
	db := fresh(t)
	n := store.SweepFoods + 10
	_, err := db.Load(t.Context(), store.Incoming{Table: table("big", "aa"), Foods: many(n, 3, 1)}, nil)
	require.NoError(t, err)
	_, err = db.Handle().Exec("UPDATE release SET current = 0; DELETE FROM ranked WHERE food < 5; DELETE FROM called WHERE name IN (SELECT key FROM food_name WHERE food < 5); DELETE FROM food_name WHERE food < 5; DELETE FROM food WHERE key < 5")
	require.NoError(t, err)
	_, err = db.Load(t.Context(), store.Incoming{Table: table("big", "bb"), Foods: many(n, 3, 2)}, nil)
	require.NoError(t, err)
	assert.Equal(t, 2.0, whole(t, db, n, 3))
	nothingLeft(t, db)
}

func TestAFullDiskLeavesThePreviousRelease(t *testing.T) {
	dir := t.TempDir()
	if out, err := exec.Command("mount", "-t", "tmpfs", "-o", "size=2m", "tmpfs", dir).CombinedOutput(); err != nil {
		t.Skipf("a small tmpfs cannot be mounted here (needs root on Linux): %v %s", err, out)
	}
	t.Cleanup(func() { assert.NoError(t, exec.Command("umount", dir).Run()) })
	db := open(t, filepath.Join(dir, "x.db"))
	_, err := db.Load(t.Context(), store.Incoming{Table: table("big", "aa"), Foods: many(100, 3, 1)}, nil)
	require.NoError(t, err)
	_, err = db.Load(t.Context(), store.Incoming{Table: table("big", "bb"), Foods: many(3000, 40, 2)}, nil)
	require.Error(t, err)
	assert.Equal(t, fail.Failed, fail.ExitCode(err))
	assert.Contains(t, err.Error(), "the disk is full")
	assert.Equal(t, 1.0, whole(t, db, 100, 3))
	_, err = db.Load(t.Context(), store.Incoming{Table: table("big", "cc"), Foods: many(100, 3, 3)}, nil)
	require.NoError(t, err)
	assert.Equal(t, 3.0, whole(t, db, 100, 3))
	nothingLeft(t, db)
}
