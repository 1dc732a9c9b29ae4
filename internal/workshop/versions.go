package workshop

import (
	"errors"
	"io/fs"
	"path"
	"slices"
	"time"

	"sipsum/internal/fail"
)

// stamp is how a version is called: the moment at which another took its place.
const stamp = "20060102T150405.000000000Z"

// Version is a text that a drink file had.
type Version struct {
	ID    string
	Saved time.Time // when it was written
	Bytes int64
}

// Versions lists the versions of a drink file that are kept, newest first.
func (f *Folder) Versions(name string) ([]Version, error) {
	if err := drinkFile(name); err != nil {
		return nil, err
	}
	found, err := fs.ReadDir(f.root.FS(), path.Join(old, name))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, told(err, name)
	}
	var list []Version
	for _, e := range slices.Backward(found) {
		info, err := e.Info()
		if err != nil || !info.Mode().IsRegular() || !isStamp(e.Name()) {
			continue // not of ours
		}
		list = append(list, Version{e.Name(), info.ModTime(), info.Size()})
	}
	return list, nil
}

// Version gives the text of a version.
func (f *Folder) Version(name, id string) ([]byte, error) {
	if err := drinkFile(name); err != nil {
		return nil, err
	}
	if !isStamp(id) {
		return nil, fail.New(fail.Wrong, "no version is called so", "choose one of the list")
	}
	text, err := f.read(path.Join(old, name, id))
	if err != nil {
		return nil, told(err, "of that version")
	}
	return text, nil
}

func isStamp(id string) bool {
	_, err := time.Parse(stamp, id)
	return err == nil && len(id) == len(stamp)
}

// put keeps a file as a version, under a name that is later than all before, and gives that name and what is in it.
// The version is the file itself: what an editor that has it open still writes is written there.
func (f *Folder) put(name string) (kept string, text []byte, err error) {
	if kept, err = f.name(name); err != nil {
		return "", nil, err
	}
	if err := f.root.Link(name, kept); err != nil {
		return f.copied(name, kept)
	}
	text, err = f.read(kept)
	if err != nil {
		f.root.Remove(kept)
	}
	return kept, text, err
}

// Keep lays a text among the versions of a drink file without changing the file.
func (f *Folder) Keep(name string, text []byte) error {
	if err := f.allowed(name, text); err != nil {
		return err
	}
	f.saving.Lock()
	defer f.saving.Unlock()
	if _, err := f.plain(name); err != nil {
		return err
	}
	kept, err := f.name(name)
	if err == nil {
		err = f.write(kept, text, filePerm)
	}
	if err != nil {
		return cannotSave(err, name)
	}
	f.settle(path.Dir(kept))
	f.prune(name)
	return nil
}

// copied keeps a file as a copy, where the disk has no second names.
func (f *Folder) copied(name, kept string) (string, []byte, error) {
	text, err := f.read(name)
	if err != nil {
		return "", nil, err
	}
	return kept, text, f.write(kept, text, filePerm)
}

// name gives a new version of a drink file its name.
func (f *Folder) name(of string) (string, error) {
	folder := path.Join(old, of)
	if err := f.root.MkdirAll(folder, ownerOnly); err != nil {
		return "", err
	}
	at, err := f.next(of)
	return path.Join(folder, at.Format(stamp)), err
}

// next is a moment after that of every version, whatever the clock says.
func (f *Folder) next(name string) (time.Time, error) {
	at := time.Now().UTC()
	list, err := f.Versions(name)
	if err != nil || len(list) == 0 {
		return at, err
	}
	last, err := time.Parse(stamp, list[0].ID)
	if err == nil && !at.After(last) {
		at = last.Add(time.Nanosecond)
	}
	return at, err
}

// prune lets the oldest versions go. What cannot be taken away stays.
func (f *Folder) prune(name string) {
	list, err := f.Versions(name)
	if err != nil || len(list) <= f.keep {
		return
	}
	for _, v := range list[f.keep:] {
		f.root.Remove(path.Join(old, name, v.ID))
	}
}
