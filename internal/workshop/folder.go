package workshop

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"io/fs"
	"os"
	"regexp"
	"strings"
	"sync"
	"syscall"
	"time"

	"sipsum/internal/clean"
	"sipsum/internal/embedded"
	"sipsum/internal/fail"
)

// Folder is an open folder of drink files. It may be used by several goroutines.
type Folder struct {
	root *os.Root
	most int64 // bytes of a file, and one more
	keep int   // versions of a file

	saving sync.Mutex // held by who changes a file
}

// Open opens a folder; files of more than most bytes are cut there, so that who reads them sees too much.
func Open(path string, most int64) (*Folder, error) {
	root, err := os.OpenRoot(path)
	if err != nil {
		return nil, fail.Because(fail.Wrong, err, "cannot open the folder "+path, "name a folder that is there")
	}
	f := &Folder{root: root, most: most, keep: embedded.Limit("versions")}
	f.sweep()
	return f, nil
}

// Entry is a drink file.
type Entry struct {
	Name  string    // of the file
	Title string    // of the drink; empty if no line of the file says it
	Saved time.Time // when it was last written
}

// List gives the drink files by name.
func (f *Folder) List() ([]Entry, error) {
	found, err := fs.ReadDir(f.root.FS(), ".")
	if err != nil {
		return nil, fail.Because(fail.Failed, err, "cannot read the folder "+f.root.Name(), "")
	}
	var list []Entry
	for _, e := range found {
		info, err := e.Info()
		if err != nil || !info.Mode().IsRegular() || !IsDrink(e.Name()) {
			continue // a file that has gone meanwhile is none
		}
		text, _ := f.Read(e.Name()) // of what cannot be read the name is told
		list = append(list, Entry{e.Name(), Title(text), info.ModTime()})
	}
	return list, nil
}

// titleLine is the line that names a drink, where it is written as most are: the name in quotes or bare.
var titleLine = regexp.MustCompile(`(?m)^drink:[ \t]+(?:"([^"\n]*)"|'([^'\n]*)'|([^"'#\n][^#\n]*))`)

// Title finds the name of a drink without reading the file as one; empty if no line says it.
func Title(text []byte) string {
	found := titleLine.FindSubmatch(text)
	if found == nil {
		return ""
	}
	return clean.Name(string(found[1]) + string(found[2]) + string(found[3]))
}

// Read gives the text of a drink file.
func (f *Folder) Read(name string) ([]byte, error) {
	if err := drinkFile(name); err != nil {
		return nil, err
	}
	text, err := f.read(name)
	if err != nil {
		return nil, told(err, name)
	}
	return text, nil
}

// Beside gives the text of what a drink takes from, by its path as seen from the drink: a shelf, the rules of the house.
func (f *Folder) Beside(path string) ([]byte, error) {
	for part := range strings.SplitSeq(path, "/") {
		if part != ".." && part != "." && !isName(part) {
			return nil, fail.New(fail.Wrong, "the page reads no file of that name", "give a shelf a name of letters and digits, in the folder of the drinks")
		}
	}
	text, err := f.read(path)
	if err != nil {
		return nil, told(err, path)
	}
	return text, nil
}

// told says to people why a file could not be read; the words of the system may hold paths and stay out.
func told(err error, name string) error {
	what, do := "cannot read "+clean.Name(name), "see whether it is a plain file in the folder of the drinks that you may read"
	if errors.Is(err, fs.ErrNotExist) {
		what, do = "there is no file "+clean.Name(name)+" in the folder", "see which drinks there are on the first page"
	}
	e := fail.New(fail.Wrong, what, do)
	e.Cause = err
	return e
}

// errNoFile says that a name is not that of a plain file.
var errNoFile = errors.New("no plain file")

// read gives the text of a plain file. A named pipe that takes the place of a file is not waited for.
func (f *Folder) read(name string) ([]byte, error) {
	file, err := f.root.OpenFile(name, os.O_RDONLY|syscall.O_NONBLOCK, 0)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	info, err := file.Stat()
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, errNoFile
	}
	return io.ReadAll(io.LimitReader(file, f.most))
}

// Fingerprint tells one text of a file from another.
func Fingerprint(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:])
}

// Close lets go of the folder.
func (f *Folder) Close() error { return f.root.Close() }
