package fdc

import (
	"errors"
	"io"
)

var errLong = errors.New("longer than any row of a table")

// watch stands between a file and its decoder. It ends the reading when a row
// grows beyond all measure, as after a quotation mark that is never closed, and
// remembers the last byte.
type watch struct {
	io.Reader
	most  int64 // the longest row
	start int64 // where the current row begins
	at    int64 // bytes read so far
	last  byte
}

// Read reads no further than the longest row from its start.
func (w *watch) Read(p []byte) (int, error) {
	room := w.start + w.most + ahead - w.at
	if room <= 0 {
		return 0, errLong
	}
	n, err := w.Reader.Read(p[:min(int64(len(p)), room)])
	if n > 0 {
		w.at += int64(n)
		w.last = p[n-1]
	}
	return n, err
}

// lineEnded reports whether what went through ended with a line end, or was
// nothing.
func (w *watch) lineEnded() bool { return w.at == 0 || w.last == '\n' }
