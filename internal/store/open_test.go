package store_test

import (
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"sync"
	"testing"

	"github.com/jmoiron/sqlx"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/store"
)

func TestMigrationsAreNumberedWithoutGaps(t *testing.T) {
	files, err := fs.Glob(store.MigrationsOnDisk, "migrations/*")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for i, file := range files {
		assert.Regexp(t, regexp.MustCompile(fmt.Sprintf(`^migrations/%04d_[a-z_]+\.sql$`, i+1)), file)
	}
}

func TestANewFileIsReadyForReadersDuringLoads(t *testing.T) {
	db := fresh(t)
	var mode string
	require.NoError(t, db.Handle().Get(&mode, "PRAGMA journal_mode"))
	assert.Equal(t, "wal", mode)
	var id, keys int
	require.NoError(t, db.Handle().Get(&id, "PRAGMA application_id"))
	assert.Equal(t, store.ApplicationID, id)
	require.NoError(t, db.Handle().Get(&keys, "PRAGMA foreign_keys"))
	assert.Equal(t, 1, keys)
}

func TestOpeningAgainWritesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "x.db")
	first, err := store.Open(t.Context(), path, store.Options{})
	require.NoError(t, err)
	load(t, first, "core", "1", plain("core", "x", "Sugar"))
	require.NoError(t, first.Close())
	before, err := os.ReadFile(path)
	require.NoError(t, err)
	for _, readOnly := range []bool{false, true} {
		again, err := store.Open(t.Context(), path, store.Options{ReadOnly: readOnly})
		require.NoError(t, err)
		_, err = again.Food(t.Context(), food.ID{Table: "core", Code: "x"})
		require.NoError(t, err)
		require.NoError(t, again.Close())
		after, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.True(t, string(before) == string(after))
	}
}

func TestAReaderDoesNotWrite(t *testing.T) {
	path := filepath.Join(t.TempDir(), "x.db")
	_, err := store.Open(t.Context(), path, store.Options{ReadOnly: true})
	assert.Equal(t, fail.NeedsTable, fail.ExitCode(err))
	assert.NoFileExists(t, path)
	open(t, path)
	reader, err := store.Open(t.Context(), path, store.Options{ReadOnly: true})
	require.NoError(t, err)
	defer reader.Close()
	_, err = reader.Load(t.Context(), store.Incoming{Table: table("big", "aa"), Foods: many(1, 1, 1)}, nil)
	require.Error(t, err)
	assert.Equal(t, fail.Failed, fail.ExitCode(err))
	assert.Contains(t, err.Error(), "cannot be written to")
}

func TestFilesThatAreNotOursAreRefused(t *testing.T) {
	sql := func(text string) func(t *testing.T, path string) {
		return func(t *testing.T, path string) {
			raw, err := sqlx.Open("sqlite", path)
			require.NoError(t, err)
			_, err = raw.Exec(text)
			require.NoError(t, err)
			require.NoError(t, raw.Close())
		}
	}
	write := func(text string) func(t *testing.T, path string) {
		return func(t *testing.T, path string) { require.NoError(t, os.WriteFile(path, []byte(text), 0o600)) }
	}
	ours := func(more string) func(t *testing.T, path string) {
		return func(t *testing.T, path string) {
			db, err := store.Open(t.Context(), path, store.Options{})
			require.NoError(t, err)
			require.NoError(t, db.Close())
			sql(more)(t, path)
		}
	}
	for _, c := range []struct {
		name     string
		make     func(t *testing.T, path string)
		readOnly bool
		text     string
	}{
		{"text", write("drink: a long text that is no database at all, but long enough for a header of one hundred bytes, as databases have them"), false, "is not a database"},
		{"short text", write("drink"), false, "is not a database"},
		{"another program's tables", sql("CREATE TABLE urls (id INTEGER)"), false, "is a database of another program"},
		{"another program's id", sql("PRAGMA application_id = 7; PRAGMA user_version = 1"), false, "is a database of another program"},
		{"newer", ours("PRAGMA user_version = 99"), false, "written by a newer sipsum (schema 99, this one knows"},
		{"older, for a reader", ours("PRAGMA user_version = 0"), true, "of an older sipsum (schema 0, this one needs"},
		{"folder", func(t *testing.T, path string) { require.NoError(t, os.Mkdir(path, 0o700)) }, false, "is a folder"},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "x.db")
			c.make(t, path)
			before, _ := os.ReadFile(path)
			db, err := store.Open(t.Context(), path, store.Options{ReadOnly: c.readOnly})
			if !assert.Error(t, err) {
				db.Close()
				return
			}
			assert.Contains(t, err.Error(), c.text)
			assert.Equal(t, fail.Failed, fail.ExitCode(err))
			var known *fail.Error
			require.ErrorAs(t, err, &known)
			assert.NotEmpty(t, known.Faults[0].Do)
			after, _ := os.ReadFile(path)
			assert.True(t, string(before) == string(after), "the file was changed")
		})
	}
}

func TestADamagedFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "x.db")
	db, err := store.Open(t.Context(), path, store.Options{})
	require.NoError(t, err)
	_, err = db.Load(t.Context(), store.Incoming{Table: table("big", "aa"), Foods: many(100, 10, 1)}, nil)
	require.NoError(t, err)
	require.NoError(t, db.Close())
	bytes, err := os.ReadFile(path)
	require.NoError(t, err)
	const page = 4096
	for i := page; i < len(bytes); i++ {
		bytes[i] = 0xa5
	}
	require.NoError(t, os.WriteFile(path, bytes, 0o600))
	_, err = store.Open(t.Context(), path, store.Options{})
	require.Error(t, err)
	assert.Contains(t, err.Error(), "is damaged")
	assert.Equal(t, fail.Failed, fail.ExitCode(err))
}

func TestManyOpenANewFileAtOnce(t *testing.T) {
	for range 5 {
		path := filepath.Join(t.TempDir(), "new", "x.db")
		start := make(chan struct{})
		var all sync.WaitGroup
		for range 8 {
			all.Go(func() {
				<-start
				db, err := store.Open(t.Context(), path, store.Options{})
				if assert.NoError(t, err) {
					_, err := db.Tables(t.Context())
					assert.NoError(t, err)
					assert.NoError(t, db.Close())
				}
			})
		}
		close(start)
		all.Wait()
	}
}

// Root may write anywhere, so the test runs itself again as nobody.
func TestAFolderThatMayNotBeWrittenTo(t *testing.T) {
	if path := os.Getenv(readOnlyPath); path != "" {
		_, err := store.Open(t.Context(), path, store.Options{})
		require.Error(t, err)
		fmt.Println(err) // the parent looks for the path
		assert.Equal(t, fail.Failed, fail.ExitCode(err))
		assert.Contains(t, err.Error(), "name a file in a folder you may write to")
		return
	}
	dir, err := os.MkdirTemp("", "sipsum")
	require.NoError(t, err)
	t.Cleanup(func() { os.Chmod(dir, 0o700); os.RemoveAll(dir) })
	program := filepath.Join(dir, "test")
	bytes, err := os.ReadFile(os.Args[0])
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(program, bytes, 0o755))
	require.NoError(t, os.Chmod(dir, 0o555))
	for _, path := range []string{filepath.Join(dir, "x.db"), filepath.Join(dir, "new", "x.db")} {
		cmd := exec.Command(program, "-test.run=^"+t.Name()+"$")
		cmd.Dir = dir
		cmd.Env = append(os.Environ(), readOnlyPath+"="+path)
		asNobody(cmd)
		out, err := cmd.CombinedOutput()
		require.NoError(t, err, "%s", out)
		assert.Contains(t, string(out), dir)
		assert.NoFileExists(t, path)
	}
}

const readOnlyPath = "SIPSUM_TEST_READ_ONLY"
