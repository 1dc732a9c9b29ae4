package workshop

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"syscall"

	"sipsum/internal/benchlog"
	"sipsum/internal/fail"
)

// Log adds lines to the bench log of the folder, and begins it if there is none. What is there stays as it is: the lines are
// added in one write, behind all that others have written meanwhile, and are on the disk when it comes back.
func (f *Folder) Log(lines ...benchlog.Line) error {
	f.saving.Lock()
	defer f.saving.Unlock()
	if info, err := f.root.Lstat(benchlog.File); err == nil && !info.Mode().IsRegular() {
		return told(errNoFile, benchlog.File)
	} else if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return cannotLog(err)
	}
	file, err := f.root.OpenFile(benchlog.File, os.O_RDWR|os.O_CREATE|os.O_APPEND|syscall.O_NONBLOCK, filePerm)
	if err != nil {
		return cannotLog(err)
	}
	text, err := f.added(file, lines)
	if err == nil {
		_, err = file.Write(text)
	}
	if err = errors.Join(err, file.Sync(), file.Close()); err != nil {
		return cannotLog(err)
	}
	f.settle(".")
	return nil
}

// added is what is to be written behind a log: its first line if it is empty, and an end to a last line that has none.
func (f *Folder) added(file *os.File, lines []benchlog.Line) ([]byte, error) {
	info, err := file.Stat()
	if err != nil {
		return nil, err
	}
	var text []byte
	switch size := info.Size(); {
	case size == 0:
		text = benchlog.Header()
	case size > 0:
		last := make([]byte, 1)
		if _, err := file.ReadAt(last, size-1); err != nil && !errors.Is(err, io.EOF) {
			return nil, err
		}
		if last[0] != '\n' {
			text = []byte{'\n'}
		}
	}
	for _, l := range lines {
		text = append(text, l.Text()...)
	}
	if info.Size()+int64(len(text)) >= f.most {
		return nil, fail.New(fail.Wrong, benchlog.File+" would be longer than it may be", "move its oldest lines to another file")
	}
	return text, nil
}

func cannotLog(err error) error {
	var known *fail.Error
	if errors.As(err, &known) {
		return known
	}
	return fail.Because(fail.Failed, err, "cannot write to "+benchlog.File, "see whether the disk has room and the folder can be written to; what you have typed is not lost: send it again")
}
