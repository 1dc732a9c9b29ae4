package table_test

import (
	"archive/zip"
	"bytes"
	"hash/crc32"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
)

// entry is a file to be put into an archive.
type entry struct{ name, text string }

// zipped writes an archive and gives its path.
func zipped(t *testing.T, entries ...entry) string {
	t.Helper()
	return written(t, func(z *zip.Writer) {
		for _, e := range entries {
			w, err := z.Create(e.name)
			require.NoError(t, err)
			_, err = io.WriteString(w, e.text)
			require.NoError(t, err)
		}
	})
}

func written(t *testing.T, write func(*zip.Writer)) string {
	t.Helper()
	var raw bytes.Buffer
	z := zip.NewWriter(&raw)
	write(z)
	require.NoError(t, z.Close())
	path := filepath.Join(t.TempDir(), "release.zip")
	require.NoError(t, os.WriteFile(path, raw.Bytes(), 0o600))
	return path
}

func TestFilesOpensWhatAPersonNames(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "a.csv"), []byte("one"), 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "b.csv"), []byte("two"), 0o600))
	for name, c := range map[string]struct{ path, sees string }{
		"folder":              {folder, "a.csv b.csv"},
		"one file":            {filepath.Join(folder, "a.csv"), "a.csv"},
		"archive":             {zipped(t, entry{"a.csv", "one"}, entry{"b.csv", "two"}), "a.csv b.csv"},
		"archive of a folder": {zipped(t, entry{"top/", ""}, entry{"top/a.csv", "one"}, entry{"top/b.csv", "two"}, entry{"__MACOSX/._a.csv", "x"}), "a.csv b.csv"},
		"archive of folders":  {zipped(t, entry{"a.csv", "one"}, entry{"top/b.csv", "two"}), "a.csv top"},
	} {
		t.Run(name, func(t *testing.T) {
			fsys, err := table.Files(c.path)
			require.NoError(t, err)
			entries, err := fs.ReadDir(fsys, ".")
			require.NoError(t, err)
			sees := ""
			for i, e := range entries {
				if i > 0 {
					sees += " "
				}
				sees += e.Name()
			}
			assert.Equal(t, c.sees, sees)
			text, err := fs.ReadFile(fsys, "a.csv")
			require.NoError(t, err)
			assert.Equal(t, "one", string(text))
			_, err = fsys.Open("c.csv")
			assert.ErrorIs(t, err, fs.ErrNotExist)
		})
	}
	assert.Equal(t, folder, table.Dir(folder))
	assert.Equal(t, folder, table.Dir(filepath.Join(folder, "a.csv")))
	assert.Equal(t, "no/such.zip", table.Dir("no/such.zip"))
	plain, err := table.Hash(os.DirFS(folder), []string{"a.csv", "b.csv"})
	require.NoError(t, err)
	packed, err := table.Files(zipped(t, entry{"top/a.csv", "one"}, entry{"top/b.csv", "two"}))
	require.NoError(t, err)
	same, err := table.Hash(packed, []string{"a.csv", "b.csv"})
	require.NoError(t, err)
	assert.Equal(t, plain, same, "a release has the same hash packed and unpacked")
	require.NoError(t, fstest.TestFS(packed, "a.csv", "b.csv"))
}

func TestFilesRefusesWhatLeadsOutside(t *testing.T) {
	for _, name := range []string{"../a.csv", "a/../../b.csv", "/etc/a.csv", `..\a.csv`, `C:\a.csv`, "C:/a.csv", "a//b.csv", "./a.csv", "a\x00.csv"} {
		_, err := table.Files(zipped(t, entry{"good.csv", "1"}, entry{name, "2"}))
		assert.ErrorContains(t, err, "leads outside", name)
		assert.Equal(t, fail.Wrong, fail.ExitCode(err))
	}
}

