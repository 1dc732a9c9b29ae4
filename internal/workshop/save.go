package workshop

import (
	"bytes"
	"crypto/rand"
	"errors"
	"io/fs"
	"os"
	"path"
	"time"

	"sipsum/internal/fail"
)

// Where the page keeps what is its own, beside the drinks.
const (
	hidden     = ".sipsum"
	unfinished = hidden + "/unfinished"
	old        = hidden + "/versions"

	ownerOnly = 0o700 // of a folder
	filePerm  = 0o644 // of a new drink
)

// abandoned is how old a file that somebody began to write is when nobody writes it any more.
const abandoned = 24 * time.Hour

// Changed is the error of a save onto a file that is not what it was when the change began.
type Changed struct {
	Text []byte // what is there now
	Gone bool   // there is nothing any more
}

func (c *Changed) Error() string { return "the file has been changed by another hand" }

// Create writes a drink file that is not there yet.
func (f *Folder) Create(name string, text []byte) error {
	if err := f.allowed(name, text); err != nil {
		return err
	}
	f.saving.Lock()
	defer f.saving.Unlock()
	draft, err := f.draft(text, filePerm)
	if err != nil {
		return cannotSave(err, name)
	}
	defer f.root.Remove(draft) // a second name of what is saved, or nothing
	err = f.root.Link(draft, name)
	if err != nil && !errors.Is(err, fs.ErrExist) { // no second names on this disk
		err = f.write(name, text, filePerm)
	}
	if errors.Is(err, fs.ErrExist) {
		e := fail.New(fail.Wrong, name+" is there already", "choose another name")
		e.Cause = err
		return e
	}
	if err != nil {
		return cannotSave(err, name)
	}
	f.settle(".")
	return nil
}

// Save puts a text in the place of a drink file that was base, by its Fingerprint, when the change began.
// If it is something else by now, nothing is written, and the error is *Changed.
func (f *Folder) Save(name, base string, text []byte) error {
	if err := f.allowed(name, text); err != nil {
		return err
	}
	f.saving.Lock()
	defer f.saving.Unlock()
	info, err := f.plain(name)
	if errors.Is(err, fs.ErrNotExist) {
		return &Changed{Gone: true}
	}
	if err != nil {
		return err
	}
	draft, err := f.draft(text, info.Mode().Perm())
	if err != nil {
		return cannotSave(err, name)
	}
	defer f.root.Remove(draft) // gone already if all went well
	kept, before, err := f.put(name)
	if err != nil {
		return cannotSave(err, name)
	}
	switch now, err := f.root.Lstat(name); {
	case bytes.Equal(before, text): // saved already, perhaps by a second press of the button
		f.root.Remove(kept) // it is not replaced, so it is no old version
		return nil
	case Fingerprint(before) != base, err != nil, !os.SameFile(info, now):
		f.root.Remove(kept)
		return f.changed(name)
	}
	if err := f.root.Rename(draft, name); err != nil {
		f.root.Remove(kept)
		return cannotSave(err, name)
	}
	f.settle(".")
	f.settle(path.Dir(kept))
	f.prune(name)
	return nil
}

// plain looks at a drink file, which is no link and no pipe.
func (f *Folder) plain(name string) (fs.FileInfo, error) {
	info, err := f.root.Lstat(name)
	if err == nil && !info.Mode().IsRegular() {
		err = errNoFile
	}
	if err != nil {
		return nil, told(err, name)
	}
	return info, nil
}

// changed tells what a file is now.
func (f *Folder) changed(name string) error {
	text, err := f.read(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return &Changed{Gone: true}
	case err != nil:
		return cannotSave(err, name)
	}
	return &Changed{Text: text}
}

// allowed refuses a name or a text that no drink file has.
func (f *Folder) allowed(name string, text []byte) error {
	if err := drinkFile(name); err != nil {
		return err
	}
	if int64(len(text)) >= f.most {
		return fail.New(fail.Wrong, "the text is longer than a drink file may be", "move foods and components to a shelf")
	}
	return nil
}

func cannotSave(err error, name string) error {
	if told := (*fail.Error)(nil); errors.As(err, &told) {
		return err
	}
	return fail.Because(fail.Failed, err, "cannot save "+name, "see whether the disk has room and the folder can be written to; what you have typed is still in the page")
}

// draft writes a text whole to the disk, under a name that nobody else has.
func (f *Folder) draft(text []byte, perm fs.FileMode) (string, error) {
	if info, err := f.root.Lstat(hidden); err == nil && !info.IsDir() {
		return "", fail.New(fail.Wrong, hidden+" beside the drinks is no folder of its own", "move it away: versions are kept in a folder of that name, and never behind a link")
	}
	if err := f.root.MkdirAll(unfinished, ownerOnly); err != nil {
		return "", err
	}
	name := path.Join(unfinished, rand.Text())
	return name, f.write(name, text, perm)
}

// write makes a file that is not there yet, and has it on the disk when it comes back. What it could not
// finish it takes away.
func (f *Folder) write(name string, text []byte, perm fs.FileMode) error {
	file, err := f.root.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, perm)
	if err != nil {
		return err
	}
	_, err = file.Write(text)
	err = errors.Join(err, file.Chmod(perm), file.Sync(), file.Close())
	if err != nil {
		f.root.Remove(name)
	}
	return err
}

// settle has the names of a folder on the disk. Systems without that see to it by themselves.
func (f *Folder) settle(name string) {
	if folder, err := f.root.Open(name); err == nil {
		_ = folder.Sync()
		folder.Close()
	}
}

// sweep takes away what a program that was ended began to write, once it is old: another may be writing now.
func (f *Folder) sweep() {
	left, err := fs.ReadDir(f.root.FS(), unfinished)
	if err != nil {
		return // there is none
	}
	for _, e := range left {
		if info, err := e.Info(); err == nil && time.Since(info.ModTime()) > abandoned {
			f.root.Remove(path.Join(unfinished, e.Name()))
		}
	}
}
