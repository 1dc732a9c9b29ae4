package workshop_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/workshop"
)

const (
	most = 1000 // bytes of a file of these tests, and one more
	tide = "tide.drink.yaml"
)

// folder opens a folder of its own with one drink in it.
func folder(t *testing.T) (*workshop.Folder, string) {
	t.Helper()
	dir := t.TempDir()
	put(t, dir, tide, "drink: \"Tide\" # the first\n")
	f, err := workshop.Open(dir, most)
	require.NoError(t, err)
	t.Cleanup(func() { f.Close() })
	return f, dir
}

func put(t *testing.T, dir, name, text string) {
	t.Helper()
	require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644))
}

func saved(t *testing.T, dir, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(dir, name))
	require.NoError(t, err)
	return string(text)
}

func mark(text string) string { return workshop.Fingerprint([]byte(text)) }

func TestAFolderListsItsDrinks(t *testing.T) {
	f, dir := folder(t)
	put(t, dir, "Bare.yml", "# first\ndrink: Bare name  # remark\nserves: 1\n")
	put(t, dir, "none.yaml", "serves: 1\n")
	put(t, dir, "turned.yaml", "drink: \"a\u202eb\x1b[31m\"\n")
	for _, no := range []string{"house.shelf.yaml", "house-rules.yaml", ".hidden.yaml", "notes.txt", "nul.yaml", "a b .drink.txt"} {
		put(t, dir, no, "drink: no\n")
	}
	require.NoError(t, os.Mkdir(filepath.Join(dir, "sub.yaml"), 0o755))
	require.NoError(t, os.Symlink(tide, filepath.Join(dir, "link.yaml")))
	list, err := f.List()
	require.NoError(t, err)
	titles := map[string]string{}
	for _, e := range list {
		titles[e.Name] = e.Title
		assert.WithinDuration(t, time.Now(), e.Saved, time.Minute)
	}
	assert.Equal(t, map[string]string{tide: "Tide", "Bare.yml": "Bare name", "none.yaml": "", "turned.yaml": "ab[31m"}, titles)
}

func TestASaveKeepsWhatWasThere(t *testing.T) {
	f, dir := folder(t)
	first := saved(t, dir, tide)
	require.NoError(t, os.Chmod(filepath.Join(dir, tide), 0o600))
	require.NoError(t, f.Save(tide, mark(first), []byte("drink: second\n")))
	assert.Equal(t, "drink: second\n", saved(t, dir, tide))
	info, err := os.Stat(filepath.Join(dir, tide))
	require.NoError(t, err)
	assert.Equal(t, fs.FileMode(0o600), info.Mode().Perm(), "what others may read stays as it was")
	list, err := f.Versions(tide)
	require.NoError(t, err)
	require.Len(t, list, 1)
	text, err := f.Version(tide, list[0].ID)
	require.NoError(t, err)
	assert.Equal(t, first, string(text))
	require.NoError(t, f.Save(tide, mark("drink: second\n"), []byte("drink: second\n")))
	list, err = f.Versions(tide)
	require.NoError(t, err)
	assert.Len(t, list, 1, "a save that changes nothing is no version")
	nothingUnfinished(t, dir)
}

func nothingUnfinished(t *testing.T, dir string) {
	t.Helper()
	left, err := os.ReadDir(filepath.Join(dir, ".sipsum", "unfinished"))
	require.NoError(t, err)
	assert.Empty(t, left)
}

func TestAnotherHandIsNeverOverwritten(t *testing.T) {
	f, dir := folder(t)
	first := saved(t, dir, tide)
	put(t, dir, tide, "drink: outside\n")
	var changed *workshop.Changed
	require.ErrorAs(t, f.Save(tide, mark(first), []byte("drink: mine\n")), &changed)
	assert.Equal(t, "drink: outside\n", string(changed.Text))
	assert.False(t, changed.Gone)
	assert.Equal(t, "drink: outside\n", saved(t, dir, tide))
	list, err := f.Versions(tide)
	require.NoError(t, err)
	assert.Empty(t, list, "nothing was replaced")
	require.NoError(t, f.Save(tide, mark("drink: outside\n"), []byte("drink: mine\n")))

	require.NoError(t, os.Remove(filepath.Join(dir, tide)))
	require.ErrorAs(t, f.Save(tide, mark("drink: mine\n"), []byte("drink: later\n")), &changed)
	assert.True(t, changed.Gone)
	assert.NoFileExists(t, filepath.Join(dir, tide))
	nothingUnfinished(t, dir)
}

// An editor that had the file open before the save, and writes to it after, writes to the version.
func TestWhatASlowEditorWritesIsKept(t *testing.T) {
	f, dir := folder(t)
	editor, err := os.OpenFile(filepath.Join(dir, tide), os.O_WRONLY, 0)
	require.NoError(t, err)
	defer editor.Close()
	require.NoError(t, f.Save(tide, mark(saved(t, dir, tide)), []byte("drink: mine\n")))
	_, err = editor.WriteString("drink: SLOW")
	require.NoError(t, err)
	list, err := f.Versions(tide)
	require.NoError(t, err)
	text, err := f.Version(tide, list[0].ID)
	require.NoError(t, err)
	assert.Contains(t, string(text), "SLOW")
	assert.Equal(t, "drink: mine\n", saved(t, dir, tide))
}

