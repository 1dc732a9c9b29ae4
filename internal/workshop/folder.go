package workshop

import (
	"io"
	"io/fs"
	"os"
	"strings"

	"sipsum/internal/fail"
)

// ending is how the files end that a Folder shows.
const ending = ".yaml"

// Folder is an open folder of drink files.
type Folder struct {
	root *os.Root
	most int64 // bytes of a file
}

// Open opens a folder; files of more than most bytes are cut there, so that who reads them sees too much.
func Open(path string, most int64) (*Folder, error) {
	root, err := os.OpenRoot(path)
	if err != nil {
		return nil, fail.Because(fail.Wrong, err, "cannot open the folder "+path, "name a folder that is there")
	}
	return &Folder{root, most}, nil
}

// List gives the names of the drink files.
func (f *Folder) List() ([]string, error) {
	entries, err := fs.ReadDir(f.root.FS(), ".")
	if err != nil {
		return nil, fail.Because(fail.Failed, err, "cannot read the folder "+f.root.Name(), "")
	}
	var names []string
	for _, e := range entries {
		if e.Type().IsRegular() && strings.HasSuffix(e.Name(), ending) {
			names = append(names, e.Name())
		}
	}
	return names, nil
}

// Read gives the text of a file of the folder.
func (f *Folder) Read(name string) ([]byte, error) {
	file, err := f.root.Open(name)
	if err != nil {
		return nil, fail.Because(fail.Wrong, err, "there is no drink file "+name, "see which there are on the first page")
	}
	defer file.Close()
	return io.ReadAll(io.LimitReader(file, f.most))
}

// Close lets go of the folder.
func (f *Folder) Close() error { return f.root.Close() }
