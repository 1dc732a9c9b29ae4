package cli

import (
	"strconv"
	"time"

	"github.com/schollz/progressbar/v3"
)

// progress shows on a terminal how far a load is, how fast, and how long it will
// take; elsewhere it is silent.
type progress struct {
	bar *progressbar.ProgressBar // nil: silent
}

// between is the least time between two pictures of the progress.
const between = 100 * time.Millisecond

// progress begins to show a load of count foods; 0 if nobody knows how many.
func (a *app) progress(what string, count int) progress {
	if !a.streams.ErrTerm || a.options.quiet {
		return progress{}
	}
	if count == 0 {
		count = -1 // the library's word for "not known"
	}
	return progress{progressbar.NewOptions(count,
		progressbar.OptionSetWriter(a.streams.Err), progressbar.OptionSetDescription(what),
		progressbar.OptionShowCount(), progressbar.OptionShowIts(), progressbar.OptionSetItsString("foods"),
		progressbar.OptionSetPredictTime(true), progressbar.OptionThrottle(between), progressbar.OptionClearOnFinish(),
	)}
}

func (p progress) step(foods, _ int) {
	if p.bar != nil {
		_ = p.bar.Set(foods) // a picture that cannot be drawn is no reason to stop
	}
}

// done takes the picture away.
func (p progress) done() {
	if p.bar != nil {
		_ = p.bar.Finish()
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