func TestTheLastTwentyVersionsAreKept(t *testing.T) {
	f, dir := folder(t)
	put(t, dir, tide, "0")
	for i := 1; i <= 25; i++ {
		require.NoError(t, f.Save(tide, mark(strconv.Itoa(i-1)), []byte(strconv.Itoa(i))))
	}
	list, err := f.Versions(tide)
	require.NoError(t, err)
	require.Len(t, list, 20)
	for i, v := range list { // newest first: 24 … 5
		text, err := f.Version(tide, v.ID)
		require.NoError(t, err)
		assert.Equal(t, strconv.Itoa(24-i), string(text))
	}
}

// Of many who save from one text, one is heard, and all the others are told.
func TestOneOfManyIsHeard(t *testing.T) {
	f, dir := folder(t)
	base := mark(saved(t, dir, tide))
	var heard, told sync.Map
	var all sync.WaitGroup
	for i := range 20 {
		all.Go(func() {
			err := f.Save(tide, base, []byte("drink: "+strconv.Itoa(i)+"\n"))
			if changed := (*workshop.Changed)(nil); errors.As(err, &changed) {
				told.Store(i, true)
			} else if err == nil {
				heard.Store(i, true)
			}
		})
	}
	all.Wait()
	count := func(m *sync.Map) (n int) { m.Range(func(any, any) bool { n++; return true }); return n }
	assert.Equal(t, 1, count(&heard))
	assert.Equal(t, 19, count(&told))
}

func TestNewDrinksOverwriteNothing(t *testing.T) {
	f, dir := folder(t)
	require.NoError(t, f.Create("new.drink.yaml", []byte("drink: new\n")))
	assert.Equal(t, "drink: new\n", saved(t, dir, "new.drink.yaml"))
	require.ErrorIs(t, f.Create("new.drink.yaml", []byte("drink: other\n")), fs.ErrExist)
	assert.Equal(t, "drink: new\n", saved(t, dir, "new.drink.yaml"))
	require.Error(t, f.Create("big.yaml", []byte(strings.Repeat("x", most))))
	assert.NoFileExists(t, filepath.Join(dir, "big.yaml"))
	nothingUnfinished(t, dir)
}

// Names that lead elsewhere, and names that Windows gives to devices or files of other names.
var strangeNames = []string{
	"", ".", "..", "../" + tide, "..\\" + tide, "/etc/passwd", "a/" + tide, "a\\b.yaml", ".sipsum/versions", ".hidden.yaml", "C:tide.yaml",
	tide + ":stream.yaml", "con.yaml", "NUL.drink.yaml", "Com1.yaml", "lpt9.x.yaml", "com¹.yaml", "CONIN$.yaml", "aux .yaml", "a\x00.yaml", "a\n.yaml", "a\u202e.yaml", " a.yaml", "a.yaml ", "a.yaml.",
	"a\xff.yaml", "notes.txt", "house.shelf.yaml", "house-rules.yaml", "a*.yaml", strings.Repeat("x", 251) + ".yaml",
}

func TestStrangeNamesAreRefused(t *testing.T) {
	f, dir := folder(t)
	before, err := os.ReadDir(dir)
	require.NoError(t, err)
	for _, name := range strangeNames {
		_, err := f.Read(name)
		require.Error(t, err, "%q", name)
		require.Error(t, f.Create(name, []byte("x")), "%q", name)
		require.Error(t, f.Save(name, mark(""), []byte("x")), "%q", name)
		_, err = f.Versions(name)
		require.Error(t, err, "%q", name)
		_, err = f.Version(name, "20260101T000000.000000000Z")
		require.Error(t, err, "%q", name)
	}
	for _, id := range []string{"", "..", "../../../" + tide, "../" + tide + "/20260101T000000.000000000Z"} {
		_, err := f.Version(tide, id)
		require.Error(t, err, "%q", id)
	}
	after, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Equal(t, len(before), len(after))
	for _, name := range []string{"tide.yaml", "конфета.yml", "a b-c.drink.yaml", "console.yaml", "common.yaml"} {
		assert.True(t, workshop.IsDrink(name), name)
	}
}

func TestShelvesAreReadInTheFolderAlone(t *testing.T) {
	f, dir := folder(t)
	require.NoError(t, os.Mkdir(filepath.Join(dir, "bar"), 0o755))
	put(t, dir, "bar/house.shelf.yaml", "foods: {}\n")
	text, err := f.Beside("bar/../bar/house.shelf.yaml")
	require.NoError(t, err)
	assert.Equal(t, "foods: {}\n", string(text))
	for _, path := range []string{"../x.yaml", "/etc/passwd", ".sipsum/x", "bar", "", "bar//x", "nul", "none.shelf.yaml"} {
		_, err := f.Beside(path)
		require.Error(t, err, path)
	}
}

