package cli

import (
	"fmt"
	"io"
	"strconv"
	"time"
)

// progress shows on a terminal how far a load is; elsewhere it is silent.
type progress struct {
	out   io.Writer // nil: silent
	what  string
	shown time.Time
}

// between is the least time between two lines of progress.
const between = 100 * time.Millisecond

func (a *app) progress(what string) *progress {
	p := &progress{what: what}
	if a.streams.ErrTerm && !a.options.quiet {
		p.out = a.streams.Err
	}
	return p
}

func (p *progress) step(foods, values int) {
	if p.out == nil || time.Since(p.shown) < between {
		return
	}
	p.shown = time.Now()
	fmt.Fprintf(p.out, "\r%s: %s foods, %s values", p.what, thousands(foods), thousands(values))
}

// done takes the line away.
func (p *progress) done() {
	if p.out != nil && !p.shown.IsZero() {
		fmt.Fprint(p.out, "\r\x1b[K")
	}
}

// thousands writes a count in groups of three: 679 045 (SI brochure, 5.4.4).
func thousands(n int) string {
	digits := strconv.Itoa(n)
	var out []byte
	for i, d := range []byte(digits) {
		if i > 0 && (len(digits)-i)%3 == 0 {
			out = append(out, ' ')
		}
		out = append(out, d)
	}
	return string(out)
}
