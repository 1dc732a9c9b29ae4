package table

import (
	"archive/zip"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"sipsum/internal/fail"
)

// What an archive or a workbook may be at most. The largest release known, the
// whole of FoodData Central, unpacks to about 3 GiB in some 30 files; tables of
// numbers shrink to a tenth or a twentieth, never to a two-hundredth.
const (
	maxEntries   = 10_000
	maxUnpacked  = 16 << 30  // bytes of an archive
	maxBook      = 256 << 20 // bytes of a workbook
	maxRatio     = 200
	smallEntry   = 1 << 20 // below it the ratio says nothing
	takeAgain    = "take the archive from the publisher again"
	notAnArchive = "unpack it by hand if you trust it, and give the folder"
)

// Files opens what a person names as a release: a folder, a .zip archive, or a
// single file, which is then the only file of its folder. An archive whose files
// all lie in one folder is seen from inside that folder.
//
// An archive is refused whole if a name in it leads outside (absolute, "..", a
// drive letter, a backslash), if it holds links or encrypted files, a name
// twice, too many files, or more bytes than a table has any reason to.
func Files(path string) (fs.FS, error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrPermission):
		return nil, fail.At(fail.Wrong, fail.Place{File: path}, "cannot be read: permission denied", "let yourself read it: the name is right, the permissions are not")
	case err != nil:
		return nil, fail.At(fail.Wrong, fail.Place{File: path}, "cannot be read", "give the folder, the .zip or the file of the release")
	case info.IsDir():
		return Folder(path), nil
	case !info.Mode().IsRegular():
		return nil, fail.At(fail.Wrong, fail.Place{File: path}, "is neither a folder nor a file", "give the folder, the .zip or the file of the release")
	case !isArchive(path):
		return oneFile{FS: Folder(filepath.Dir(path)), name: filepath.Base(path)}, nil
	}
	return openArchive(path, info.Size())
}

// plain is a folder on the disk of which only files and folders are opened: a
// named pipe would wait for a writer, and a device may never end.
type plain struct{ fs.FS }

// Folder gives the files of a folder on the disk.
func Folder(path string) fs.FS { return plain{os.DirFS(path)} }

func (p plain) Open(name string) (fs.File, error) {
	info, err := fs.Stat(p.FS, name)
	if err == nil && !info.IsDir() && !info.Mode().IsRegular() {
		err = &fs.PathError{Op: "open", Path: name, Err: errors.New("it is a pipe or a device, not a file")}
	}
	if err != nil {
		return nil, err
	}
	return p.FS.Open(name)
}

// Dir names, for messages, the folder in which the files at path lie: the path
// itself, or the folder of a single file.
func Dir(path string) string {
	info, err := os.Stat(path)
	if err == nil && info.Mode().IsRegular() && !isArchive(path) {
		return filepath.Dir(path)
	}
	return path
}

func isArchive(path string) bool { return strings.EqualFold(filepath.Ext(path), ".zip") }

// oneFile is a folder of which only one file is seen.
type oneFile struct {
	fs.FS
	name string
}

func (o oneFile) Open(name string) (fs.File, error) {
	if name != "." && name != o.name {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	return o.FS.Open(name)
}

// ReadDir gives the one file.
func (o oneFile) ReadDir(name string) ([]fs.DirEntry, error) {
	info, err := fs.Stat(o.FS, o.name)
	if err != nil || name != "." {
		return nil, &fs.PathError{Op: "readdir", Path: name, Err: fs.ErrNotExist}
	}
	return []fs.DirEntry{fs.FileInfoToDirEntry(info)}, nil
}

// archive is a .zip that was found harmless. It opens the file anew for each
// file in it, so nothing stays open between two readings.
type archive struct{ path string }

func openArchive(path string, size int64) (fs.FS, error) {
	in, err := zip.OpenReader(path)
	if in != nil {
		defer in.Close()
	}
	if err != nil && !errors.Is(err, zip.ErrInsecurePath) {
		return nil, fail.At(fail.Wrong, fail.Place{File: path}, "is not a whole .zip archive: "+err.Error(), takeAgain)
	}
	if what := unsafeArchive(in.File, size, maxUnpacked); what != "" {
		return nil, fail.At(fail.Wrong, fail.Place{File: path}, what, notAnArchive)
	}
	files := fs.FS(archive{path: path})
	if top := topFolder(in.File); top != "" {
		return fs.Sub(files, top)
	}
	return files, nil
}

// Open opens one file of the archive.
func (a archive) Open(name string) (fs.File, error) {
	in, err := zip.OpenReader(a.path)
	if err != nil {
		return nil, &fs.PathError{Op: "open", Path: name, Err: err}
	}
	file, err := in.Open(name)
	if err != nil {
		in.Close()
		return nil, err
	}
	opened := archived{File: file, archive: in}
	if dir, ok := file.(fs.ReadDirFile); ok {
		return archivedDir{archived: opened, dir: dir}, nil
	}
	return opened, nil
}

// archived is a file of an archive; closing it closes the archive.
type archived struct {
	fs.File
	archive *zip.ReadCloser
}

func (a archived) Close() error { return errors.Join(a.File.Close(), a.archive.Close()) }

// archivedDir is a folder of an archive.
type archivedDir struct {
	archived
	dir fs.ReadDirFile
}

func (a archivedDir) ReadDir(n int) ([]fs.DirEntry, error) { return a.dir.ReadDir(n) }

// unsafeArchive says why an archive may not be read; empty if it may. The sizes
// are those that its directory declares; the library ends a file that turns out
// longer. The whole is held against the archive's own size too, because entries
// may share their packed bytes.
func unsafeArchive(files []*zip.File, size int64, most uint64) string {
	if len(files) > maxEntries {
		return fmt.Sprintf("holds %d files; %d is the most that sipsum unpacks", len(files), maxEntries)
	}
	var total uint64
	seen := make(map[string]bool, len(files))
	for _, f := range files {
		name := strings.TrimSuffix(f.Name, "/")
		switch mode := f.Mode(); {
		case !fs.ValidPath(name) || name == "." || strings.ContainsAny(name, "\\:\x00"):
			return fmt.Sprintf("holds a file named %.80q, which leads outside of a folder", f.Name)
		case !mode.IsRegular() && !mode.IsDir():
			return fmt.Sprintf("%.80q in it is a link or a device, not a file", f.Name)
		case f.Flags&1 != 0:
			return fmt.Sprintf("%.80q in it is encrypted", f.Name)
		case seen[name]:
			return fmt.Sprintf("holds %.80q twice", f.Name)
		case f.UncompressedSize64 > most || total+f.UncompressedSize64 > most:
			return fmt.Sprintf("unpacks to more than %d MiB", most>>20)
		case f.UncompressedSize64 > smallEntry && f.UncompressedSize64/maxRatio > f.CompressedSize64:
			return fmt.Sprintf("%.80q in it unpacks to more than %d times its size", f.Name, maxRatio)
		}
		seen[name] = true
		total += f.UncompressedSize64
	}
	if total > smallEntry && total/maxRatio > uint64(size) {
		return fmt.Sprintf("unpacks to more than %d times its size", maxRatio)
	}
	return ""
}

// topFolder gives the folder in which all files of an archive lie; empty if
// there is none. The folder that one system adds for its own notes does not
// count.
func topFolder(files []*zip.File) string {
	top := ""
	for _, f := range files {
		first, rest, below := strings.Cut(f.Name, "/")
		switch {
		case first == "__MACOSX":
			continue
		case !below || (rest == "" && !f.Mode().IsDir()):
			return ""
		case top != "" && top != first:
			return ""
		}
		top = first
	}
	return top
}
