package table

import (
	"bufio"
	"io"
	"io/fs"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/transform"
)

// Western gives the files of fsys as UTF-8: a file that is not UTF-8 is taken
// for Windows-1252, in which publishers write what they call ISO 8859-1. A file
// is read once to tell and once to use.
func Western(fsys fs.FS) fs.FS { return western{fsys} }

type western struct{ fs.FS }

// Stat does not look into the file.
func (w western) Stat(name string) (fs.FileInfo, error) { return fs.Stat(w.FS, name) }

// Open looks through the file for what is not UTF-8.
func (w western) Open(name string) (fs.File, error) {
	file, err := w.FS.Open(name)
	if err != nil {
		return nil, err
	}
	info, err := file.Stat()
	if err != nil || info.IsDir() {
		return file, err
	}
	isUTF8, err := readsAsUTF8(file)
	file.Close()
	if err != nil {
		return nil, err
	}
	if file, err = w.FS.Open(name); err != nil || isUTF8 {
		return file, err
	}
	return decoded{File: file, text: transform.NewReader(file, charmap.Windows1252.NewDecoder())}, nil
}

// decoded is a file that is read through a decoder.
type decoded struct {
	fs.File
	text io.Reader
}

func (d decoded) Read(p []byte) (int, error) { return d.text.Read(p) }

// readsAsUTF8 reads a file to its end or to the first byte that is not UTF-8.
func readsAsUTF8(file io.Reader) (bool, error) {
	in := bufio.NewReaderSize(file, 1<<16)
	for {
		piece, err := in.Peek(in.Size())
		if err != nil && err != io.EOF {
			return false, err
		}
		whole := len(piece)
		if err == nil {
			whole = lastRune(piece)
		}
		if !utf8.Valid(piece[:whole]) {
			return false, nil
		}
		if err == io.EOF {
			return true, nil
		}
		in.Discard(whole)
	}
}

// lastRune gives the length of a piece without a last rune that is cut off.
func lastRune(piece []byte) int {
	for back := 1; back <= utf8.UTFMax && back <= len(piece); back++ {
		at := len(piece) - back
		if utf8.RuneStart(piece[at]) {
			if utf8.FullRune(piece[at:]) {
				return len(piece)
			}
			return at
		}
	}
	return len(piece)
}