// Links out of the folder, in the place of a drink, of the versions or of a folder on the way, lead nowhere; nor does a
// file that becomes one again and again while it is read and saved.
func TestLinksLeadNowhere(t *testing.T) {
	f, dir := folder(t)
	outside := t.TempDir()
	put(t, outside, "secret.yaml", "drink: secret\n")
	require.NoError(t, os.Symlink(filepath.Join(outside, "secret.yaml"), filepath.Join(dir, "out.yaml")))
	require.NoError(t, os.Symlink(outside, filepath.Join(dir, "way")))
	_, err := f.Read("out.yaml")
	require.Error(t, err)
	_, err = f.Beside("way/secret.yaml")
	require.Error(t, err)
	require.Error(t, f.Save("out.yaml", mark("drink: secret\n"), []byte("x")))
	require.Error(t, f.Create("out.yaml", []byte("x")))

	path := filepath.Join(dir, "flips.yaml")
	stop := make(chan struct{})
	var flipping sync.WaitGroup
	flipping.Go(func() {
		for i := 0; ; i++ {
			select {
			case <-stop:
				return
			default:
			}
			os.Remove(path)
			if i%2 == 0 {
				os.Symlink(filepath.Join(outside, "secret.yaml"), path)
			} else {
				os.WriteFile(path, []byte("drink: plain\n"), 0o644)
			}
		}
	})
	for range 300 {
		text, err := f.Read("flips.yaml")
		if err == nil {
			assert.NotContains(t, string(text), "secret")
		}
		_ = f.Save("flips.yaml", mark("drink: plain\n"), []byte("drink: mine\n"))
	}
	close(stop)
	flipping.Wait()
	assert.Equal(t, "drink: secret\n", saved(t, outside, "secret.yaml"))
	list, err := f.Versions("flips.yaml")
	require.NoError(t, err)
	for _, v := range list {
		text, err := f.Version("flips.yaml", v.ID)
		if err == nil {
			assert.NotContains(t, string(text), "secret")
		}
	}

	require.NoError(t, os.RemoveAll(filepath.Join(dir, ".sipsum")))
	require.NoError(t, os.Symlink(outside, filepath.Join(dir, ".sipsum")))
	require.ErrorContains(t, f.Save(tide, mark(saved(t, dir, tide)), []byte("drink: mine\n")), "is no folder of its own", "the fault of the folder, not ours")
	left, err := os.ReadDir(outside)
	require.NoError(t, err)
	assert.Len(t, left, 1, "nothing was written outside")
}

func TestAPipeIsNotWaitedFor(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("skipped: no named pipes in folders")
	}
	f, dir := folder(t)
	require.NoError(t, syscall.Mkfifo(filepath.Join(dir, "pipe.yaml"), 0o600))
	done := make(chan error, 1)
	go func() {
		_, err := f.Read("pipe.yaml")
		done <- errors.Join(err, f.Save("pipe.yaml", mark(""), nil))
	}()
	select {
	case err := <-done:
		require.Error(t, err)
	case <-time.After(10 * time.Second):
		t.Fatal("it waits for a writer")
	}
}

// A file longer than a drink may be is read so far that who reads it sees too much, and no further.
func TestALongFileIsCut(t *testing.T) {
	f, dir := folder(t)
	put(t, dir, "long.yaml", strings.Repeat("x", 50*most))
	text, err := f.Read("long.yaml")
	require.NoError(t, err)
	assert.Len(t, text, most)
}

// What a program that was ended left is taken away once nobody can be writing it any more.
func TestAbandonedDraftsGo(t *testing.T) {
	dir := t.TempDir()
	drafts := filepath.Join(dir, ".sipsum", "unfinished")
	require.NoError(t, os.MkdirAll(drafts, 0o700))
	put(t, drafts, "old", "x")
	put(t, drafts, "new", "x")
	yesterday := time.Now().Add(-25 * time.Hour)
	require.NoError(t, os.Chtimes(filepath.Join(drafts, "old"), yesterday, yesterday))
	f, err := workshop.Open(dir, most)
	require.NoError(t, err)
	defer f.Close()
	assert.NoFileExists(t, filepath.Join(drafts, "old"))
	assert.FileExists(t, filepath.Join(drafts, "new"))
}

// A text that lost against another hand's is laid among the versions.
func TestATextIsKeptWithoutTheFile(t *testing.T) {
	f, dir := folder(t)
	first := saved(t, dir, tide)
	require.NoError(t, f.Keep(tide, []byte("drink: aside\n")))
	assert.Equal(t, first, saved(t, dir, tide))
	list, err := f.Versions(tide)
	require.NoError(t, err)
	require.Len(t, list, 1)
	text, err := f.Version(tide, list[0].ID)
	require.NoError(t, err)
	assert.Equal(t, "drink: aside\n", string(text))
	require.ErrorIs(t, f.Keep("none.yaml", []byte("x")), fs.ErrNotExist)
	require.Error(t, f.Keep(tide, []byte(strings.Repeat("x", most))))
}
