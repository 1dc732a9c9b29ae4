package main

import (
	"fmt"
	"io"
	"os"
	"time"
)

// progress shows on a terminal how far a file is; elsewhere it is silent.
type progress struct {
	out          io.Writer // nil: silent
	name         string
	done, whole  int64 // bytes; whole is -1 if not announced
	began, shown time.Time
}

// between is the least time between two lines of progress.
const between = 200 * time.Millisecond

func newProgress(to *os.File) *progress {
	if info, err := to.Stat(); err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return &progress{}
	}
	return &progress{out: to}
}

func (p *progress) begin(name string, whole int64) {
	*p = progress{out: p.out, name: name, whole: whole, began: time.Now()}
}

// Write counts bytes.
func (p *progress) Write(b []byte) (int, error) {
	p.done += int64(len(b))
	if p.out != nil && time.Since(p.shown) >= between {
		p.shown = time.Now()
		fmt.Fprintf(p.out, "\r\x1b[K%s: %s", p.name, p.text(time.Since(p.began)))
	}
	return len(b), nil
}

// text says how far it is after some time.
func (p *progress) text(after time.Duration) string {
	const mega = 1e6
	rate := float64(p.done) / max(after.Seconds(), 1e-3)
	if p.whole <= 0 {
		return fmt.Sprintf("%.1f MB, %.1f MB/s", float64(p.done)/mega, rate/mega)
	}
	left := time.Duration(float64(p.whole-p.done) / max(rate, 1) * float64(time.Second)).Round(time.Second)
	return fmt.Sprintf("%.1f of %.1f MB, %.1f MB/s, %s left", float64(p.done)/mega, float64(p.whole)/mega, rate/mega, left)
}

// end takes the line away.
func (p *progress) end() {
	if p.out != nil && !p.shown.IsZero() {
		fmt.Fprint(p.out, "\r\x1b[K")
	}
}
