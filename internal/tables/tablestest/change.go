package tablestest

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// Copy copies a release to a folder that a test may change.
func Copy(t testing.TB, dir string) string {
	t.Helper()
	copied := t.TempDir()
	require.NoError(t, os.CopyFS(copied, os.DirFS(dir)))
	return copied
}

// Write writes a file of a folder.
func Write(t testing.TB, dir, name string, content []byte) {
	t.Helper()
	require.NoError(t, os.WriteFile(filepath.Join(dir, name), content, 0o600))
}

// Change copies a release and changes one file of it.
func Change(t testing.TB, dir, name string, edit func([]byte) []byte) string {
	t.Helper()
	copied := Copy(t, dir)
	Write(t, copied, name, edit(Bytes(t, dir, name)))
	return copied
}

// Swap is an edit: it replaces the first place of a text, which must be there.
func Swap(t testing.TB, old, new string) func([]byte) []byte {
	return func(content []byte) []byte {
		t.Helper()
		require.True(t, bytes.Contains(content, []byte(old)), old)
		return bytes.Replace(content, []byte(old), []byte(new), 1)
	}
}