func TestFilesRefusesHostileArchives(t *testing.T) {
	bomb := zipped(t, entry{"bomb.csv", string(make([]byte, 64<<20))})
	info, err := os.Stat(bomb)
	require.NoError(t, err)
	require.Less(t, info.Size(), int64(100_000), "a bomb is small")
	many := make([]entry, 10_001)
	for i := range many {
		many[i] = entry{name: strconv.Itoa(i)}
	}
	raw := func(h zip.FileHeader, bytes string) string {
		return written(t, func(z *zip.Writer) {
			w, err := z.CreateRaw(&h)
			require.NoError(t, err)
			io.WriteString(w, bytes)
		})
	}
	link := zip.FileHeader{Name: "link.csv"}
	link.SetMode(fs.ModeSymlink | 0o777)
	whole, err := os.ReadFile(zipped(t, entry{"a.csv", "a,b\n1,2\n"}))
	require.NoError(t, err)
	cut := filepath.Join(t.TempDir(), "cut.zip")
	require.NoError(t, os.WriteFile(cut, whole[:len(whole)-10], 0o600))
	for name, c := range map[string]struct{ path, says string }{
		"bomb":        {bomb, "more than 200 times its size"},
		"many":        {zipped(t, many...), "holds 10001 files"},
		"twice":       {zipped(t, entry{"a.csv", "1"}, entry{"a.csv", "2"}), `holds "a.csv" twice`},
		"folder too":  {zipped(t, entry{"a/", ""}, entry{"a", "2"}), `holds "a" twice`},
		"link":        {raw(link, "/etc/passwd"), "is a link"},
		"encrypted":   {raw(zip.FileHeader{Name: "a.csv", Flags: 1}, "xx"), "is encrypted"},
		"huge":        {raw(zip.FileHeader{Name: "a.csv", UncompressedSize64: 17 << 30, CompressedSize64: 1 << 30}, "x"), "unpacks to more than"},
		"huge sum":    {raw(zip.FileHeader{Name: "a.csv", UncompressedSize64: 1<<64 - 1}, "x"), "unpacks to more than"},
		"overlapping": {raw(zip.FileHeader{Name: "a.csv", UncompressedSize64: 1 << 30, CompressedSize64: 1 << 29}, "x"), "more than 200 times its size"},
		"truncated":   {cut, "is not a whole .zip archive"},
		"nothing":     {filepath.Join(t.TempDir(), "none.zip"), "cannot be read"},
	} {
		_, err := table.Files(c.path)
		assert.ErrorContains(t, err, c.says, name)
		assert.Equal(t, fail.Wrong, fail.ExitCode(err), name)
	}
}

// TestFilesDoesNotTrustDeclaredSizes: the directory says less than is there.
func TestFilesDoesNotTrustDeclaredSizes(t *testing.T) {
	const text = "a,b\n1,2\n1,2\n1,2\n"
	for name, size := range map[string]uint64{"longer": 4, "shorter": 400} {
		path := written(t, func(z *zip.Writer) {
			w, err := z.CreateRaw(&zip.FileHeader{Name: "a.csv", Method: zip.Store, CRC32: crc32.ChecksumIEEE([]byte(text)), CompressedSize64: uint64(len(text)), UncompressedSize64: size})
			require.NoError(t, err)
			io.WriteString(w, text)
		})
		fsys, err := table.Files(path)
		if err == nil {
			_, err = fs.ReadFile(fsys, "a.csv")
		}
		assert.Error(t, err, name)
	}
}

func TestFilesChecksTheSum(t *testing.T) {
	path := written(t, func(z *zip.Writer) {
		w, err := z.CreateRaw(&zip.FileHeader{Name: "a.csv", CRC32: crc32.ChecksumIEEE([]byte("9")), CompressedSize64: 1, UncompressedSize64: 1})
		require.NoError(t, err)
		io.WriteString(w, "1")
	})
	fsys, err := table.Files(path)
	require.NoError(t, err)
	_, err = fs.ReadFile(fsys, "a.csv")
	assert.ErrorIs(t, err, zip.ErrChecksum)
}
